import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { halfWidthPx, spreadUp, stripScale, tickStepM } from '../../../renderer/strip/scale.ts';

describe('the strip', () => {
  it('is read from the bottom: farther along is higher up, and a place is found again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 500_000, noNaN: true }),
        fc.double({ min: 0.001, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lengthM, pxPerM, share) => {
          const scale = stripScale(lengthM, pxPerM);
          expect(scale.y(lengthM)).toBeLessThan(scale.y(0));
          expect(scale.atM(scale.y(share * lengthM))).toBeCloseTo(share * lengthM, 3);
        },
      ),
    );
  });

  it('lifts marks off one another and never below their place', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2000 })), (ys) => {
        const placed = spreadUp(ys, 20);
        placed.forEach((y, i) => {
          expect(y).toBeLessThanOrEqual(ys[i] ?? 0);
        });
        const sorted = [...placed].sort((a, b) => a - b);
        sorted.slice(1).forEach((y, i) => {
          expect(y - (sorted[i] ?? 0)).toBeGreaterThanOrEqual(20);
        });
      }),
    );
  });

  it('keeps figures apart at every scale, and draws a lane narrower than a trunk road', () => {
    for (const pxPerM of [0.002, 0.05, 0.5, 2])
      expect(tickStepM(pxPerM, 1) * pxPerM).toBeGreaterThanOrEqual(56);
    expect(halfWidthPx(3)).toBeLessThan(halfWidthPx(7.3));
  });
});
