import { alpha2 } from '../country/country-of.ts';
import { firstAtLeast } from '../earth/bisect.ts';
import { given } from '../given.ts';
import type { StopTimes } from '../report/day.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { openAt } from '../services/open-at.ts';
import { momentAt } from './clocks.ts';
import type { DayInput } from './day-input.ts';
import type { MetStop } from './meet-stops.ts';
import type { DayStop } from './plan.ts';

/**
 * Whether a stop is open when the vehicle comes: by what the map has now, else, where the place is not among what was
 * read, by the hours it had when it was chosen.
 */
export function openAtStop(
  input: DayInput,
  { stop, atM }: MetStop,
  arriveMs: number | undefined,
): StopTimes['open'] {
  const now = stop.osm && tagsOf(input.roads, stop.osm);
  const hours = now === undefined ? stop.hours : now['opening_hours'];
  const moment = arriveMs === undefined ? undefined : momentAt(input, atM, arriveMs);
  if (hours === undefined || moment === undefined) return undefined;
  const { countries } = input.times;
  const code = (countries.find(({ toM }) => atM <= toM) ?? countries.at(-1))?.country ?? input.country;
  const country = code === undefined ? undefined : alpha2(code);
  return { hours, ...openAt(hours, moment, { lat: stop.lat, lon: stop.lon, ...given({ country }) }) };
}

/** Tags of a mapped thing, where it is among what was read about the drive. */
function tagsOf({ nodes, ways }: Roads, { type, id }: NonNullable<DayStop['osm']>): Tags | undefined {
  const ids = type === 'node' ? nodes.id : ways.id;
  const at = firstAtLeast(ids, id);
  if (ids[at] !== id) return undefined;
  return type === 'node' ? nodes.tags.get(at) : ways.tags[at];
}
