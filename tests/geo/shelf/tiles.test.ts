import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { IdBuckets } from '../../../geo/shelf/import/id-buckets.ts';
import { numbersIn, rangeOfBox, tileNumber, tileOf } from '../../../geo/shelf/tiles.ts';
import { tileAt } from '../../support/shelf/tile-at.ts';

const zoom = fc.integer({ min: 1, max: 15 });

describe('tiles along the curve', () => {
  it('are each found again by their number', () => {
    fc.assert(
      fc.property(zoom, fc.nat(), fc.nat(), (z, a, b) => {
        const tile = { x: a % 2 ** z, y: b % 2 ** z };
        expect(tileOf(tileNumber(tile.x, tile.y, z), z)).toEqual(tile);
      }),
    );
  });

  it('follow one another as neighbours: D. Hilbert, Mathematische Annalen 38 (1891)', () => {
    for (let number = 1; number < 4 ** 6; number++) {
      const [a, b] = [tileOf(number - 1, 6), tileOf(number, 6)];
      expect(Math.abs(a.x - b.x) + Math.abs(a.y - b.y)).toBe(1);
    }
  });

  it('of a coarser zoom hold those of a finer one in one run', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 14 }), fc.nat(), fc.nat(), (z, a, b) => {
        const [x, y] = [a % 2 ** z, b % 2 ** z];
        expect(Math.floor(tileNumber(x, y, z) / 4)).toBe(tileNumber(x >> 1, y >> 1, z - 1));
      }),
    );
  });

  // https://wiki.openstreetmap.org/wiki/Slippy_map_tilenames
  it('are those of the published tile scheme', () => {
    expect(tileAt(51.51202, 0.02435, 17)).toEqual({ x: 65544, y: 43582 });
    expect(tileAt(90, 180, 3)).toEqual({ x: 7, y: 0 });
    expect(tileAt(-90, -180, 3)).toEqual({ x: 0, y: 7 });
  });
});

describe('tiles that a box touches', () => {
  it('hold every place of the box, across the antimeridian too', () => {
    const box = fc.record({
      south: fc.double({ min: -80, max: 79, noNaN: true }),
      high: fc.double({ min: 0, max: 1, noNaN: true }),
      west: fc.double({ min: -180, max: 180, noNaN: true }),
      wide: fc.double({ min: 0, max: 3, noNaN: true }),
    });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        box,
        share,
        share,
        fc.integer({ min: 1, max: 8 }),
        ({ south, high, west, wide }, u, v, z) => {
          const numbers = numbersIn(
            rangeOfBox({ south, north: south + high, west, east: west + wide }, z),
            z,
          );
          const lon = west + u * wide;
          const tile = tileAt(south + v * high, lon > 180 ? lon - 360 : lon, z);
          expect(numbers).toContain(tileNumber(tile.x, tile.y, z));
          expect(new Set(numbers).size).toBe(numbers.length);
        },
      ),
    );
  });
});

it('a box so near to 180° east that it rounds to it holds the last column', () => {
  const west = 179.99999999999997;
  expect(numbersIn(rangeOfBox({ south: 0, north: 0, west, east: west }, 1), 1)).toContain(
    tileNumber(1, 1, 1),
  );
});

it('a box that ends at 180° east ends in the last column, and one that is that line alone lies in it', () => {
  expect(rangeOfBox({ south: 0, north: 1, west: 179, east: 180 }, 3)).toMatchObject({ fromX: 7, toX: 7 });
  expect(rangeOfBox({ south: 0, north: 1, west: -180, east: 180 }, 3)).toMatchObject({ fromX: 0, toX: 7 });
  expect(rangeOfBox({ south: 0, north: 1, west: 180, east: 180 }, 3)).toMatchObject({ fromX: 7, toX: 8 });
});

it('an id falls into the bucket whose range holds it, whatever was asked before', () => {
  const first = Float64Array.of(0, 100, 5000, 1e10);
  const buckets = new IdBuckets({ kind: 'ranges', first });
  for (const [id, bucket] of [
    [-5, 0],
    [99, 0],
    [100, 1],
    [4999, 1],
    [1e9, 2],
    [2e10, 3],
    [99, 0],
  ] as const)
    expect([id, buckets.bucketOf(id)]).toEqual([id, bucket]);
});
