import type { Leg } from './drive.ts';

/** Where along the drive a leg ends. */
export function endOf(leg: Leg): number {
  return leg.kind === 'gap' ? leg.atM : leg.toM;
}
