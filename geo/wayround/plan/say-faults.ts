import { distanceM, type Place } from '../../earth/sphere.ts';
import { fail, type Result } from '../../result.ts';

/** More places than this are a recorded track, not a plan. */
const MOST_PLACES = 100;
/** Closer than this two places are one. Metres. */
const SAME_PLACE_M = 2;

/** What is wrong with the places of a plan before any map is asked. */
export function placeFault(places: readonly Place[]): Result<never> | undefined {
  if (places.length < 2)
    return fail('place missing', 'A drive needs two places or more: where it begins and where it ends.');
  if (places.length > MOST_PLACES)
    return fail(
      'place too many',
      `${places.length} places are too many for a plan: give up to ${MOST_PLACES}.`,
    );
  for (const [i, { lat, lon }] of places.entries())
    if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180))
      return fail(
        'place off the Earth',
        `Place ${i + 1} (${lat}, ${lon}) is not on the Earth: latitude lies between -90 and 90 and comes first, longitude between -180 and 180.`,
      );
  for (const [i, { lat, lon }] of places.entries()) {
    const before = places[i - 1];
    if (before !== undefined && distanceM(before.lat, before.lon, lat, lon) < SAME_PLACE_M)
      return fail('place twice', `Places ${i} and ${i + 1} are the same: move one, or leave it out.`);
  }
  return undefined;
}

/** @param leg counted from 0 */
export function sayNoLeg(leg: number, places: number): string {
  const via = leg > 0 && leg + 2 <= places ? ` without turning round at place ${leg + 1}` : '';
  return `No road on the map leads this vehicle from place ${leg + 1} to place ${leg + 2}${via}. Move one of them, or load more of the map.`;
}
