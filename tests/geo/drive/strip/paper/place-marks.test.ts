import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeMarks } from '../../../../../geo/drive/strip/paper/place-marks.ts';

describe('marks beside the ribbon', () => {
  it('stand off one another, each at its place or near it, and none that is barred is dropped', () => {
    const marks = fc.array(
      fc.record({ y: fc.integer({ min: 0, max: 900 }), rank: fc.integer({ min: 0, max: 3 }) }),
    );
    fc.assert(
      fc.property(marks, (all) => {
        const placed = placeMarks(all, { apartPx: 20, awayPx: 60, highestPx: -5 });
        all.forEach(({ y, rank }, i) => {
          const at = placed[i];
          if (rank === 0) expect(at).toBeDefined();
          if (at === undefined) return;
          expect(at).toBeGreaterThanOrEqual(-5);
          if (rank > 0) expect(Math.abs(y - at)).toBeLessThanOrEqual(60);
        });
        const sorted = placed.filter((y) => y !== undefined).sort((a, b) => a - b);
        sorted.slice(1).forEach((y, i) => {
          expect(y - (sorted[i] ?? 0)).toBeGreaterThanOrEqual(20);
        });
      }),
    );
  });

  it('move above a graver one that stands just below it, where there is room', () => {
    const marks = [
      { y: 285, rank: 3 },
      { y: 300, rank: 0 },
    ];
    const room = { apartPx: 20, awayPx: 60 };
    expect(placeMarks(marks, { ...room, highestPx: 0 })).toEqual([280, 300]);
    expect(placeMarks(marks, { ...room, highestPx: 284 })).toEqual([320, 300]);
  });
});
