import { distanceM, type Place } from '../../earth/sphere.ts';
import { fail, type Result } from '../../result.ts';
import { lengthIn } from '../../units/in-units.ts';
import type { PlanInput } from './plan-input.ts';
import { FARTHEST_M, type NoRoad } from './snap.ts';

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

/** A place that cannot be put on a road. @param i counted from 0 */
export function placeProblem(
  { places, roads, units = 'metric' }: Pick<PlanInput, 'places' | 'roads' | 'units'>,
  i: number,
  { none, nearest }: NoRoad,
): Result<never> {
  const { lat, lon } = places[i] as Place;
  const which = `Place ${i + 1} (${lat.toFixed(5)}, ${lon.toFixed(5)})`;
  if (none === 'none for us') {
    const why =
      nearest === undefined
        ? ' Only paths and the like are mapped there.'
        : ` ${nearest.name ?? 'The nearest'}, ${lengthIn(units, nearest.awayM)} from it, is closed to it. ${nearest.say}`;
    return fail(
      'place closed',
      `${which}: no road within ${FARTHEST_M / 1000} km is open to this vehicle.${why} Choose a place on a road it may use.`,
    );
  }
  const swapped = Math.abs(lon) <= 90 && roads.index.near(lon, lat, 1000).length > 0;
  return swapped
    ? fail(
        'place swapped',
        `${which} lies off the map, but with latitude and longitude swapped it lies on it. Latitude comes first.`,
      )
    : fail(
        'place off the map',
        `${which}: no road within ${FARTHEST_M / 1000} km is on the map that is loaded. Choose a place on land, or load the map there.`,
      );
}
