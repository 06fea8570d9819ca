import { dependsOnSun } from '../clock/hours.ts';
import { hoursChanges } from '../clock/hours-changes.ts';
import { alpha2 } from '../country/country-of.ts';
import { secondsAt, type Timetable } from '../drive/times/timetable.ts';
import { largest, smallest } from '../lists.ts';
import { placeAt } from '../rules/places.ts';
import type { RuleInput } from '../rules/rule.ts';
import type { AskedPlace } from './asked-places.ts';
import type { LeaveDay } from './leave-minutes.ts';

const MINUTE_MS = 60_000;

/**
 * The moments of leaving at which what holds at a place turns: when hours mapped there begin or end, less the driving
 * to its beginning and to its end. Rising, milliseconds since 1970, whole minutes.
 */
export type TurningPoints = (asked: AskedPlace) => number[];

/** Hours that many places share are worked out once. */
export function turningPoints(input: RuleInput, times: Timetable, day: LeaveDay): TurningPoints {
  const fromMs = smallest(day.unixMs);
  const toMs = largest(day.unixMs) + secondsAt(times, Number.POSITIVE_INFINITY) * 1000 + MINUTE_MS;
  const known = new Map<string, number[]>();
  const changesAt = (text: string, m: number): number[] => {
    const zone = input.along.clockLeaving(m, fromMs)?.zone;
    if (zone === undefined) return [];
    const where = placeAt(input, m);
    const code = input.along.countryAt(m);
    const country = code === undefined ? undefined : alpha2(code);
    const key = JSON.stringify([text, zone, country, dependsOnSun(text) && where]);
    const found = known.get(key) ?? hoursChanges(text, { zone, fromMs, toMs }, { ...where, country });
    known.set(key, found);
    return found;
  };
  return ({ place, hours }) => {
    const points = new Set<number>();
    for (const m of new Set([place.fromM, place.toM])) {
      const drivenMs = secondsAt(times, m) * 1000;
      for (const text of hours)
        for (const changeMs of changesAt(text, m)) points.add(firstLeaving(changeMs, drivenMs));
    }
    return [...points].sort((a, b) => a - b);
  };
}

/** The first whole minute of leaving that comes at or after a change on the clock. */
function firstLeaving(changeMs: number, drivenMs: number): number {
  const minute = Math.ceil((changeMs - drivenMs) / MINUTE_MS) * MINUTE_MS;
  // as the check adds them up, so that rounding falls the same way
  return minute - MINUTE_MS + drivenMs >= changeMs ? minute - MINUTE_MS : minute;
}
