import type { Leg } from '../../drive/drive.ts';

const SAME_PLACE_M = 1e-3;

/** The part of a leg between two places of its drive; nothing where it lies outside. Metres along the drive. */
export function cut(leg: Leg, lowM: number, highM: number): Leg[] {
  if (leg.kind === 'gap') return leg.atM > lowM && leg.atM < highM ? [leg] : [];
  const [fromM, toM] = [Math.max(leg.fromM, lowM), Math.min(leg.toM, highM)];
  if (toM - fromM < SAME_PLACE_M) return [];
  // ways round leave and meet the drive at nodes of its roads alone
  if (leg.kind === 'offMap') return [leg];
  const sign = leg.forward ? 1 : -1;
  const alongFromM = leg.alongFromM + sign * (fromM - leg.fromM);
  return [{ ...leg, fromM, toM, alongFromM, alongToM: leg.alongToM - sign * (leg.toM - toM) }];
}

/** The same leg so many metres farther along. */
export function moved(leg: Leg, byM: number): Leg {
  return leg.kind === 'gap'
    ? { ...leg, atM: leg.atM + byM }
    : { ...leg, fromM: leg.fromM + byM, toM: leg.toM + byM };
}
