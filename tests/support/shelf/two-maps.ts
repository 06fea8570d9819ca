import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkDrive } from '../../../geo/check.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import type { Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { roadsOnShelf } from '../../../main/services/shelf/roads-on-shelf.ts';
import { COACH_BUILT } from '../coach-built.ts';
import { type PbfWay, pbfFile } from '../pbf-file.ts';
import { trackOf } from '../random-drives.ts';

const LAT = 54;
const WEST = 9;
const STEP = 0.002;
const LONGEST = 40;
/** Far beyond the ids of the road. */
const LANES = 1_000_000;

/**
 * Maps that tell each other apart: one road due east with a low bridge whose height is the version's, and lanes beside
 * it. @param steps of the road, 130 m each
 */
export function versionOf(version: number, steps = LONGEST): Uint8Array {
  const nodes = Array.from({ length: steps + 1 }, (_, i) => ({
    id: 1000 + i,
    lat: LAT,
    lon: WEST + i * STEP,
  }));
  const ends = nodes.map(({ id, lat, lon }) => ({ id: id + LANES, lat: lat + 0.001, lon }));
  const road: PbfWay[] = nodes.slice(1).map(({ id }, i) => ({
    id,
    refs: [id - 1, id],
    tags: {
      highway: 'secondary',
      name: `Version ${version}`,
      ...(i === 1 ? { maxheight: (2 + (version % 10) / 10).toFixed(1) } : {}),
    },
  }));
  const lanes: PbfWay[] = nodes.map(({ id }) => ({
    id: id + LANES,
    refs: [id, id + LANES],
    tags: { highway: 'residential', name: `Lane ${id}` },
  }));
  return pbfFile([{ nodes: [...nodes, ...ends] }, { ways: [...road, ...lanes] }]);
}

/** Along the first steps of the road. */
export const DRIVE: Route = trackOf({
  lat: [LAT, LAT, LAT],
  lon: [WEST + 0.2 * STEP, WEST + 1.5 * STEP, WEST + 2.8 * STEP],
});

/** Writes a version where it can be taken in from. */
export function writeVersion(folder: string, version: number, steps?: number): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `version-${version}.osm.pbf`);
  writeFileSync(path, versionOf(version, steps));
  return path;
}

/** What a check of the drive says on this shelf: the report but for its sources, or the sentence why there is none. */
export async function servedBy(shelf: string): Promise<string> {
  return sayOf(await roadsOnShelf(shelf, DRIVE));
}

/** The same on roads already read. */
export function sayOf(read: Result<Roads>): string {
  if (!read.ok) return `${read.error.code}: ${read.error.message}`;
  const roads = read.value;
  const report = checkDrive({
    route: DRIVE,
    file: 'drive.gpx',
    drive: followRoads(DRIVE, roads),
    roads,
    card: COACH_BUILT,
    program: '',
    made: '',
  });
  return JSON.stringify({ ...report, map: [] });
}
