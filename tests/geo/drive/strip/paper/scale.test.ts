import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnSpan, stripScale, tickStepM } from '../../../../../geo/drive/strip/paper/scale.ts';

describe('the strip on its paper', () => {
  it('is read from the top: farther along is lower down, and a place is found again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 500_000, noNaN: true }),
        fc.double({ min: 0.001, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lengthM, pxPerM, share) => {
          const scale = stripScale(lengthM, pxPerM);
          expect(scale.y(lengthM)).toBeGreaterThan(scale.y(0));
          expect(scale.atM(scale.y(share * lengthM))).toBeCloseTo(share * lengthM, 3);
        },
      ),
    );
  });

  it('draws more than is in view, and the same while one scrolls a little', () => {
    expect(drawnSpan(500, 600)).toEqual(drawnSpan(510, 600));
    for (const top of [0, 239, 240, 9999]) {
      const { fromPx, toPx } = drawnSpan(top, 600);
      expect(fromPx).toBeLessThan(top);
      expect(toPx).toBeGreaterThan(top + 600);
    }
  });

  it('keeps figures apart at every scale', () => {
    for (const pxPerM of [0.002, 0.05, 0.5, 2])
      expect(tickStepM(pxPerM, 1) * pxPerM).toBeGreaterThanOrEqual(44);
  });
});
