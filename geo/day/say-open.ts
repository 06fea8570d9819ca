import type { StopTimes } from '../report/day.ts';

/** Whether a stop is open when the vehicle comes; undefined of a stop that is no mapped place. */
export function sayOpen({ open, osm, arriveAt }: StopTimes): string | undefined {
  if (open !== undefined) return open.say;
  if (osm === undefined) return undefined;
  return arriveAt === undefined
    ? 'Whether it is open then is not known: no leave time is given.'
    : 'Its hours are not mapped.';
}
