import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clockwiseDeg,
  toDeg,
  toRad,
  turnDeg,
  turnRightDeg,
  wrapLon,
  wrapRad,
} from '../../../geo/earth/angles.ts';

const compass = fc.double({ min: 0, max: 360, maxExcluded: true, noNaN: true });

describe('angles', () => {
  it('go into radians and back', () => {
    expect(toRad(180)).toBe(Math.PI);
    expect(toDeg(Math.PI / 2)).toBe(90);
  });

  it('turn at most half a circle', () => {
    expect(turnDeg(350, 10)).toBe(20);
    expect(turnDeg(10, 350)).toBe(20);
    expect(turnDeg(0, 180)).toBe(180);
  });

  it('turn to the right above nought, to the left below', () => {
    expect(turnRightDeg(350, 10)).toBe(20);
    expect(turnRightDeg(10, 350)).toBe(-20);
    fc.assert(
      fc.property(compass, compass, (from, to) => {
        expect(Math.abs(turnRightDeg(from, to))).toBeCloseTo(turnDeg(from, to), 9);
      }),
    );
  });

  it('lie so far clockwise', () => {
    expect(clockwiseDeg(350, 10)).toBe(20);
    expect(clockwiseDeg(10, 350)).toBe(340);
  });

  it('are brought within half a turn either way', () => {
    expect(wrapRad(3 * Math.PI)).toBeCloseTo(Math.PI, 9);
    expect(wrapRad(-0.5)).toBeCloseTo(-0.5, 12);
    expect(wrapLon(190)).toBe(-170);
    expect(wrapLon(-190)).toBe(170);
    expect(wrapLon(180)).toBe(180);
  });
});
