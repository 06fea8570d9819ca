import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  drawnSpan,
  halfWidthPx,
  nameYs,
  pieceAt,
  placeMarks,
  smoothed,
  stripScale,
  tickStepM,
  visiblePieces,
} from '../../../renderer/strip/scale.ts';

describe('the strip', () => {
  it('is read from the bottom: farther along is higher up, and a place is found again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 500_000, noNaN: true }),
        fc.double({ min: 0.001, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lengthM, pxPerM, share) => {
          const scale = stripScale(lengthM, pxPerM);
          expect(scale.y(lengthM)).toBeLessThan(scale.y(0));
          expect(scale.atM(scale.y(share * lengthM))).toBeCloseTo(share * lengthM, 3);
        },
      ),
    );
  });

  it('keeps marks off one another, each at its place or near it, and never drops a barred one', () => {
    const marks = fc.array(
      fc.record({ y: fc.integer({ min: 0, max: 900 }), rank: fc.integer({ min: 0, max: 3 }) }),
    );
    fc.assert(
      fc.property(marks, (all) => {
        const placed = placeMarks(all, 20, 60, 905);
        all.forEach(({ y, rank }, i) => {
          const at = placed[i];
          if (rank === 0) expect(at).toBeDefined();
          if (at === undefined) return;
          expect(at).toBeLessThanOrEqual(905);
          if (rank > 0) expect(Math.abs(y - at)).toBeLessThanOrEqual(60);
        });
        const sorted = placed.filter((y) => y !== undefined).sort((a, b) => a - b);
        sorted.slice(1).forEach((y, i) => {
          expect(y - (sorted[i] ?? 0)).toBeGreaterThanOrEqual(20);
        });
      }),
    );
  });

  it('moves a mark below a graver one that stands just above it', () => {
    const marks = [
      { y: 300, rank: 3 },
      { y: 285, rank: 0 },
    ];
    expect(placeMarks(marks, 20, 60, 900)).toEqual([305, 285]);
    expect(placeMarks(marks, 20, 60, 301)).toEqual([265, 285]);
  });

  it('leans by the mean of the bends at a small scale, and as it is at a large one', () => {
    expect(smoothed([0, 1, 0, -1], 1)).toEqual([0, 1, 0, -1]);
    const calm = smoothed([1, -1, 1, -1, 1], 3);
    for (const each of calm) expect(Math.abs(each)).toBeLessThan(0.5);
    expect(smoothed([0.5, 0.5, 0.5], 9)).toEqual([0.5, 0.5, 0.5]);
  });

  it('finds the piece that holds a place', () => {
    const pieces = [0, 10, 25].map((fromM, i) => ({ fromM, toM: [10, 25, 40][i] ?? 0 }));
    expect(pieceAt(pieces, 3)?.fromM).toBe(0);
    expect(pieceAt(pieces, 12)?.fromM).toBe(10);
    expect(pieceAt(pieces, 40)?.fromM).toBe(25);
    expect(pieceAt([], 3)).toBeUndefined();
  });

  it('never lets a pinch vanish, however short on the paper', () => {
    const widths = [7, 7, 2.5, 7, 7];
    const pieces = widths.map((widthM, i) => ({ fromM: i, toM: i + 1, widthM }));
    const long = { fromM: 5, toM: 500, widthM: 7 };
    for (const leastM of [0.5, 2, 3, 4, 100]) {
      const drawn = visiblePieces([...pieces, long], leastM);
      expect(Math.min(...drawn.map(({ widthM }) => widthM))).toBe(2.5);
      expect(drawn.at(-1)).toMatchObject({ toM: 500, widthM: 7 });
      drawn.slice(1).forEach(({ fromM }, i) => {
        expect(fromM).toBe(drawn[i]?.toM);
      });
    }
  });

  it('writes a name only where there is room, clear of heights and towns', () => {
    expect(nameYs(0, 50, 60, [])).toEqual([]);
    expect(nameYs(0, 100, 60, [])).toEqual([50]);
    expect(nameYs(0, 100, 60, [50])).toEqual([]);
    for (const y of nameYs(0, 2000, 60, [233, 700])) {
      expect(Math.abs(y - 233)).toBeGreaterThan(30);
      expect(Math.abs(y - 700)).toBeGreaterThan(30);
    }
  });

  it('draws more than is in view, and the same while one scrolls a little', () => {
    expect(drawnSpan(500, 600)).toEqual(drawnSpan(510, 600));
    for (const top of [0, 239, 240, 9999]) {
      const { fromPx, toPx } = drawnSpan(top, 600);
      expect(fromPx).toBeLessThan(top);
      expect(toPx).toBeGreaterThan(top + 600);
    }
  });

  it('keeps figures apart at every scale, and draws a lane narrower than a trunk road', () => {
    for (const pxPerM of [0.002, 0.05, 0.5, 2])
      expect(tickStepM(pxPerM, 1) * pxPerM).toBeGreaterThanOrEqual(44);
    expect(halfWidthPx(3)).toBeLessThan(halfWidthPx(7.3));
  });
});
