import { isoText, type LocalMoment } from '../clock/moment.ts';
import { readWallTime } from '../clock/read-wall-time.ts';
import { clockOf, instantOf } from '../clock/zone.ts';
import { placeDriven } from '../drive/point-at.ts';
import { zoneFor } from '../drive/times/leaving.ts';
import type { DayInput } from './day-input.ts';

type OnRoads = Pick<DayInput, 'drive' | 'roads' | 'country'>;

/** What the clock of a place on the drive shows at a moment; neither the one nor the other where no moment is given. */
export type ClockAlong = (m: number, unixMs: number | undefined) => string | undefined;

export function clockAlong(on: OnRoads): ClockAlong {
  return (m, unixMs) => {
    const moment = unixMs === undefined ? undefined : momentAt(on, m, unixMs);
    return moment && isoText(moment);
  };
}

export function momentAt(on: OnRoads, m: number, unixMs: number): LocalMoment | undefined {
  const clock = clockOf(zoneOf(on, m), unixMs);
  return clock.ok ? clock.value : undefined;
}

function zoneOf({ drive, roads, country }: OnRoads, m: number): string {
  const place = placeDriven(drive, roads, m);
  return zoneFor(place.lat, place.lon, country);
}

/** When the yard takes the vehicle back at the latest. */
export interface Home {
  readonly unixMs?: number;
  /** a sentence where the clocks change and the time comes twice or not at all, or where it is none */
  readonly note?: string;
}

/** The return hour on the clock of the drive's end. Where the clocks show it twice it is the earlier. */
export function homeAt(on: OnRoads, homeBy: string | undefined): Home {
  if (homeBy === undefined) return {};
  const wall = readWallTime(homeBy);
  if (!wall.ok) return { note: wall.error.message };
  const instant = instantOf(wall.value, zoneOf(on, on.drive.lengthM));
  if (!instant.ok) return { note: instant.error.message };
  const { unixMs, occurs } = instant.value;
  const time = homeBy.slice(11, 16);
  if (occurs === 'skipped')
    return {
      unixMs,
      note: `There is no ${time} that night: the clocks go forward over it. The return hour is taken an hour later by the new time.`,
    };
  if (occurs === 'twice')
    return {
      unixMs,
      note: `The clocks show ${time} twice that night: the return hour is taken as the earlier one.`,
    };
  return { unixMs };
}
