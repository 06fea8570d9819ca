import { localFrame } from '../earth/frame.ts';
import type { Point } from '../earth/point.ts';
import { awayFrom } from '../earth/segment.ts';
import { distanceM, type Place } from '../earth/sphere.ts';
import { itemAt } from '../lists.ts';

/** Where a drive runs, roughly: each unbroken part as latitude, longitude, latitude, … in degrees. */
export type RoughLine = readonly (readonly number[])[];

/** Positions nearer to the last one are left out: the line is right to half of it. Metres. */
const APART_M = 100;
/** About a metre. */
const DECIMALS = 5;

/** The line of a drive for questions of nearness; its first and last positions stay. */
export function roughLine(
  segments: readonly { readonly lat: ArrayLike<number>; readonly lon: ArrayLike<number> }[],
): RoughLine {
  return segments.map(({ lat, lon }) => {
    const line: number[] = [];
    let last: Place | undefined;
    for (let i = 0; i < lat.length; i++) {
      const at = { lat: itemAt(lat, i), lon: itemAt(lon, i) };
      const isEnd = i === lat.length - 1;
      if (last !== undefined && !isEnd && distanceM(last.lat, last.lon, at.lat, at.lon) < APART_M) continue;
      line.push(Number(at.lat.toFixed(DECIMALS)), Number(at.lon.toFixed(DECIMALS)));
      last = at;
    }
    return line;
  });
}

/** Whether a drive comes within so many metres of a place, the line's own error granted. */
export function comesWithin(line: RoughLine, place: Place, radiusM: number): boolean {
  return nearestM(line, place, radiusM) <= radiusM;
}

/**
 * How near a drive comes to a place, metres: at least so much, the line's own error granted.
 * @param enoughM it need not be told nearer than this
 */
export function nearestM(line: RoughLine, { lat, lon }: Place, enoughM = 0): number {
  const frame = localFrame(lat, lon);
  const here = { x: 0, y: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const part of line) {
    let before: Point | undefined;
    for (let i = 0; i < part.length; i += 2) {
      const next = frame.toXY(itemAt(part, i), itemAt(part, i + 1));
      least = Math.min(least, Math.max(0, awayFrom(here, before ?? next, next) - APART_M / 2));
      if (least <= enoughM) return least;
      before = next;
    }
  }
  return least;
}

/** Whether a drive of that length from there could come so near at all: what cannot need not be looked at. */
export function mayComeWithin(
  { from: [lat, lon], lengthM }: { readonly from: readonly [number, number]; readonly lengthM: number },
  place: Place,
  radiusM: number,
): boolean {
  return distanceM(lat, lon, place.lat, place.lon) <= lengthM + radiusM + APART_M;
}
