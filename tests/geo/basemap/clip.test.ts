import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipLine, clipRing } from '../../../geo/basemap/clip.ts';

describe('a line cut to a square', () => {
  it('that lies within stays whole', () => {
    expect(clipLine([1, 1, 5, 5, 9, 1], 0, 10)).toEqual([[1, 1, 5, 5, 9, 1]]);
  });

  it('that leaves and comes back is two parts', () => {
    expect(clipLine([5, 5, 15, 5, 15, 8, 5, 8], 0, 10)).toEqual([
      [5, 5, 10, 5],
      [10, 8, 5, 8],
    ]);
  });

  it('that passes through with both ends outside keeps its middle', () => {
    expect(clipLine([-5, 5, 15, 5], 0, 10)).toEqual([[0, 5, 10, 5]]);
  });

  it('that passes by leaves nothing, and so does one that only touches', () => {
    expect(clipLine([-5, 5, 5, 20], 0, 10)).toEqual([]);
    expect(clipLine([-5, 5, 5, -5], 0, 10)).toEqual([]);
  });

  it('never leaves the square, and has no position that is no number', () => {
    const line = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(line, line, (xs, ys) => {
        const flat = xs.slice(0, ys.length).flatMap((x, i) => [x, ys[i] ?? 0]);
        for (const part of clipLine(flat, -10, 10)) {
          expect(part.length).toBeGreaterThanOrEqual(4);
          for (const value of part) expect(Math.abs(value)).toBeLessThanOrEqual(10 + 1e-9);
        }
        for (const value of clipRing(flat, -10, 10)) expect(Math.abs(value)).toBeLessThanOrEqual(10 + 1e-9);
      }),
    );
  });
});

describe('an area cut to a square', () => {
  it('that covers the square becomes the square', () => {
    const corners = clipRing([-5, -5, 15, -5, 15, 15, -5, 15], 0, 10);
    expect(new Set(corners.map((v, i) => (i % 2 === 0 ? `${v},${corners[i + 1]}` : '')))).toEqual(
      new Set(['', '0,0', '10,0', '10,10', '0,10']),
    );
  });

  it('that lies elsewhere is empty', () => {
    expect(clipRing([20, 20, 30, 20, 30, 30], 0, 10)).toEqual([]);
  });
});
