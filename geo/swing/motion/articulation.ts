/*
 * The angle α between a vehicle and the direction in which its guided point runs, a metres ahead of the rear axle
 * (behind it: a negative): dα/ds = k − sin α / a on a path of curvature k. With u = tan(α/2) this is a Riccati equation,
 * u′ = (k/2)u² − u/a + k/2, which lines and arcs solve in closed form. Textbook: the tractrix of the straight line and of the circle.
 */

/** α after s metres of straight: tan(α/2) = tan(α₀/2)·exp(−s/a). */
export function straightFrom(aheadM: number, alphaRad: number, s: number): number {
  return 2 * Math.atan(Math.tan(alphaRad / 2) * Math.exp(-s / aheadM));
}

/**
 * α after s metres of an arc of curvature k (left positive), |k·a| < 1: with q = √(1 − k²a²) and the steady values
 * u₁ = (1 − q)/(ka), u₂ = 1/u₁, (u − u₁)/(u − u₂) shrinks by exp(−q·s/a).
 */
export function arcFrom(aheadM: number, alphaRad: number, curvature: number, s: number): number {
  const bend = curvature * aheadM;
  const q = Math.sqrt(1 - bend * bend);
  // (1 − q)/bend, without its loss of digits on wide arcs
  const steady = bend / (1 + q);
  const u = Math.tan(alphaRad / 2);
  const ratio = ((u - steady) / (1 - u * steady)) * Math.exp((-q * s) / aheadM);
  return 2 * Math.atan((steady + ratio) / (1 + steady * ratio));
}
