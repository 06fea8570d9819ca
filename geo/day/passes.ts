import type { DriveTrace } from '../drive/times/trace.ts';
import { mix } from '../earth/between.ts';
import { localFrame } from '../earth/frame.ts';
import { shareNearest } from '../earth/segment.ts';
import type { Place } from '../earth/sphere.ts';

/** Where a drive comes nearest to a place, once for each time that it passes. */
export interface Pass {
  /** metres along the drive */
  readonly atM: number;
  readonly awayM: number;
}

/** A place so far beside the drive that it has come back from further off is passed anew. Metres driven. */
const ANEW_M = 2_000;

/** Every pass of a drive within reach of a place, in driving order. */
export function passesOf(
  { lat, lon, atM }: Pick<DriveTrace, 'lat' | 'lon' | 'atM'>,
  place: Place,
  reachM: number,
): Pass[] {
  const frame = localFrame(place.lat, place.lon);
  const reachDeg = reachM / frame.metresPerDegLat;
  const passes: Pass[] = [];
  let lastM = Number.NEGATIVE_INFINITY;
  for (let i = 0; i + 1 < atM.length; i++) {
    // most of a drive lies north or south of the place, and costs two comparisons
    if (
      Math.min(lat[i]!, lat[i + 1]!) > place.lat + reachDeg ||
      Math.max(lat[i]!, lat[i + 1]!) < place.lat - reachDeg
    )
      continue;
    const [a, b] = [frame.toXY(lat[i]!, lon[i]!), frame.toXY(lat[i + 1]!, lon[i + 1]!)];
    const t = shareNearest(-a.x, -a.y, b.x - a.x, b.y - a.y);
    const awayM = Math.hypot(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y));
    if (awayM > reachM) continue;
    const pass = { atM: mix(atM[i]!, atM[i + 1]!, t), awayM };
    const before = passes.at(-1);
    if (before === undefined || atM[i]! - lastM > Math.min(ANEW_M, 4 * reachM)) passes.push(pass);
    else if (awayM < before.awayM) passes[passes.length - 1] = pass;
    lastM = atM[i + 1]!;
  }
  return passes;
}
