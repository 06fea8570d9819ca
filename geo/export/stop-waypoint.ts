import { dateOf, sayServices, sayStop } from '../day/say-stop.ts';
import type { Waypoint } from '../drive/gpx/gpx-text.ts';
import type { Day } from '../report/day.ts';
import { clip, plainLine } from '../units/text.ts';

/** Small devices show so many characters of a name. */
const NAME_LONGEST = 10;
/** No file needs more of what is done at a stop. */
const TYPE_LONGEST = 80;

/**
 * The stops of a day that the drive meets, as waypoints in driving order: `S1 Mill`, so that none is taken for a numbered
 * finding. The whole name, where and when are in the comment; what is done there with tanks is its type.
 */
export function stopWaypoints(day: Day): Waypoint[] {
  const date = dateOf(day);
  return day.stops.map((stop, i) => {
    const { name, at, times, note } = sayStop(stop, date);
    const todo = sayServices(stop);
    return {
      lat: stop.lat,
      lon: stop.lon,
      name: shortName(`S${i + 1} ${plainLine(stop.name)}`),
      comment: `Stop ${i + 1}: ${[name, at, times].filter((part) => part !== '').join(', ')}`,
      ...(note === '' ? {} : { description: note }),
      symbol: 'Flag',
      type: todo === '' ? 'Stop' : clip(`Stop: ${todo}`, TYPE_LONGEST),
      stop: { atM: stop.atM },
    };
  });
}

function shortName(name: string): string {
  return [...name].slice(0, NAME_LONGEST).join('').trim();
}
