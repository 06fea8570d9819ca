import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceM } from '../../../geo/earth/sphere.ts';
import { buildSegmentIndex } from '../../../geo/roads/segment-index.ts';

const ROAD = 0;
const AROUND = 2;

/** One way per list of places. */
function indexOf(
  ways: readonly { readonly places: readonly (readonly [number, number])[]; readonly kind: number }[],
) {
  const places = ways.flatMap((way) => way.places);
  const start = Uint32Array.from([
    0,
    ...ways.map((_, i) => ways.slice(0, i + 1).flatMap((way) => way.places).length),
  ]);
  return buildSegmentIndex(
    { lat: Float64Array.from(places, ([lat]) => lat), lon: Float64Array.from(places, ([, lon]) => lon) },
    {
      count: ways.length,
      start,
      refs: Uint32Array.from(places, (_, i) => i),
      kind: Uint8Array.from(ways, (way) => way.kind),
    },
  );
}

const place = fc.tuple(
  fc.double({ min: -0.02, max: 0.02, noNaN: true }),
  fc.double({ min: -0.02, max: 0.02, noNaN: true }),
);

describe('segments near a place', () => {
  it('are those within the radius, and no other, with the distance a walk along them gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(place, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 12 }),
        place,
        fc.double({ min: 1, max: 1500, noNaN: true }),
        fc.integer({ min: -60, max: 60 }),
        fc.constantFrom(-180, -0.001, 7.5, 179.999),
        (shapes, [dLat, dLon], radiusM, lat0, lon0) => {
          const wrap = (lon: number) => (lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon);
          const moved = shapes.map((shape) => ({
            kind: ROAD,
            places: shape.map(([lat, lon]) => [lat0 + lat, wrap(lon0 + lon)] as const),
          }));
          const [lat, lon] = [lat0 + dLat, wrap(lon0 + dLon)];
          const found = new Map(
            indexOf(moved)
              .near(lat, lon, radiusM)
              .map((hit) => [`${hit.way}:${hit.seg}`, hit]),
          );
          for (const [way, shape] of shapes.entries())
            for (let seg = 0; seg + 1 < shape.length; seg++) {
              const [a, b] = shape.slice(seg, seg + 2) as [[number, number], [number, number]];
              let nearest = Number.POSITIVE_INFINITY;
              for (let k = 0; k <= 400; k++) {
                const t = k / 400;
                const at = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])] as const;
                nearest = Math.min(nearest, distanceM(lat, lon, lat0 + at[0], lon0 + at[1]));
              }
              const hit = found.get(`${way}:${seg}`);
              // the walk takes steps of up to 16 m, and the flat frame is right within 0.1 %
              if (hit) expect(Math.abs(hit.distanceM - nearest)).toBeLessThan(9 + nearest / 500);
              else expect(nearest).toBeGreaterThan(radiusM * 0.997 - 0.01);
            }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('tell how far along the segment the nearest place lies', () => {
    const [hit] = indexOf([
      {
        kind: ROAD,
        places: [
          [50, 7],
          [50, 7.01],
        ],
      },
    ]).near(50.0001, 7.0025, 50);
    expect(hit?.t).toBeCloseTo(0.25, 6);
    expect(hit?.distanceM).toBeCloseTo(distanceM(50, 7.0025, 50.0001, 7.0025), 3);
  });

  it('are never those of what only lies around', () => {
    const index = indexOf([
      {
        kind: AROUND,
        places: [
          [50, 7],
          [50, 7.01],
        ],
      },
    ]);
    expect(index.near(50, 7, 1000)).toEqual([]);
    expect(index.inBox(49, 6, 51, 8, 'driven')).toEqual([]);
    expect(index.inBox(49, 6, 51, 8, 'around')).toEqual([{ way: 0, seg: 0 }]);
  });

  it('of an empty map are none', () => {
    expect(indexOf([]).near(50, 7, 1000)).toEqual([]);
    expect(indexOf([]).inBox(49, 6, 51, 8, 'around')).toEqual([]);
  });
});
