import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceM } from '../../../../geo/earth/sphere.ts';
import { halve, type Piece } from '../../../../geo/fetch/line/piece.ts';
import { type LinePlan, planPieces } from '../../../../geo/fetch/line/plan-pieces.ts';
import { awayFromLine, windingLine } from '../../../support/map-server/drawn-line.ts';

type Segment = ReturnType<typeof windingLine>;

const leg = fc.record({
  // dense, as planned, as clicked
  lengthM: fc.oneof(
    { weight: 6, arbitrary: fc.double({ min: 5, max: 400, noNaN: true }) },
    { weight: 2, arbitrary: fc.double({ min: 400, max: 3_000, noNaN: true }) },
    { weight: 1, arbitrary: fc.double({ min: 3_000, max: 60_000, noNaN: true }) },
  ),
  turnDeg: fc.double({ min: -70, max: 70, noNaN: true }),
});
const start = fc.record({
  lat: fc.double({ min: -70, max: 70, noNaN: true }),
  lon: fc.oneof(
    fc.double({ min: -179, max: 179, noNaN: true }),
    fc.double({ min: 179.9, max: 180, noNaN: true }),
  ),
});
const drive = fc
  .tuple(start, fc.array(leg, { minLength: 1, maxLength: 400 }))
  .map(([place, legs]) => windingLine(place, legs));

function holds({ box, along }: Piece, place: { lat: number; lon: number }): boolean {
  const { lat } = place;
  // one meridian with two names
  const lon = Math.abs(place.lon) === 180 && box.west + box.east < 0 ? -180 : place.lon;
  if (!(lat >= box.south && lat <= box.north && lon >= box.west && lon <= box.east)) return false;
  return !along || awayFromLine(place, along.places) < along.radiusM;
}

/** Places of the drive, none further than 200 m from the next. */
function* placesOf({ lat, lon }: Segment) {
  for (let i = 0; i + 1 < lat.length; i++) {
    const a = { lat: lat[i] ?? 0, lon: lon[i] ?? 0 };
    const dLat = (lat[i + 1] ?? 0) - a.lat;
    let dLon = (lon[i + 1] ?? 0) - a.lon;
    if (Math.abs(dLon) > 180) dLon -= Math.sign(dLon) * 360;
    const steps = Math.ceil(distanceM(a.lat, a.lon, a.lat + dLat, a.lon + dLon) / 200);
    for (let step = 0; step <= steps; step++) {
      const there = a.lon + (step / steps) * dLon;
      yield {
        lat: a.lat + (step / steps) * dLat,
        lon: there > 180 ? there - 360 : there < -180 ? there + 360 : there,
      };
    }
  }
}

function lengthOf({ spans }: Piece): number {
  return spans.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
}

function uncovered(plan: LinePlan, segment: Segment) {
  return [...placesOf(segment)].filter((place) => !plan.pieces.some((piece) => holds(piece, place)));
}

