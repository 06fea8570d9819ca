import { clamp } from '../../../earth/between.ts';
import { itemAt, lastOrZero } from '../../../lists.ts';

/** The ribbon's middle where the road runs straight, pixels from the left. */
const MIDDLE_PX = 92;
const LEAN_PX = 16;

/** The ribbon's middle at a place, pixels from the left: driven down the paper, a road that bends left leans right. */
export function middleAt(lean: readonly number[], stepM: number, atM: number): number {
  const at = atM / stepM;
  const i = Math.min(lean.length - 1, Math.max(0, Math.floor(at)));
  const a = lean[i] ?? 0;
  const b = lean[i + 1] ?? a;
  return MIDDLE_PX - LEAN_PX * (a + (b - a) * clamp(at - i, 0, 1));
}

/** The mean about each value over `width` of them. */
export function smoothed(values: readonly number[], width: number): number[] {
  const reach = Math.floor(width / 2);
  if (reach < 1) return [...values];
  const sums = [0];
  for (const value of values) sums.push(lastOrZero(sums) + value);
  return values.map((_, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(values.length, i + reach + 1);
    return (itemAt(sums, to) - itemAt(sums, from)) / (to - from);
  });
}
