import type { LocalMoment } from '../clock/moment.ts';
import { clockOf } from '../clock/zone.ts';
import type { CountrySpan } from '../country/country-of.ts';
import type { CountryRule } from '../country/rule.ts';
import { ruleFor } from '../country/table.ts';
import type { Drive } from '../drive/drive.ts';
import { placeDriven } from '../drive/point-at.ts';
import { type Leaving, zoneFor } from '../drive/times/leaving.ts';
import { secondsAt, type Timetable } from '../drive/times/timetable.ts';
import type { Roads } from '../roads/roads.ts';
import type { Place } from './places.ts';

/** What holds at each place of one drive. Places are metres along it. */
export interface Along {
  /** as `countryOf` has it, or what the user gave where the place tells none */
  countryAt(m: number): string | undefined;
  /** the country's row; a fallback of code `other` where none is known */
  ruleAt(m: number): CountryRule;
  /**
   * the place's own clock when the vehicle passes; undefined without a leave time
   * @param judged what is judged by that clock; left out where the time is only told
   */
  clockAt(m: number, judged?: Place): LocalMoment | undefined;
  /** the same for a drive that leaves at another moment, milliseconds since 1970 */
  clockLeaving(m: number, unixMs: number): LocalMoment | undefined;
}

export interface AlongOptions {
  readonly countries: readonly CountrySpan[];
  /** stands in where the place tells none */
  readonly country?: string | undefined;
  /** both or neither: without a leave time there is no clock */
  readonly leaving?: Leaving | undefined;
  readonly times?: Timetable | undefined;
}

/** Country, rules and clock along a drive. */
export function alongDrive(drive: Drive, roads: Roads, options: AlongOptions): Along {
  const { countries, country, leaving, times } = options;
  const countryAt = (m: number) =>
    (countries.find((span) => m <= span.toM) ?? countries.at(-1))?.country ?? country;
  const zones = new Map<number, string>();
  const zoneOf = (m: number) => {
    const known = zones.get(m);
    if (known !== undefined) return known;
    const place = placeDriven(drive, roads, m);
    const zone = zoneFor(place.lat, place.lon, country);
    zones.set(m, zone);
    return zone;
  };
  const clockLeaving = (m: number, unixMs: number) => {
    if (times === undefined) return undefined;
    const clock = clockOf(zoneOf(m), unixMs + secondsAt(times, m) * 1000);
    return clock.ok ? clock.value : undefined;
  };
  return {
    countryAt,
    ruleAt: (m) => ruleFor(countryAt(m)).rule,
    clockAt: (m) => (leaving === undefined ? undefined : clockLeaving(m, leaving.unixMs)),
    clockLeaving,
  };
}
