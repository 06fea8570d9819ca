import { describe, expect, it } from 'vitest';
import { middleAt, smoothed } from '../../../../../geo/drive/strip/paper/lean-drawn.ts';

describe('the ribbon', () => {
  it('leans by the mean of the bends at a small scale, and as it is at a large one', () => {
    expect(smoothed([0, 1, 0, -1], 1)).toEqual([0, 1, 0, -1]);
    const calm = smoothed([1, -1, 1, -1, 1], 3);
    for (const each of calm) expect(Math.abs(each)).toBeLessThan(0.5);
    expect(smoothed([0.5, 0.5, 0.5], 9)).toEqual([0.5, 0.5, 0.5]);
  });

  it('driven down the paper swings to the left of its middle where the road bends right, and back between two places', () => {
    const lean = [0, 1, 0];
    const [before, there, after] = [0, 100, 150].map((atM) => middleAt(lean, 100, atM));
    expect(there).toBeLessThan(before ?? 0);
    expect(after).toBeCloseTo(((before ?? 0) + (there ?? 0)) / 2, 6);
    expect(middleAt(lean, 100, 9999)).toBe(before);
  });
});
