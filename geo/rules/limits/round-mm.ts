/** To the millimetre: sizes are no finer, and 3.2 − 3.05 must be 0.15. */
export function roundMm(m: number): number {
  const mm = Math.round(m * 1000) / 1000;
  return mm === 0 ? 0 : mm;
}
