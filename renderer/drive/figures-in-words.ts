import type { Finding } from '../../geo/report/report.ts';
import {
  printFeetInches,
  printKg,
  printKm,
  printLimitFeet,
  printMetres,
  printMiles,
  printRun,
  type Rounding,
} from '../../geo/units/print.ts';
import type { Settings } from '../../main/contract/settings.ts';

type Units = Settings['units'];

/** A size: `3.20 m`, `10'5"`, or both. */
export function sizeText(m: number, rounding: Rounding, units: Units): string {
  const [metres, feet] = [minus(printMetres(m, rounding)), minus(printFeetInches(m, rounding))];
  return units === 'metric' ? metres : units === 'imperial' ? feet : `${metres} (${feet})`;
}

/** A limit, and feet of it that go with those of the size it is held against. */
function limitText(m: number, sizeM: number, units: Units): string {
  const [metres, feet] = [minus(printMetres(m, 'down')), minus(printLimitFeet(m, sizeM))];
  return units === 'metric' ? metres : units === 'imperial' ? feet : `${metres} (${feet})`;
}

/** A distance along the drive: `2.2 km`, `1.4 mi`, or both. */
export function distanceText(m: number, units: Units): string {
  if (units === 'metric') return printKm(m);
  return units === 'imperial' ? printMiles(m) : `${printKm(m)} (${printMiles(m)})`;
}

/** How long a stretch is: `80 m`, `1.2 km`, `0.1 mi`. */
export function runText(m: number, units: Units): string {
  if (units === 'metric') return printRun(m);
  return units === 'imperial' ? printMiles(m) : `${printRun(m)} (${printMiles(m)})`;
}

/** limit − vehicle = spare, every part rounded against the driver. */
export interface Sum {
  readonly limit: string;
  readonly vehicle: string;
  readonly what: string;
  /** with its sign */
  readonly spare: string;
  readonly over: boolean;
  /** the spare without its sign, for a row */
  readonly short: string;
}

/** @returns undefined where no figure decides */
export function sumOf(finding: Finding, units: Units): Sum | undefined {
  const { limit, vehicle, spare } = finding;
  if (!limit || !vehicle || spare === undefined) return undefined;
  // what the rule compared: a height carries its measuring allowance
  const compared = limit.value - spare;
  const print = (value: number, rounding: Rounding) => quantity(value, limit.unit, rounding, units);
  return {
    limit: limit.unit === 'm' ? limitText(limit.value, compared, units) : print(limit.value, 'down'),
    vehicle: print(compared, 'up'),
    what:
      Math.abs(compared - vehicle.value) > 1e-6
        ? `${vehicle.what} ${print(vehicle.value, 'up')}, with ${print(compared - vehicle.value, 'up')} for measuring`
        : vehicle.what,
    spare: print(spare, 'down'),
    over: spare < 0,
    short: print(Math.abs(spare), spare < 0 ? 'up' : 'down'),
  };
}

function quantity(value: number, unit: string, rounding: Rounding, units: Units): string {
  if (unit === 'm') return sizeText(value, rounding, units);
  if (unit === 'kg') return minus(printKg(value, rounding));
  const rounded = rounding === 'down' ? Math.floor(value * 10 + 1e-6) : Math.ceil(value * 10 - 1e-6);
  return minus(`${rounded / 10}${unit === 'deg' ? '°' : ` ${unit}`}`);
}

/** A true minus sign is as wide as a figure. */
function minus(text: string): string {
  return text.replace(/^-/, '−');
}

/** `09:33` of a pass time with its offset; with the date where that is not the day of leaving. */
export function clockText(iso: string, leaveAt: string | undefined): string {
  const [date = '', time = ''] = iso.split('T');
  const clock = time.slice(0, 5);
  return leaveAt === undefined || leaveAt.startsWith(date) ? clock : `${date} ${clock}`;
}

/** `1 h 5 min` */
export function durationText(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${minutes % 60} min`;
}
