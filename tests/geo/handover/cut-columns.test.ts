import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { PlaceToKnow } from '../../../geo/handover/document/document.ts';
import { cutColumns } from '../../../geo/handover/draw/cut-columns.ts';

const at = (fromM: number) => ({ finding: { fromM } }) as PlaceToKnow;

it('the strip is cut without holes, no column with more places than have room, however long the drive', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 1_000_000, noNaN: true }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 200 }),
      (lengthM, shares) => {
        const places = shares.map((share) => share * lengthM).sort((a, b) => a - b);
        const columns = cutColumns(lengthM, places.map(at));
        expect(columns[0]?.fromM).toBe(0);
        expect(columns.at(-1)?.toM).toBe(lengthM);
        for (const [i, { fromM, toM }] of columns.entries()) {
          expect(toM).toBeGreaterThanOrEqual(fromM);
          if (i > 0) expect(fromM).toBe(columns[i - 1]?.toM);
          const inside = new Set(places.filter((m) => m >= fromM && m < toM));
          expect(inside.size).toBeLessThanOrEqual(20);
        }
      },
    ),
    { numRuns: 100 },
  );
});

it('a drive of 20 km is one column, one of 300 km nine, which fill their pages', () => {
  expect(cutColumns(20_000, [])).toHaveLength(1);
  expect(cutColumns(300_000, [])).toHaveLength(9);
  expect(cutColumns(1_000_000, [])).toHaveLength(12);
});
