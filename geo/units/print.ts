import { METRES_PER_FOOT, METRES_PER_INCH, METRES_PER_MILE } from './exact.ts';

/** Which way a figure is rounded: a limit down and a vehicle up, so that rounding never flatters the driver. */
export type Rounding = 'down' | 'up' | 'nearest';

/** Parts of a step below this are noise of binary fractions, not sizes. */
export const NOISE_STEPS = 1e-6;

function roundTo(value: number, step: number, rounding: Rounding): number {
  const steps = value / step;
  if (rounding === 'down') return Math.floor(steps + NOISE_STEPS);
  if (rounding === 'up') return Math.ceil(steps - NOISE_STEPS);
  return Math.round(steps);
}

/** `3.20 m` */
export function printMetres(m: number, rounding: Rounding = 'nearest'): string {
  return `${(roundTo(m, 0.01, rounding) / 100).toFixed(2)} m`;
}

/** `46 cm`: whole centimetres */
export function printCm(m: number, rounding: Rounding = 'nearest'): string {
  return `${roundTo(m, 0.01, rounding)} cm`;
}

/** `18 in`: whole inches */
export function printInches(m: number, rounding: Rounding = 'nearest'): string {
  return `${roundTo(m, METRES_PER_INCH, rounding)} in`;
}

/** `10'6"`: whole inches */
export function printFeetInches(m: number, rounding: Rounding): string {
  const inches = roundTo(m, METRES_PER_INCH, rounding);
  const sign = inches < 0 ? '-' : '';
  const whole = Math.abs(inches);
  return `${sign}${Math.floor(whole / 12)}'${whole % 12}"`;
}

/** `18 in` or `18½ in`: the nearest half inch */
export function printHalfInches(m: number): string {
  return `${halves(m)} in`;
}

/** `10'6"`, `10'6½"` or `8'0½"`: the nearest half inch */
export function printFeetHalfInches(m: number): string {
  const feet = Math.floor(roundTo(Math.abs(m), METRES_PER_INCH / 2, 'nearest') / 24);
  const sign = roundTo(m, METRES_PER_INCH / 2, 'nearest') < 0 ? '-' : '';
  // a half alone behind the feet would be read as of a foot
  return `${sign}${feet}'${halves(Math.abs(m) - feet * METRES_PER_FOOT).replace(/^½/u, '0½')}"`;
}

/** `6`, `6½`, `½`, `-6½` */
function halves(m: number): string {
  const count = roundTo(m, METRES_PER_INCH / 2, 'nearest');
  const [whole, half] = [Math.floor(Math.abs(count) / 2), Math.abs(count) % 2 === 1 ? '½' : ''];
  return `${count < 0 ? '-' : ''}${whole === 0 && half !== '' ? '' : whole}${half}`;
}

/**
 * A limit as the driver reads it, rounded down: `3.20 m (10'5")`
 * @param sizeM the size it is held against: where that just fits, the feet of both are the same
 */
export function printLimitM(m: number, sizeM?: number): string {
  return `${printMetres(m, 'down')} (${printLimitFeet(m, sizeM)})`;
}

/**
 * The feet and inches of a limit, rounded down; up where a size that is no more than the limit, itself rounded up,
 * would read as if it were more.
 */
export function printLimitFeet(m: number, sizeM?: number): string {
  const looksTooLow =
    sizeM !== undefined &&
    sizeM <= m + NOISE_STEPS &&
    roundTo(m, METRES_PER_INCH, 'down') < roundTo(sizeM, METRES_PER_INCH, 'up');
  return printFeetInches(m, looksTooLow ? 'up' : 'down');
}

/** A vehicle's size, rounded up: `3.25 m (10'8")` */
export function printSizeM(m: number): string {
  return `${printMetres(m, 'up')} (${printFeetInches(m, 'up')})`;
}

/** `3500 kg`, whole kilograms */
export function printKg(kg: number, rounding: Rounding = 'nearest'): string {
  return `${roundTo(kg, 1, rounding)} kg`;
}

/** `3.5 t`, as many decimals as it has, three at most */
export function printTonnes(kg: number, rounding: Rounding = 'nearest'): string {
  return `${roundTo(kg, 1, rounding) / 1000} t`;
}

/** `26 litres`: the sign for it is read as a one or an I. @param decimals at most so many */
export function printLitres(litres: number, rounding: Rounding = 'nearest', decimals = 0): string {
  const each = 10 ** decimals;
  const shown = roundTo(litres, 1 / each, rounding) / each;
  return `${shown} ${shown === 1 ? 'litre' : 'litres'}`;
}

/** `52 %` of a fraction */
export function printPercent(fraction: number): string {
  return `${Math.round(fraction * 100)} %`;
}

/** `12.3 km` */
export function printKm(m: number): string {
  return `${(m / 1000).toFixed(1)} km`;
}

/** A distance between two points of a file: `84 m` under a kilometre, else `1.2 km` */
export function printApart(m: number): string {
  return m < 1000 ? `${Math.round(m)} m` : printKm(m);
}

/** `7.6 mi` */
export function printMiles(m: number): string {
  return `${(m / METRES_PER_MILE).toFixed(1)} mi`;
}

/** A run of road in words: `90 yd` under a tenth of a mile, which would read as none, else `0.1 mi` */
export function printShortMiles(m: number): string {
  if (m >= METRES_PER_MILE / 10) return printMiles(m);
  return `${Math.max(10, Math.round(m / (3 * METRES_PER_FOOT) / 10) * 10)} yd`;
}

/** A run of road in words: `80 m` under a kilometre, else `1.2 km` */
export function printRun(m: number): string {
  return m < 995 ? `${Math.max(10, Math.round(m / 10) * 10)} m` : printKm(m);
}

/** How much a file holds: `180 kB`, `1.8 MB`, `463 MB`, `4.4 GB`; decimal, as disks and lines are sold */
export function printBytes(bytes: number): string {
  if (bytes < 999_500) return `${Math.ceil(bytes / 1e3)} kB`;
  if (bytes < 9_950_000) return `${(bytes / 1e6).toFixed(1)} MB`;
  return bytes < 999.5e6 ? `${Math.round(bytes / 1e6)} MB` : `${(bytes / 1e9).toFixed(1)} GB`;
}
