import { describe, expect, it } from 'vitest';
import { comesWithin, mayComeWithin, roughLine } from '../../../geo/yard/near-line.ts';

/** Ten kilometres north from 54.0, 9.0, a position every 11 m. */
const lat = Float64Array.from({ length: 910 }, (_, i) => 54 + i * 0.0001);
const northward = { lat, lon: new Float64Array(910).fill(9) };
/** Metres of a degree of longitude at 54.05°. */
const PER_DEGREE = 111_195 * Math.cos((54.05 * Math.PI) / 180);
const beside = (m: number) => ({ lat: 54.05, lon: 9 + m / PER_DEGREE });

describe('a drive near a place', () => {
  it('is near where it passes, within the line’s own error, and not beyond', () => {
    const line = roughLine([northward]);
    expect(comesWithin(line, beside(950), 1000)).toBe(true);
    expect(comesWithin(line, beside(1100), 1000)).toBe(false);
    expect(comesWithin(line, { lat: 54.0909 + 0.02, lon: 9 }, 1000)).toBe(false);
  });

  it('is kept as few positions, its two ends among them', () => {
    const [line = []] = roughLine([northward]);
    expect(line.length / 2).toBeLessThan(110);
    expect(line.slice(0, 2)).toEqual([54, 9]);
    expect(line.slice(-2)).toEqual([54.0909, 9]);
  });

  it('is not near what lies in the gap between two parts', () => {
    const [south, north] = [lat.slice(0, 300), lat.slice(600)];
    const line = roughLine(
      [south, north].map((each) => ({ lat: each, lon: new Float64Array(each.length).fill(9) })),
    );
    expect(comesWithin(line, { lat: 54.045, lon: 9 }, 1000)).toBe(false);
  });

  it('cannot be near what is farther from its start than it is long', () => {
    const drive = { from: [54, 9] as const, lengthM: 10_000 };
    expect(mayComeWithin(drive, { lat: 54.2, lon: 9 }, 5000)).toBe(false);
    expect(mayComeWithin(drive, { lat: 54.13, lon: 9 }, 5000)).toBe(true);
  });

  it('is told across the date line', () => {
    const line = roughLine([{ lat: [-17, -17], lon: [179.95, -179.95] }]);
    expect(comesWithin(line, { lat: -17, lon: 180 }, 100)).toBe(true);
  });
});
