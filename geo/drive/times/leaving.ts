import { readWallTime } from '../../clock/read-wall-time.ts';
import { instantOf, zoneAt } from '../../clock/zone.ts';
import { countryOf } from '../../country/country-of.ts';
import { lookUp } from '../../country/look-up.ts';
import { ok, type Result } from '../../result.ts';
import type { Roads } from '../../roads/roads.ts';
import type { Drive } from '../drive.ts';
import { placeDriven } from '../point-at.ts';

/** When a drive sets off. */
export interface Leaving {
  /** as the user wrote it */
  readonly text: string;
  /** milliseconds since 1970 */
  readonly unixMs: number;
  /** a sentence where the clocks change and the time comes twice or not at all */
  readonly note?: string;
}

/** Clocks of the countries with one zone on their mainland, for places that do not tell their country. */
const ZONES: Readonly<Record<string, string>> = {
  GB: 'Europe/London',
  IE: 'Europe/Dublin',
  FR: 'Europe/Paris',
  DE: 'Europe/Berlin',
  ES: 'Europe/Madrid',
  IT: 'Europe/Rome',
  NL: 'Europe/Amsterdam',
  BE: 'Europe/Brussels',
  AT: 'Europe/Vienna',
  CH: 'Europe/Zurich',
};

/**
 * The time zone of a place (degrees). A place at sea has the clock of the country that stands in for it, where that
 * has only one.
 */
export function zoneFor(lat: number, lon: number, country?: string): string {
  const standIn = lookUp(ZONES, country?.slice(0, 2));
  if (standIn !== undefined && countryOf(lat, lon) === undefined) return standIn;
  const zone = zoneAt(lat, lon);
  return zone.ok ? zone.value : 'Etc/UTC';
}

/**
 * Reads a leave time, 2027-06-12T09:30, on the clocks of the place where the drive begins. A time that the clocks skip
 * is taken as if they had not been put forward, one they show twice is the earlier; both are said.
 * @param country stands in where the place tells none (ISO 3166-1 alpha-2)
 */
export function readLeaving(text: string, drive: Drive, roads: Roads, country?: string): Result<Leaving> {
  const wall = readWallTime(text);
  if (!wall.ok) return wall;
  const start = placeDriven(drive, roads, 0);
  const instant = instantOf(wall.value, zoneFor(start.lat, start.lon, country));
  if (!instant.ok) return instant;
  const { unixMs, occurs } = instant.value;
  const time = text.trim().slice(11, 16);
  if (occurs === 'skipped')
    return ok({
      text,
      unixMs,
      note: `There is no ${time} that night: the clocks go forward over it. The drive is taken to leave an hour later by the new time.`,
    });
  if (occurs === 'twice')
    return ok({
      text,
      unixMs,
      note: `The clocks show ${time} twice that night: the drive is taken to leave at the earlier one.`,
    });
  return ok({ text, unixMs });
}
