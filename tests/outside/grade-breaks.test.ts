import { describe, expect, it } from 'vitest';
import { breakoverRad, departureSlope } from '../../geo/vehicle/ground-angles.ts';
import { COACHBUILT } from '../support/ask.ts';

const DEG = 180 / Math.PI;
const vehicle = (
  wheelbaseM: number,
  rearOverhangM: number,
  rearClearanceM: number,
  bellyClearanceM: number,
) => ({
  ...COACHBUILT,
  wheelbaseM,
  rearOverhangM,
  rearClearanceM,
  bellyClearanceM,
});

describe('departure and breakover', () => {
  // worked figures: departure atan(h / O), breakover 2 atan(2 h / L); computed by hand from the two formulas
  it.each([
    [3.45, 1.8, 0.32, 0.16, 10.1, 17.8, 10.6],
    [3.8, 2.0, 0.3, 0.16, 8.5, 15.0, 9.6],
    [3.8, 2.2, 0.3, 0.16, 7.8, 13.6, 9.6],
    [4.035, 2.4, 0.28, 0.15, 6.7, 11.7, 8.5],
  ])(
    'wheelbase %d m, overhang %d m, tail %d m and belly %d m above the road: %d° or %d %%, breakover %d°',
    (wheelbaseM, overhangM, tailM, bellyM, departureDeg, departurePercent, breakoverDeg) => {
      const card = vehicle(wheelbaseM, overhangM, tailM, bellyM);
      const slope = departureSlope(card) ?? Number.NaN;
      expect(Math.atan(slope) * DEG).toBeCloseTo(departureDeg, 1);
      expect(slope * 100).toBeCloseTo(departurePercent, 1);
      expect(Math.abs((breakoverRad(card) ?? 0) * DEG - breakoverDeg)).toBeLessThan(0.06);
    },
  );

  it('a rack of 0.7 m takes the third of them from 7.8° to 5.9°', () => {
    const rack = { lengthM: 0.7, widthM: 1.6, fitted: true };
    const card = { ...vehicle(3.8, 2.2, 0.3, 0.16), rack };
    expect(Math.atan(departureSlope(card) ?? 0) * DEG).toBeCloseTo(5.9, 1);
  });

  // Transportation Research Record 1356, abstract: a low-loader of 36 ft wheelbase and 5 in clearance hangs up above
  // 2.3 % to either side of a crossing, 4.6 % in all
  it('the published low-loader hangs up where the paper has it', () => {
    const lowLoader = vehicle(36 * 0.3048, 1, 1, 5 * 0.0254);
    const breakover = breakoverRad(lowLoader) ?? 0;
    expect(Math.tan(breakover / 2) * 100).toBeCloseTo(2.31, 2);
    expect(Math.tan(breakover) * 100).toBeCloseTo(4.63, 2);
  });
});
