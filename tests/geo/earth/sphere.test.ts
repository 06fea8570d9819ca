import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countPositions, cumulativeM } from '../../../geo/drive/gpx/route-length.ts';
import { localFrame } from '../../../geo/earth/frame.ts';
import { bearingDeg, distanceM } from '../../../geo/earth/sphere.ts';

const lat = fc.double({ min: -89.9, max: 89.9, noNaN: true });
const lon = fc.double({ min: -180, max: 180, noNaN: true });

const segment = (points: [number, number][]) => ({
  lat: Float64Array.from(points, (p) => p[0]),
  lon: Float64Array.from(points, (p) => p[1]),
  timeMs: new Float64Array(points.length).fill(Number.NaN),
});

describe('distance', () => {
  it('is the same both ways and 0 to itself', () => {
    fc.assert(
      fc.property(lat, lon, lat, lon, (a, b, c, d) => {
        expect(distanceM(a, b, c, d)).toBeCloseTo(distanceM(c, d, a, b), 6);
        expect(distanceM(a, b, a, b)).toBe(0);
      }),
    );
  });

  it('is half the equator between antipodes', () => {
    expect(distanceM(0, 0, 0, 180)).toBeCloseTo(Math.PI * 6_371_008.8, 3);
    expect(distanceM(90, 0, -90, 0)).toBeCloseTo(Math.PI * 6_371_008.8, 3);
  });

  it('does not go round the world across the antimeridian', () => {
    expect(distanceM(0, 179.999, 0, -179.999)).toBeCloseTo(222.39, 1);
  });
});

describe('bearing', () => {
  it('is 0 north, 90 east, 180 south, 270 west', () => {
    expect(bearingDeg(50, 0, 51, 0)).toBe(0);
    expect(bearingDeg(0, 0, 0, 1)).toBe(90);
    expect(bearingDeg(51, 0, 50, 0)).toBe(180);
    expect(bearingDeg(0, 1, 0, 0)).toBe(270);
    expect(bearingDeg(50, 8, 50, 8)).toBe(0);
  });

  it('is never 360', () => {
    fc.assert(
      fc.property(lat, lon, lat, lon, (a, b, c, d) => {
        const bearing = bearingDeg(a, b, c, d);
        expect(bearing >= 0 && bearing < 360).toBe(true);
      }),
    );
  });
});

describe('the local frame', () => {
  it('keeps lengths within 0.1 % up to 3 km below 60° of latitude', () => {
    const near = fc.double({ min: -2000, max: 2000, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        lon,
        near,
        near,
        near,
        near,
        (lat0, lon0, x1, y1, x2, y2) => {
          const flat = Math.hypot(x2 - x1, y2 - y1);
          fc.pre(flat > 1);
          const frame = localFrame(lat0, lon0);
          const a = frame.fromXY(x1, y1);
          const b = frame.fromXY(x2, y2);
          expect(Math.abs(distanceM(a.lat, a.lon, b.lat, b.lon) / flat - 1)).toBeLessThan(0.001);
          const back = frame.toXY(a.lat, a.lon);
          expect(back.x).toBeCloseTo(x1, 4);
          expect(back.y).toBeCloseTo(y1, 4);
        },
      ),
    );
  });

  it('spans the antimeridian', () => {
    const { x } = localFrame(0, 179.999).toXY(0, -179.999);
    expect(x).toBeCloseTo(222.39, 1);
  });
});

describe('a route', () => {
  const route = {
    segments: [
      segment([
        [0, 0],
        [0, 0.01],
      ]),
      segment([
        [1, 0],
        [1.01, 0],
      ]),
    ],
  };

  it('counts the positions of all segments', () => {
    expect(countPositions(route)).toBe(4);
  });

  it('adds up position by position', () => {
    const along = cumulativeM(
      segment([
        [0, 0],
        [0, 0.01],
        [0, 0.03],
      ]),
    );
    expect([...along].map(Math.round)).toEqual([0, 1112, 3336]);
    expect(cumulativeM(segment([])).length).toBe(0);
  });
});
