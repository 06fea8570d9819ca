import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sheetNumberOf } from '../../../geo/handover/sheet-number.ts';

const hash = fc.stringMatching(/^[0-9a-f]{64}$/);

it('a sheet number is eight signs in two groups, none like another, the same for the same hash', () => {
  fc.assert(
    fc.property(hash, (sha256) => {
      const number = sheetNumberOf(sha256);
      expect(number).toMatch(/^[34679ACDEFGHJKMNPQRTWXY]{4}-[34679ACDEFGHJKMNPQRTWXY]{4}$/);
      expect(sheetNumberOf(sha256.toUpperCase())).toBe(number);
    }),
    { numRuns: 50 },
  );
  expect(sheetNumberOf('0'.repeat(64))).not.toBe(sheetNumberOf(`${'0'.repeat(63)}1`));
  expect(() => sheetNumberOf('abc')).toThrow();
});
