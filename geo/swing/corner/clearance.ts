import type { Turn } from '../../report/turn.ts';

/** Kept free on every side at a corner, which one sees. Metres; judgement. */
export const CORNER_CLEARANCE_M = 0.15;
/** Kept free on every side of a circle or a bend, which one does not see whole. Metres; judgement. */
export const CIRCLE_CLEARANCE_M = 0.3;
/** How far behind the kerb line posts, lamps and signs stand. Metres; common practice in the UK, from memory. */
export const POST_BACK_M = 0.45;

/** Kept free on every side of a turn. Metres. */
export function clearanceOf({ circleM, bendRadiusM }: Pick<Turn, 'circleM' | 'bendRadiusM'>): number {
  return circleM === undefined && bendRadiusM === undefined ? CORNER_CLEARANCE_M : CIRCLE_CLEARANCE_M;
}
