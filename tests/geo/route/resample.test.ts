import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headingsDeg } from '../../../geo/route/headings.ts';
import { cumulativeM, distanceM, segmentLengthM } from '../../../geo/route/measure.ts';
import { positionAt, resample } from '../../../geo/route/resample.ts';

const line = (...points: [number, number, number?][]) => ({
  lat: Float64Array.from(points, (p) => p[0]),
  lon: Float64Array.from(points, (p) => p[1]),
  timeMs: Float64Array.from(points, (p) => p[2] ?? Number.NaN),
});

const drive = fc
  .array(
    fc.tuple(
      fc.double({ min: -0.01, max: 0.01, noNaN: true }),
      fc.double({ min: -0.01, max: 0.01, noNaN: true }),
    ),
    {
      minLength: 2,
      maxLength: 20,
    },
  )
  .map((points) => line(...points.map(([lat, lon]): [number, number] => [50 + lat, 8 + lon])));

describe('a drive resampled', () => {
  it('keeps both ends, and its steps are even and not over the step asked for', () => {
    fc.assert(
      fc.property(drive, fc.integer({ min: 5, max: 500 }), (segment, stepM) => {
        fc.pre(segmentLengthM(segment) > 0.01);
        const even = resample(segment, stepM);
        expect(even.lat[0]).toBe(segment.lat[0]);
        expect(even.lat.at(-1)).toBe(segment.lat.at(-1));
        expect(even.lon.at(-1)).toBe(segment.lon.at(-1));
        for (let i = 1; i < even.lat.length; i++) {
          const step = distanceM(
            even.lat[i - 1] ?? 0,
            even.lon[i - 1] ?? 0,
            even.lat[i] ?? 0,
            even.lon[i] ?? 0,
          );
          expect(step).toBeLessThan(stepM * 1.0001);
        }
        expect(segmentLengthM(even)).toBeLessThan(segmentLengthM(segment) * 1.0001);
      }),
    );
  });

  it('has times between those given, and none where one is missing', () => {
    expect([...resample(line([0, 0, 0], [0, 0.001, 1000]), 56).timeMs].map(Math.round)).toEqual([
      0, 500, 1000,
    ]);
    expect(resample(line([0, 0, 0], [0, 0.001]), 56).timeMs[1]).toBeNaN();
  });

  it('crosses the antimeridian', () => {
    const { lon } = resample(line([0, 179.999], [0, -179.999]), 112);
    expect([...lon].map((degrees) => Math.abs(Math.round(degrees * 1000) / 1000))).toEqual([
      179.999, 180, 179.999,
    ]);
  });

  it('stays as it is when it does not move', () => {
    const still = line([1, 1], [1, 1]);
    expect(resample(still, 10)).toBe(still);
    expect(resample(line([1, 1]), 10).lat.length).toBe(1);
  });

  it('finds the position at a distance, held at the ends', () => {
    const segment = line([0, 0], [0, 0.01], [0, 0.01], [0, 0.02]);
    const along = cumulativeM(segment);
    expect(positionAt(segment, along, -5).lon).toBe(0);
    expect(positionAt(segment, along, Number.NaN).lon).toBe(0);
    expect(positionAt(segment, along, 1e9).lon).toBe(0.02);
    expect(positionAt(segment, along, (along.at(-1) ?? 0) * 0.75).lon).toBeCloseTo(0.015, 9);
  });
});

describe('headings', () => {
  it('point to the next place, standing still keeps them, the end keeps the arrival', () => {
    const segment = line([0, 0], [0, 0], [0, 1], [0, 1], [1, 1], [1, 1]);
    expect([...headingsDeg(segment)]).toEqual([90, 90, 0, 0, 0, 0]);
  });

  it('are NaN only for a drive that never moves', () => {
    expect([...headingsDeg(line([1, 1], [1, 1]))]).toEqual([Number.NaN, Number.NaN]);
    expect([...headingsDeg(line([1, 1]))]).toEqual([Number.NaN]);
    expect(headingsDeg(line()).length).toBe(0);
  });
});
