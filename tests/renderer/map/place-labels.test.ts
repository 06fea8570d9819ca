import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels, type Wish } from '../../../renderer/map/labels/place-labels.ts';

const wish = (say: string, x: number, y: number, rank = 1, more: Partial<Wish> = {}): Wish => ({
  say,
  x,
  y,
  rank,
  halfWidth: 30,
  halfHeight: 8,
  angleDeg: 0,
  apart: 200,
  ...more,
});
const said = (chosen: readonly Wish[]) => chosen.map(({ say }) => say);

describe('texts on the map', () => {
  it('of two that meet the weightier stands', () => {
    expect(said(placeLabels([wish('hamlet', 10, 5, 5), wish('town', 0, 0, 1)], []))).toEqual(['town']);
    expect(said(placeLabels([wish('hamlet', 100, 5, 5), wish('town', 0, 0, 1)], []))).toEqual([
      'town',
      'hamlet',
    ]);
  });

  it('one name is not written twice close by', () => {
    expect(
      placeLabels([wish('Weir Lane', 0, 0), wish('Weir Lane', 150, 0), wish('Weir Lane', 300, 0)], []),
    ).toHaveLength(2);
  });

  it('a text keeps clear of a mark, stepping aside where it may', () => {
    const mark = [{ x: 0, y: 0, halfWidth: 13, halfHeight: 13 }];
    expect(placeLabels([wish('Weir', 0, 0)], mark)).toEqual([]);
    expect(placeLabels([wish('Weir', 0, 0, 1, { aside: 30 })], mark)).toMatchObject([{ x: 0, y: -30 }]);
  });

  it('never meets another, whatever is wished and however it is turned', () => {
    const any = fc.record({
      say: fc.string({ maxLength: 4 }),
      x: fc.integer({ min: 0, max: 400 }),
      y: fc.integer({ min: 0, max: 400 }),
      rank: fc.integer({ min: 0, max: 5 }),
      halfWidth: fc.integer({ min: 1, max: 80 }),
      halfHeight: fc.integer({ min: 4, max: 12 }),
      angleDeg: fc.constantFrom(0, 0, 30, -80, 90),
      apart: fc.constant(100),
      aside: fc.constant(14),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 40 }), (wishes) => {
        const chosen = placeLabels(wishes, []).filter(({ angleDeg }) => angleDeg === 0);
        chosen.forEach((a, i) => {
          for (const b of chosen.slice(i + 1))
            expect(
              Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth &&
                Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight,
            ).toBe(false);
        });
      }),
      { numRuns: 60 },
    );
  });
});
