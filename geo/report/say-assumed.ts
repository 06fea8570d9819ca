import { METRES_PER_FOOT } from '../units/exact.ts';
import { inUnits, type Units } from '../units/in-units.ts';
import type { AssumedSize } from './turn.ts';

/** The figures that stand in for what is not mapped, `lane 2.6 m, kerb radius 6 m`; '' where all is mapped. */
export function sayAssumed(assumed: readonly AssumedSize[], units: Units): string {
  return assumed.map((size) => sayOne(size, units)).join(', ');
}

function sayOne(size: AssumedSize, units: Units): string {
  const { insteadOf } = size;
  return insteadOf === undefined
    ? saySize(size, units)
    : `${saySize(size, units)} ("${insteadOf}" is mapped, and not believed)`;
}

function saySize({ what, m }: AssumedSize, units: Units): string {
  // two decimals at most, no idle noughts
  const size = inUnits(units, `${Number(m.toFixed(2))} m`, `${Number((m / METRES_PER_FOOT).toFixed(1))} ft`);
  switch (what) {
    case 'ring width':
      return `ring ${size} wide`;
    case 'mini-roundabout':
    case 'turning place':
      return `${what} ${size} across`;
    default:
      return `${what} ${size}`;
  }
}
