import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mix, shareOf } from '../../../geo/earth/between.ts';
import { firstAtLeast, halve, leastWhere, spanHolding } from '../../../geo/earth/bisect.ts';

const rising = fc
  .array(fc.integer({ min: 0, max: 50 }), { minLength: 2, maxLength: 30 })
  .map((values) => Float64Array.from(values).sort());
const value = fc.integer({ min: -5, max: 55 });

describe('in a rising list', () => {
  it('the first value not below another is found as by looking at each', () => {
    fc.assert(
      fc.property(rising, value, (values, wanted) => {
        const looked = values.findIndex((each) => each >= wanted);
        expect(firstAtLeast(values, wanted)).toBe(looked < 0 ? values.length : looked);
      }),
    );
  });

  it('the span that holds a value has it between its ends, but for what lies beyond the list', () => {
    fc.assert(
      fc.property(rising, value, (values, wanted) => {
        const at = spanHolding(values, wanted);
        expect(at).toBeLessThan(values.length - 1);
        if (at > 0) expect(values[at]).toBeLessThanOrEqual(wanted);
        if (at < values.length - 2) expect(values[at + 1]).toBeGreaterThan(wanted);
      }),
    );
  });

  it('only the part asked for is looked at', () => {
    const values = Float64Array.of(0, 10, 0, 10, 20, 0);
    expect(spanHolding(values, 12, 2, 4)).toBe(3);
    expect(firstAtLeast(values, 5, 2, 5)).toBe(3);
  });
});

describe('halving', () => {
  it('finds the least of which something holds, and takes the last on trust', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), (from) => {
        expect(leastWhere(0, 40, (i) => i >= from)).toBe(from);
      }),
    );
    expect(leastWhere(0, 5, () => false)).toBe(5);
  });

  it('finds where something begins to hold, upwards and downwards', () => {
    const up = halve(0, 2, 1e-9, (x) => x * x >= 2);
    expect(up.inside).toBeCloseTo(Math.SQRT2, 8);
    expect(up.outside).toBeLessThan(up.inside);
    expect(halve(0, -2, 1e-9, (x) => x * x >= 2).inside).toBeCloseTo(-Math.SQRT2, 8);
  });
});

describe('a share of the way', () => {
  it('is held within the ends, and none where there is no way', () => {
    expect(shareOf(5, 0, 20)).toBe(0.25);
    expect(shareOf(-5, 0, 20)).toBe(0);
    expect(shareOf(25, 0, 20)).toBe(1);
    expect(shareOf(3, 3, 3)).toBe(0);
    expect(mix(10, 20, 0.25)).toBe(12.5);
  });
});
