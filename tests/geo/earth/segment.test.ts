import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Point, pointBetween } from '../../../geo/earth/point.ts';
import { isInRing } from '../../../geo/earth/ring.ts';
import { awayFrom, crossing, nearestOn } from '../../../geo/earth/segment.ts';

const metres = fc.double({ min: -100, max: 100, noNaN: true });
const point: fc.Arbitrary<Point> = fc.record({ x: metres, y: metres });

describe('the place of a segment nearest to a point', () => {
  it('is its foot, or an end', () => {
    const [a, b] = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ];
    expect(nearestOn({ x: 4, y: 3 }, a, b)).toEqual({ t: 0.4, awayM: 3 });
    expect(nearestOn({ x: -3, y: 4 }, a, b)).toEqual({ t: 0, awayM: 5 });
    expect(nearestOn({ x: 3, y: 4 }, a, a)).toEqual({ t: 0, awayM: 5 });
  });

  it('is nearer than any other', () => {
    fc.assert(
      fc.property(point, point, point, fc.double({ min: 0, max: 1, noNaN: true }), (p, a, b, t) => {
        const other = pointBetween(a, b, t);
        expect(awayFrom(p, a, b)).toBeLessThanOrEqual(Math.hypot(p.x - other.x, p.y - other.y) + 1e-9);
      }),
    );
  });
});

describe('two segments', () => {
  it('meet where both are at one place', () => {
    const at = crossing({ x: 0, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }, { x: 10, y: 0 });
    expect(at).toEqual({ t: 0.5, u: 0.5 });
  });

  it('do not meet side by side, nor where one ends short', () => {
    expect(crossing({ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 0, y: 1 }, { x: 9, y: 1 })).toBeUndefined();
    expect(crossing({ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 5, y: 1 }, { x: 5, y: 9 })).toBeUndefined();
  });
});

describe('a ring', () => {
  const ring = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 5, y: 2 },
    { x: 0, y: 10 },
  ];

  it('holds what lies within it, not what lies in its bay or outside', () => {
    expect(isInRing({ x: 1, y: 5 }, ring)).toBe(true);
    expect(isInRing({ x: 5, y: 5 }, ring)).toBe(false);
    expect(isInRing({ x: 11, y: 5 }, ring)).toBe(false);
  });

  it('is the same with its first corner again at its end', () => {
    fc.assert(
      fc.property(point, (p) => {
        expect(isInRing(p, [...ring, { x: 0, y: 0 }])).toBe(isInRing(p, ring));
      }),
    );
  });
});
