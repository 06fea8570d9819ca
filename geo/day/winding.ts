import type { Drive } from '../drive/drive.ts';
import { type DriveTrace, traceDrive } from '../drive/times/trace.ts';
import { turnDeg } from '../earth/angles.ts';
import { firstAtLeast } from '../earth/bisect.ts';
import { bearingDeg } from '../earth/sphere.ts';
import type { Roads } from '../roads/roads.ts';
import { drivenIncline, readIncline } from '../tags/incline.ts';
import { type FileLine, steepestByFile } from './file-heights.ts';

/** A part of a drive with bend upon bend. */
export interface Winding {
  readonly fromM: number;
  readonly toM: number;
  /** how far the road turns, left and right alike, on each kilometre: the mean of the stretch */
  readonly turnDegPerKm: number;
  /** the steepest slope on it, per cent; absent where nothing tells it */
  readonly steepestPercent?: number;
  /** whose word that is: the map's, or where that has none the heights in the drive's file, smoothed */
  readonly slopesFrom?: 'map' | 'file';
}

/** Bends are measured on chords of this length, so that the mapper's dense points are none. Metres. */
const CHORD_M = 25;
/** What is asked of the road in pieces of this length. Metres. */
const PIECE_M = 1000;
/** A country road turns some 100° a kilometre, a pass road 400° and more. Judgement, no source. */
const WINDING_DEG_PER_KM = 250;
/** Shorter stretches shake nothing that a town does not. Judgement, no source. Metres. */
const LONG_M = 5_000;
/** With slopes this steep half the length will do. Judgement, no source. Per cent. */
const HILLY_PERCENT = 8;

/**
 * Long winding stretches of a drive in driving order, by the turns of the driven road and the slopes mapped on it.
 * @param line the drive's file: its heights stand in where no slope is mapped
 */
export function windingStretches(drive: Drive, roads: Roads, line: FileLine = []): Winding[] {
  if (drive.lengthM < LONG_M / 2) return [];
  const trace = traceDrive(drive, roads);
  const turned = turnedBy(trace, drive, roads);
  const turnBetween = (fromM: number, toM: number) => at(trace, turned, toM) - at(trace, turned, fromM);
  const pieces = Math.floor(drive.lengthM / PIECE_M);
  const found: Winding[] = [];
  for (let first = 0; first < pieces; first++) {
    let last = first;
    while (last < pieces && turnBetween(last * PIECE_M, (last + 1) * PIECE_M) >= WINDING_DEG_PER_KM) last++;
    if (last === first) continue;
    const [fromM, toM] = [first * PIECE_M, last * PIECE_M];
    if (toM - fromM < LONG_M / 2) {
      first = last;
      continue;
    }
    const mapped = steepestOn(drive, roads, fromM, toM);
    const steepest = mapped ?? steepestByFile(line, { drive, roads }, fromM, toM);
    const leastM = steepest !== undefined && steepest >= HILLY_PERCENT ? LONG_M / 2 : LONG_M;
    if (toM - fromM >= leastM)
      found.push({
        fromM,
        toM,
        turnDegPerKm: turnBetween(fromM, toM) / ((toM - fromM) / 1000),
        ...(steepest !== undefined && {
          steepestPercent: steepest,
          slopesFrom: mapped === undefined ? ('file' as const) : ('map' as const),
        }),
      });
    first = last;
  }
  return found;
}

/** Roads driven fast enough for bends to throw things about; in town streets and yards they do not. */
const OPEN_ROADS: ReadonlySet<string> = new Set([
  'trunk',
  'primary',
  'secondary',
  'tertiary',
  'unclassified',
]);
/** A sharper turn from one way into another is a junction, driven at a walk, and no bend. Degrees. */
const JUNCTION_DEG = 45;

/** By position of the trace: degrees turned since the start by bends of open roads, on chords. */
function turnedBy({ lat, lon, atM, leg }: DriveTrace, drive: Drive, roads: Roads): Float64Array {
  const isOpen = drive.legs.map((each) => {
    const highway = each.kind === 'stretch' ? roads.ways.tags[each.way]?.['highway'] : undefined;
    return OPEN_ROADS.has(highway?.replace('_link', '') ?? '');
  });
  const turned = new Float64Array(atM.length);
  let before: { readonly i: number; readonly leg?: number; readonly bearing?: number } = { i: 0 };
  for (let i = 1; i < atM.length; i++) {
    turned[i] = turned[i - 1]!;
    if (atM[i]! - atM[before.i]! < CHORD_M) continue;
    const on = leg[i - 1]!;
    const bearing = bearingDeg(lat[before.i]!, lon[before.i]!, lat[i]!, lon[i]!);
    const turn = before.bearing === undefined ? 0 : turnDeg(before.bearing, bearing);
    const isBend = isOpen[on] === true && (before.leg === on || turn < JUNCTION_DEG);
    if (isBend) turned[i] = turned[i]! + turn;
    before = { i, leg: on, bearing };
  }
  return turned;
}

function at({ atM }: DriveTrace, turned: Float64Array, m: number): number {
  return turned[Math.min(turned.length - 1, firstAtLeast(atM, m))] ?? 0;
}

function steepestOn(drive: Drive, roads: Roads, fromM: number, toM: number): number | undefined {
  let steepest: number | undefined;
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch' || leg.toM <= fromM || leg.fromM >= toM) continue;
    const text = roads.ways.tags[leg.way]?.['incline'];
    if (text === undefined) continue;
    const incline = drivenIncline(readIncline(text), leg.forward ? 'forward' : 'backward');
    if (incline.kind === 'percent') steepest = Math.max(steepest ?? 0, Math.abs(incline.percent));
  }
  return steepest;
}
