import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { isForOthers, ROAD_CLASS } from '../../../geo/graph/road-class.ts';
import { roadGraph } from '../../../geo/graph/road-graph.ts';
import { searchRoads, wayTo } from '../../../geo/graph/search-roads.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { type KnownDrive, knownDrive, seeded } from '../../support/random-drives.ts';
import { extractsIn } from '../make-large-map.ts';
import { gridShift } from './make-grid-map.ts';

/** Extracts that a drive crosses in turn, and its share in each: every road of a county, main roads of a wide area. */
const CROSSED = [
  { name: 'gb-rutland', share: 0.3 },
  { name: 'de-nds-mainroads', share: 0.7 },
];
/** About as far as the smaller of them can be crossed. */
const ROUND_KM = 100;

interface Crossed {
  readonly roads: Roads;
  readonly share: number;
  /** place in the list of extracts */
  readonly extract: number;
  readonly corner: { readonly lat: number; readonly lon: number };
}

/** Makes drives over the grid map. @param folder of the extracts */
export async function gridDrives(folder: string): Promise<(km: number) => string> {
  const names = extractsIn(folder);
  const crossed: Crossed[] = [];
  for (const { name, share } of CROSSED) {
    const path = join(folder, `${name}.osm.pbf`);
    const opened = await openMap([path], undefined);
    if (!opened.ok) throw new Error(opened.error.message);
    crossed.push({
      roads: opened.value,
      share,
      extract: names.indexOf(`${name}.osm.pbf`),
      corner: cornerOf(path),
    });
  }
  return (km) => gpxOf(km, crossed, names.length);
}

/**
 * A track of so many kilometres as GPX: shortest ways between places far apart, each in another copy of an extract,
 * as segments with nothing driven between them. A long drive meets ever new country, as a real one does.
 */
function gpxOf(km: number, crossed: readonly Crossed[], extracts: number): string {
  const random = seeded(km);
  const rounds = Math.max(1, Math.round(km / ROUND_KM));
  const segments: string[] = [];
  for (let round = 0; round < rounds; round++)
    for (const { roads, share, extract, corner } of crossed) {
      const { lat, lon } = shortestWay(roads, (share * km * 1000) / rounds, random);
      const shift = gridShift(round * extracts + extract, corner);
      const points = lat.map(
        (each, i) =>
          `<trkpt lat="${(each + shift.lat).toFixed(6)}" lon="${((lon[i] ?? 0) + shift.lon).toFixed(6)}"/>`,
      );
      segments.push(`<trkseg>${points.join('\n')}</trkseg>`);
    }
  return `<gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>${km} km</name>${segments.join('\n')}</trk></gpx>`;
}

/** Along legal directions, nine tenths of the length asked for at least. */
function shortestWay(roads: Roads, lengthM: number, random: () => number): KnownDrive {
  const graph = roadGraph(roads);
  const never = 1e9;
  const least = 0.95 * lengthM;
  const classPerM: number[] = [];
  classPerM[ROAD_CLASS.path] = never;
  classPerM[ROAD_CLASS.closed] = never;
  classPerM[ROAD_CLASS.ferry] = never;
  const steps = {
    turnBackM: never,
    forbiddenTurnM: never,
    enterWrongWayM: never,
    wrongWayPerM: never,
    classPerM,
  };
  for (;;) {
    const start = Math.floor(random() * 2 * graph.edgeCount);
    if (graph.wrongWay[start] !== 0 || isForOthers(graph.roadClass[start >> 1]!)) continue;
    const reached = searchRoads(graph, steps, [{ directed: start, costM: 0, metres: 0 }], {
      limitM: lengthM,
    });
    const far = [...reached.costM.keys()].filter((at) => reached.costM[at]! > least);
    const at = far[Math.floor(random() * far.length)];
    if (at !== undefined) return knownDrive(roads, [start, ...wayTo(reached, at).edges]);
  }
}

/** As osmium tells it, of all nodes. */
function cornerOf(path: string): { lat: number; lon: number } {
  const text = execFileSync('osmium', ['fileinfo', '-e', path], { encoding: 'utf8' });
  const [, lon, lat] = /Bounding box: \((-?[\d.]+),(-?[\d.]+)/u.exec(text) ?? [];
  return { lat: Number(lat), lon: Number(lon) };
}
