/** To the millimetre: sizes are no finer, and 3.2 − 3.05 must be 0.15. */
export function roundMm(m: number): number {
  const mm = Math.round(m * 1000) / 1000;
  return mm === 0 ? 0 : mm;
}

/** Pounds and hundredweights leave fractions. */
const NOISE_KG = 0.05;

/** Whether a mass is over its limit, so many kilograms being left. */
export function isOver(spareKg: number): boolean {
  return spareKg <= -NOISE_KG;
}
