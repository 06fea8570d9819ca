import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkDrive } from '../../../geo/check.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';
import { trackOf } from '../../support/random-drives.ts';
import { jsonTarget } from '../target.ts';
import { MAP } from './program.ts';

/** Where the road lies and how high the sign says: another figure there is another map. */
const FIGURES = [...MAP.matchAll(/(?:lat|lon|k="maxheight" v)="([^"]*)"/g)].map((found) => {
  const end = found.index + found[0].length - 1;
  return { from: end - (found[1] ?? '').length, end };
});
const OTHERWISE = [...MAP].map((_, at) => at).filter((at) => !inFigure(at));
const DRIVE = trackOf({ lat: [50, 50, 50], lon: [7.001, 7.01, 7.019] });

const folder = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-'));
const path = join(folder, 'map.osm');

function inFigure(at: number): boolean {
  return FIGURES.some(({ from, end }) => at >= from && at < end);
}

/**
 * One character of a map changed, anywhere but in a figure: the map is refused, or the low sign is still found, or the
 * report says what it cannot tell.
 */
export const mapByte = jsonTarget<{ readonly at: number; readonly sign: string }>({
  name: 'a map changed in one place',
  weight: 2,
  make: (random) => ({
    at: random.pick(OTHERWISE),
    sign: random.chance(0.5) ? random.pick([...' "<>/=_x70']) : String.fromCharCode(32 + random.below(95)),
  }),
  async check({ at, sign }) {
    writeFileSync(path, MAP.slice(0, at) + sign + MAP.slice(at + 1));
    const opened = await openMap([path], undefined);
    // a colon parts a key into others, which somebody may mean
    if (!opened.ok || sign === ':') return undefined;
    const roads = opened.value;
    const { findings } = checkDrive({
      route: DRIVE,
      file: 'drive.gpx',
      drive: followRoads(DRIVE, roads),
      roads,
      card: COACH_BUILT,
      program: 'fuzz',
      made: '2027-01-01T00:00:00Z',
    });
    const told = findings.some(({ level, folded }) => !folded && (level === 'barred' || level === 'unknown'));
    return told ? undefined : `with ${JSON.stringify(sign)} at ${at} the low sign is gone from the report`;
  },
});
