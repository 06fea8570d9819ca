import { MINI_ROUNDABOUTS, PARTS, RULES, THINGS, TURNS, ZONE } from '../plan/road-rules.ts';
import type { Tags } from '../plan/words.ts';
import { points } from './lines/curve.ts';
import { lineLength, markSpan, type Vertex, vertexAt } from './lines/line.ts';
import { item } from './lines/plane.ts';
import type { Sheet } from './sheet.ts';

/** Lays limits, rules, humps and gates on the roads drawn so far. */
export function layFeatures(sheet: Sheet): void {
  for (const [key, tags] of Object.entries(RULES)) Object.assign(sheet.line(key).tags, tags);
  for (const { key, from, to, tags } of PARTS) {
    const line = sheet.line(key);
    const length = lineLength(line);
    markSpan(line, from * length, to * length, tags);
  }
  for (const { key, at, tags } of THINGS) stand(sheet, key, at, tags);
  for (const line of sheet.lines)
    if (line.tags['passing_places'] === 'yes')
      for (let s = 140; s < lineLength(line) - 60; s += 260)
        stand(sheet, line.key, s / lineLength(line), { highway: 'passing_place' });
  for (const { from, to, tags } of TURNS) {
    const via = meetingOf(sheet, from, to);
    via.split = true;
    sheet.restrictions.push({ from, to, via, tags });
  }
  for (const { one, two } of MINI_ROUNDABOUTS) {
    const middle = meetingOf(sheet, one, two);
    middle.tags = { highway: 'mini_roundabout', direction: 'clockwise' };
  }
  splitAtJunctions(sheet);
  sheet.areas.push({ tags: ZONE.tags, ring: points(ZONE.ring) });
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
