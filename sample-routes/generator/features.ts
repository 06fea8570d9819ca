import { points } from './curve.ts';
import { lineLength, markSpan, type Tags, type Vertex, vertexAt } from './line.ts';
import { item } from './plane.ts';
import type { Sheet } from './sheet.ts';

/** Whole roads that carry a rule, by key. */
const RULES: Readonly<Record<string, Tags>> = {
  market: { 'motor_vehicle:conditional': 'no @ (Sa 07:00-17:00)' },
  churchgate: { maxwidth: '6\'6"' },
  'west-link': { 'maxweight:conditional': '3 @ (20:00-07:00)' },
  'north-u3': { 'motor_vehicle:conditional': 'destination @ (Mo-Fr 08:15-09:15,14:45-15:45)' },
  'north-v1': { oneway: 'yes' },
  'north-v3': { oneway: 'yes' },
  'north-u2': { oneway: 'yes' },
  'north-u4': { oneway: '-1' },
  'terrace-u1': { oneway: 'yes' },
  'south-v1': { oneway: 'yes' },
  'u-carr': { motor_vehicle: 'destination' },
  'u-link': { hgv: 'no', maxweight: '7.5' },
  'c-fold': { 'maxweight:hgv': '7.5' },
  'u-down': { maxwidth: '2.6' },
  'u-north': { 'hgv:conditional': 'no @ (weight>7.5)' },
};

/** Parts of roads: from and to as shares of the length. */
const PARTS: readonly (readonly [string, number, number, Tags])[] = [
  ['c-head', 0, 0.12, { incline: '12%', width: '5' }],
  ['c-head', 0.12, 0.24, { incline: '18%', width: '5', hazard: 'curves' }],
  ['c-head', 0.24, 0.34, { incline: '9%' }],
  ['u-barrow', 0.25, 0.85, { surface: 'gravel', smoothness: 'bad', maxspeed: '20 mph' }],
  ['c-marsh', 0.25, 0.4, { flood_prone: 'yes' }],
  ['u-upper', 0.45, 0.8, { surface: 'compacted' }],
  ['u-quillet', 0.05, 0.2, { incline: '-11%' }],
  ['b-lark', 0.3, 0.45, { incline: '7%' }],
];

/** Things standing on a road, by its key and share of the length. */
const THINGS: readonly (readonly [string, number, Tags])[] = [
  ['west-link', 0.2, { traffic_calming: 'hump' }],
  ['west-link', 0.4, { traffic_calming: 'hump' }],
  ['west-link', 0.6, { traffic_calming: 'hump' }],
  ['north-link', 0.3, { traffic_calming: 'table' }],
  ['north-link', 0.6, { traffic_calming: 'chicane' }],
  ['estate-west', 0.5, { traffic_calming: 'cushion' }],
  ['c-upper', 0.12, { barrier: 'cattle_grid' }],
  ['u-north', 0.5, { barrier: 'cattle_grid' }],
  ['u-upper', 0.62, { barrier: 'gate' }],
  ['u-barrow', 0.3, { barrier: 'gate', access: 'yes' }],
  ['high', 0.35, { highway: 'crossing', crossing: 'traffic_signals' }],
  ['high', 0.7, { highway: 'crossing', crossing: 'uncontrolled' }],
  ['b-south', 0.04, { highway: 'crossing', crossing: 'zebra' }],
  ['a-port', 0.5, { highway: 'speed_camera' }],
];

const TURNS: readonly (readonly [from: string, to: string, tags: Tags])[] = [
  ['b-south', 'high', { restriction: 'no_left_turn' }],
  ['north-link', 'a-east', { restriction: 'no_right_turn', except: 'bus' }],
  ['c-fold', 'b-lark', { 'restriction:hgv': 'no_left_turn' }],
];

/** Where two roads meet round a painted dot. */
const MINI_ROUNDABOUTS: readonly (readonly [one: string, two: string])[] = [['north-link', 'b-north']];

/** Lays limits, rules, humps and gates on the roads drawn so far. */
export function layFeatures(sheet: Sheet): void {
  for (const [key, tags] of Object.entries(RULES)) Object.assign(sheet.line(key).tags, tags);
  for (const [key, from, to, tags] of PARTS) {
    const line = sheet.line(key);
    const length = lineLength(line);
    markSpan(line, from * length, to * length, tags);
  }
  for (const [key, share, tags] of THINGS) stand(sheet, key, share, tags);
  for (const line of sheet.lines)
    if (line.tags['passing_places'] === 'yes')
      for (let s = 140; s < lineLength(line) - 60; s += 260)
        stand(sheet, line.key, s / lineLength(line), { highway: 'passing_place' });
  for (const [from, to, tags] of TURNS) {
    const via = meetingOf(sheet, from, to);
    via.split = true;
    sheet.restrictions.push({ from, to, via, tags });
  }
  for (const [one, two] of MINI_ROUNDABOUTS) {
    const middle = meetingOf(sheet, one, two);
    middle.tags = { highway: 'mini_roundabout', direction: 'clockwise' };
  }
  splitAtJunctions(sheet);
  const zone = points([
    [470, 330],
    [1400, 420],
    [1420, 1000],
    [430, 900],
  ]);
  sheet.areas.push({
    tags: { boundary: 'low_emission_zone', name: 'Northfield Clean Air Zone' },
    ring: zone,
  });
}

/** Puts tags on a node of a road, on the next free one where something stands already. */
function stand(sheet: Sheet, key: string, share: number, tags: Tags): void {
  const line = sheet.line(key);
  const length = lineLength(line);
  for (let shift = 0; shift < 60; shift += 9) {
    const vertex = vertexAt(line, Math.min(length - 5, share * length + shift));
    if (vertex.joined || vertex.tags !== undefined) continue;
    vertex.tags = { ...tags };
    return;
  }
}

function meetingOf(sheet: Sheet, one: string, two: string): Vertex {
  const found = sheet.line(one).pts.find((vertex) => sheet.line(two).pts.includes(vertex));
  if (found === undefined) throw new Error(`${one} and ${two} do not meet`);
  return found;
}

const MAIN = new Set(['primary', 'secondary', 'tertiary', 'unclassified']);

/** As surveyors do: a through road is a new way behind each junction with another. */
function splitAtJunctions(sheet: Sheet): void {
  const seen = new Set<Vertex>();
  for (const line of sheet.lines) {
    if (line.kind !== 'road' || !MAIN.has(line.tags['highway'] ?? '')) continue;
    for (const vertex of line.pts) {
      if (seen.has(vertex)) vertex.split = true;
      seen.add(vertex);
    }
  }
  for (const line of sheet.lines)
    if (item(line.pts, 0) === item(line.pts, -1)) item(line.pts, 0).split = true;
}
