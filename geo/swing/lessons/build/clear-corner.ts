/** A corner on the inside, seen from the straight before it. Metres. */
interface InnerCorner {
  /** inner body side on its arc: R − W/2 */
  readonly sideRadiusM: number;
  /** between the body's inner side and the kerb line it drives along */
  readonly besideM: number;
  readonly kerbRadiusM: number;
  readonly clearanceM: number;
}

/**
 * How far before the inner edge of a road at right angles the rear axle may begin to turn, so that the body's inner
 * side clears the rounded corner: kerb arc of radius k round K, side on an arc round O; |OK| + k ≤ side radius − m
 * where O lies within the corner as seen from K, else the side need only clear the road's edge after the turn.
 */
export function turnBeforeM({ sideRadiusM, besideM, kerbRadiusM, clearanceM }: InnerCorner): number {
  // a side that is nearer than the clearance all along cannot keep it at the corner either
  const m = Math.min(clearanceM, Math.max(0, besideM));
  const beyondM = sideRadiusM - besideM - kerbRadiusM;
  if (beyondM <= 0) return sideRadiusM - m;
  return kerbRadiusM + Math.sqrt(Math.max(0, (sideRadiusM - m - kerbRadiusM) ** 2 - beyondM ** 2));
}
