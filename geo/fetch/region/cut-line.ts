import { wrapLon } from '../../earth/angles.ts';
import { distanceM } from '../../earth/sphere.ts';
import type { DrawnRoute } from '../../roads/discs.ts';

/** What crosses a border within one piece is whole in the maps of both sides. Metres. */
export const PIECE_M = 250;

/** A drawn line cut into short pieces, in order; the pieces of one segment follow each other without a break. */
export interface Pieces {
  readonly count: number;
  /** middles, degrees; longitudes may run beyond ±180 so that neighbours stay neighbours */
  readonly lat: Float64Array;
  readonly lon: Float64Array;
  readonly lengthM: Float64Array;
}

export function cutLine(route: DrawnRoute): Pieces {
  const lats: number[] = [];
  const lons: number[] = [];
  const lengths: number[] = [];
  const add = (lat: number, lon: number, lengthM: number) => {
    lats.push(lat);
    lons.push(lon);
    lengths.push(lengthM);
  };
  let before: number | undefined;
  for (const { lat, lon } of route.segments) {
    // positions set closer than a piece are one piece together
    let heldM = 0;
    for (let i = 0; i < lat.length; i++) {
      const last = before;
      const here: number = last === undefined ? lon[i]! : last + wrapLon(lon[i]! - last);
      before = here;
      if (i === 0 || last === undefined) continue;
      const legM = distanceM(lat[i - 1]!, last, lat[i]!, here);
      heldM += legM;
      const isEnd = i === lat.length - 1;
      if (heldM < PIECE_M && !isEnd) continue;
      const steps = Math.max(1, Math.round(legM / PIECE_M));
      for (let step = 0; step < steps; step++) {
        const share = (step + 0.5) / steps;
        add(lat[i - 1]! + share * (lat[i]! - lat[i - 1]!), last + share * (here - last), heldM / steps);
      }
      heldM = 0;
    }
  }
  return {
    count: lats.length,
    lat: Float64Array.from(lats),
    lon: Float64Array.from(lons),
    lengthM: Float64Array.from(lengths),
  };
}
