import type { AssumedSize } from './turn.ts';

/** The figures that stand in for what is not mapped, `lane 2.6 m, kerb radius 6 m`; '' where all is mapped. */
export function sayAssumed(assumed: readonly AssumedSize[]): string {
  return assumed.map(sayOne).join(', ');
}

function sayOne(size: AssumedSize): string {
  const { insteadOf } = size;
  return insteadOf === undefined
    ? saySize(size)
    : `${saySize(size)} ("${insteadOf}" is mapped, and not believed)`;
}

function saySize({ what, m }: AssumedSize): string {
  // two decimals at most, no idle noughts
  const size = `${Number(m.toFixed(2))} m`;
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
