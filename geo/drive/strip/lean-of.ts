import { turnRightDeg } from '../../earth/angles.ts';
import { clamp } from '../../earth/between.ts';
import { bearingDeg } from '../../earth/sphere.ts';
import type { DriveTrace } from '../times/trace.ts';
import { placesEvery } from './places-every.ts';

const STEPS_MOST = 2000;
const STEP_LEAST_M = 80;
/** A turn of this much, looked at over `REACH` steps either way, leans the ribbon as far as it goes. Degrees. */
const FULL_LEAN_DEG = 140;
const REACH = 3;

/** How the road bends, hinted and smoothed: the change of heading about each place, left negative. */
export function leanOf(trace: DriveTrace, lengthM: number): { lean: number[]; leanStepM: number } {
  const leanStepM = Math.max(STEP_LEAST_M, lengthM / STEPS_MOST);
  const places = placesEvery(trace, lengthM, leanStepM);
  const turn = places.map((place, i) => {
    const back = places[i - REACH];
    const ahead = places[i + REACH];
    if (back === undefined || ahead === undefined) return 0;
    const came = bearingDeg(back.lat, back.lon, place.lat, place.lon);
    const goes = bearingDeg(place.lat, place.lon, ahead.lat, ahead.lon);
    return clamp(turnRightDeg(came, goes) / FULL_LEAN_DEG, -1, 1);
  });
  const lean = turn.map((_, i) => {
    const near = turn.slice(Math.max(0, i - REACH), i + REACH + 1);
    // JSON knows no minus nought
    return Math.round((100 * near.reduce((sum, each) => sum + each, 0)) / near.length) / 100 || 0;
  });
  return { lean, leanStepM };
}