describe('the pieces of a drive', () => {
  it('hold every place of its line, wherever on the Earth it runs', () => {
    fc.assert(
      fc.property(drive, (segment) => {
        const plan = planPieces({ segments: [segment] }, 1);
        expect(uncovered(plan, segment)).toEqual([]);
        for (const { along, box } of plan.pieces) {
          expect(along?.places.length ?? 2).toBeLessThanOrEqual(100);
          expect(along?.places.length ?? 2).toBeGreaterThanOrEqual(2);
          expect(along?.radiusM ?? 150).toBeGreaterThanOrEqual(150);
          expect(Math.max(Math.abs(box.west), Math.abs(box.east))).toBeLessThanOrEqual(180);
          expect(box.west).toBeLessThan(box.east);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('tell every metre of it', () => {
    fc.assert(
      fc.property(drive, (segment) => {
        const { pieces, lengthM } = planPieces({ segments: [segment] }, 1);
        const spans = pieces.flatMap((piece) => piece.spans).sort((a, b) => a.fromM - b.fromM);
        let reachedM = 0;
        for (const { fromM, toM } of spans) {
          expect(fromM).toBeLessThanOrEqual(reachedM + 1e-6);
          reachedM = Math.max(reachedM, toM);
        }
        expect(reachedM).toBeCloseTo(lengthM, 3);
      }),
      { numRuns: 60 },
    );
  });

  it('are 20 to 50 of a drive of 500 km, each of up to 25 km', () => {
    const bends = Array.from({ length: 5_000 }, (_, i) => ({ lengthM: 100, turnDeg: i % 40 < 20 ? 4 : -4 }));
    const { pieces, lengthM } = planPieces({ segments: [windingLine({ lat: 52, lon: 8 }, bends)] }, 1);
    expect(lengthM).toBeCloseTo(500_000, -3);
    expect(pieces.length).toBeGreaterThanOrEqual(20);
    expect(pieces.length).toBeLessThanOrEqual(50);
    for (const piece of pieces) expect(lengthOf(piece)).toBeLessThanOrEqual(25_000);
  });

  it('hold every place of a drive that a server is too busy for, however often they are halved', () => {
    fc.assert(
      fc.property(drive, (segment) => {
        const small = (piece: Piece): Piece[] => halve(piece)?.flatMap(small) ?? [piece];
        const plan = planPieces({ segments: [segment] }, 1);
        const pieces = plan.pieces.flatMap(small);
        expect(uncovered({ ...plan, pieces }, segment)).toEqual([]);
        for (const { along, spans } of pieces)
          if (along) expect(spans[0]!.toM - spans[0]!.fromM).toBeLessThan(2_700);
      }),
      { numRuns: 15 },
    );
  });

  it('are wide where its points lie far apart, as far as half a leg, and narrow elsewhere', () => {
    const dense = Array.from({ length: 300 }, (_, i) => ({ lengthM: 100, turnDeg: i % 2 === 0 ? 1 : -1 }));
    const { pieces } = planPieces(
      {
        segments: [windingLine({ lat: 50, lon: 5 }, [...dense, { lengthM: 4_000, turnDeg: 0 }, ...dense])],
      },
      1,
    );
    const radii = new Set(pieces.map(({ along }) => along?.radiusM));
    expect(radii).toEqual(new Set([undefined, 150, 2_000]));
  });

  it('say where points lie so far apart that roads far beside them are not asked for', () => {
    const sparse = windingLine({ lat: 50, lon: 5 }, [{ lengthM: 20_000, turnDeg: 0 }]);
    expect(planPieces({ segments: [sparse] }, 1).sparseM).toBeCloseTo(20_000, -2);
    const near = windingLine({ lat: 50, lon: 5 }, [{ lengthM: 5_000, turnDeg: 0 }]);
    expect(planPieces({ segments: [near] }, 1)).not.toHaveProperty('sparseM');
  });

  it('bridge short jumps of a recording and leave long ones out', () => {
    const first = windingLine({ lat: 50, lon: 5 }, [{ lengthM: 8_000, turnDeg: 0 }]);
    const near = windingLine({ lat: 50.001, lon: 5.1125 }, [{ lengthM: 8_000, turnDeg: 0 }]);
    const far = windingLine({ lat: 51, lon: 5 }, [{ lengthM: 8_000, turnDeg: 0 }]);
    const { pieces, lengthM } = planPieces({ segments: [first, near, far] }, 1);
    expect(lengthM).toBeCloseTo(24_000, -2);
    expect(
      [...placesOf(first), ...placesOf(near), ...placesOf(far)].every((place) =>
        pieces.some((piece) => holds(piece, place)),
      ),
    ).toBe(true);
    expect(pieces.some((piece) => holds(piece, { lat: 50.5, lon: 5.05 }))).toBe(false);
  });
});

describe('where a drive begins and ends', () => {
  const bends = Array.from({ length: 400 }, (_, i) => ({ lengthM: 60, turnDeg: i % 20 < 10 ? 5 : -5 }));

  it('is told as a square of about 3 km', () => {
    fc.assert(
      fc.property(start, (place) => {
        const segment = windingLine(place, bends);
        const { pieces } = planPieces({ segments: [segment] }, 1);
        const [begin] = placesOf(segment);
        const square = pieces.find((piece) => !piece.along && holds(piece, begin!));
        expect(square).toBeDefined();
        const { south, north, west, east } = square!.box;
        const midLat = (south + north) / 2;
        for (const side of [distanceM(south, west, north, west), distanceM(midLat, west, midLat, east)]) {
          expect(side).toBeGreaterThan(1_900);
          expect(side).toBeLessThan(3_600);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('cannot be told from another place of its cell: what is asked of its surroundings is the same', () => {
    const beginsAt = (lon: number) => {
      const along = Float64Array.from({ length: 600 }, (_, i) => lon + i * 0.001);
      const straight = { lat: along.map(() => 48.1234), lon: along };
      const { pieces } = planPieces({ segments: [straight] }, 7);
      const told = pieces.flatMap((piece) => piece.along?.places ?? []).map((place) => place.lon);
      const squares = pieces.filter((piece) => !piece.along).map(({ box }) => box.west);
      return [Math.min(...told).toFixed(6), Math.min(...squares).toFixed(6)];
    };
    expect(beginsAt(11.5671)).toEqual(beginsAt(11.5752));
  });

  it('is the same square for every drive from there', () => {
    const home = { lat: 48.1234, lon: 11.5678 };
    const squareOf = (turnDeg: number) => {
      const away = windingLine(home, [{ lengthM: 500, turnDeg }, ...bends]);
      const there = planPieces({ segments: [away] }, 7).pieces.filter(({ along }) => !along);
      return there.find((piece) => holds(piece, home))?.box;
    };
    expect(squareOf(0)).toBeDefined();
    expect(squareOf(120)).toEqual(squareOf(0));
    expect(squareOf(240)).toEqual(squareOf(0));
  });

  it('is one square where it is the same place, and all there is of a short drive', () => {
    const out = windingLine({ lat: 48.1234, lon: 11.5678 }, [
      { lengthM: 300, turnDeg: 0 },
      { lengthM: 300, turnDeg: 180 },
    ]);
    const { pieces } = planPieces({ segments: [out] }, 1);
    expect(pieces).toHaveLength(1);
    expect(pieces[0]).not.toHaveProperty('along');
  });
});

describe('the order of the pieces', () => {
  const bends = Array.from({ length: 3_000 }, () => ({ lengthM: 100, turnDeg: 0.01 }));
  const route = { segments: [windingLine({ lat: 52, lon: 8 }, bends)] };

  it('is the same for the same seed and another for another', () => {
    expect(planPieces(route, 5)).toEqual(planPieces(route, 5));
    expect(planPieces(route, 5).pieces).not.toEqual(planPieces(route, 6).pieces);
  });

  it('is not that of the drive', () => {
    const begins = planPieces(route, 5).pieces.map(({ spans }) => spans[0]?.fromM ?? 0);
    expect(begins).not.toEqual(begins.toSorted((a, b) => a - b));
    expect(begins).not.toEqual(begins.toSorted((a, b) => b - a));
  });
});

it('a drive of no length asks nothing', () => {
  const still = { lat: Float64Array.of(1, 1), lon: Float64Array.of(2, 2) };
  expect(planPieces({ segments: [still] }, 1)).toEqual({ pieces: [], places: [], lengthM: 0 });
  expect(planPieces({ segments: [] }, 1).pieces).toEqual([]);
});
