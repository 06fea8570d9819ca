import { METRES_PER_INCH } from './exact.ts';

/** The finest that a tape in inches is read to. */
const SIXTEENTH_M = METRES_PER_INCH / 16;
/** Figures are kept to a tenth of a millimetre. */
const KEPT_M = 0.6e-4;
/** Noise of binary fractions. */
const EXACT_M = 1e-7;

/** Whether a figure can only have been measured in inches: whole sixteenths of one, and no whole millimetres. */
export function isOfInches(m: number): boolean {
  return isWhole(m, SIXTEENTH_M, KEPT_M) && !isWhole(m, 0.001, EXACT_M);
}

/**
 * A length as it stands in a field: metres, or feet and inches where it was measured so.
 * @param inFeet what fits both, such as 3.81 m or 12'6", is written in feet and inches
 */
export function lengthEntry(m: number, { inFeet }: { readonly inFeet: boolean }): string {
  const feet = isOfInches(m) || (inFeet && m !== 0 && isWhole(m, SIXTEENTH_M, EXACT_M));
  return feet ? feetEntry(m) : String(m).replace('-', '−');
}

/** The same as `lengthEntry` where the figure is nobody's own, as of something moved by hand: to the nearest half inch. */
export function nearestFeetEntry(m: number): string {
  const half = METRES_PER_INCH / 2;
  return feetEntry(Math.round(m / half) * half);
}

/** `10'1 1/2"` */
function feetEntry(m: number): string {
  const sixteenths = Math.round(Math.abs(m) / SIXTEENTH_M);
  const inches = Math.floor(sixteenths / 16);
  const sign = m < 0 && sixteenths > 0 ? '−' : '';
  return `${sign}${Math.floor(inches / 12)}'${inches % 12}${fraction(sixteenths % 16)}"`;
}

function fraction(sixteenths: number): string {
  if (sixteenths === 0) return '';
  let [over, under] = [sixteenths, 16];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return ` ${over}/${under}`;
}

function isWhole(m: number, step: number, slack: number): boolean {
  const steps = Math.round(m / step);
  return Math.abs(m - steps * step) <= slack;
}
