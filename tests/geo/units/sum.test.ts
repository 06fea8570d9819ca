import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { massSum, shortSumIn, sizeSumIn } from '../../../geo/units/sum.ts';

const INCH_M = 0.0254;
const line = ({ limit, needed, spare }: { limit: string; needed: string; spare: string }) =>
  `${limit} − ${needed} = ${spare}`;
const number = (text: string) => Number(text.replace(/^½/, '0½').replace('½', '.5'));
const inches = (text: string) => {
  const [, minus, inch = ''] = /^(−?)([\d½]+) in$/.exec(text) ?? [];
  return (minus === '−' ? -1 : 1) * number(inch);
};
const feet = (text: string) => {
  const [, minus, ft, inch] = /^(−?)(\d+)'([\d½]+)"$/.exec(text) ?? [];
  return (minus === '−' ? -1 : 1) * (Number(ft) * 12 + number(inch ?? ''));
};

describe('a sum as it is shown', () => {
  it('is rounded against the driver, and its spare is the difference of what stands there', () => {
    // 0.299 m is 11.77 in, 0.59 m is 23.23 in: exactly −11.46 in
    expect(line(shortSumIn('imperial', { limit: 0.299, needed: 0.59 }))).toBe('11½ in − 23½ in = −12 in');
    expect(line(sizeSumIn('metric', { limit: 3.2, needed: 3.25 }))).toBe('3.20 m − 3.25 m = −0.05 m');
    expect(line(massSum({ limit: 2000, needed: 1916.4 }))).toBe('2000 kg − 1917 kg = 83 kg');
  });

  it('in half inches where whole ones would take an inch more than the spare has', () => {
    // 3.20 m is 125.98 in, 3.15 m is 124.02 in, 0.25 m is 9.84 in, 0.26 m is 10.24 in
    expect(line(sizeSumIn('imperial', { limit: 3.2, needed: 3.15 }))).toBe(`10'5½" − 10'4½" = 0'1"`);
    const over = (m: number) => feet(sizeSumIn('imperial', { limit: 3, needed: 3 + m }).short);
    for (let cm = 1; cm < 60; cm++)
      expect(over((cm + 3) / 100), String(cm)).toBeGreaterThanOrEqual(over(cm / 100));
  });

  it('with the other unit in brackets adds up in both', () => {
    // 0.05 m is 1.97 in, 0.35 m is 13.78 in
    expect(line(sizeSumIn('both', { limit: 3.2, needed: 3.25 }))).toBe(
      `3.20 m (10'5½") − 3.25 m (10'8") = −0.05 m (−0'2½")`,
    );
    expect(sizeSumIn('both', { limit: 2.05, needed: 2.4 }).short).toBe(`0.35 m (1'2")`);
    expect(sizeSumIn('both', { limit: 2.4, needed: 2.05 }).short).toBe(`0.35 m (1'1")`);
  });

  it('of what just fits is not shown as over', () => {
    expect(line(sizeSumIn('imperial', { limit: 3.2, needed: 3.2 }))).toBe(`10'6" − 10'6" = 0'0"`);
    expect(line(massSum({ limit: 2000, needed: 2000 }))).toBe('2000 kg − 2000 kg = 0 kg');
  });

  it('always adds up, never flatters, and is over exactly where the vehicle is', () => {
    const m = fc.double({ min: 0.01, max: 20, noNaN: true });
    fc.assert(
      fc.property(m, m, (limit, needed) => {
        const size = sizeSumIn('imperial', { limit, needed });
        const short = shortSumIn('imperial', { limit, needed });
        expect(feet(size.limit) - feet(size.needed)).toBe(feet(size.spare));
        expect(inches(short.limit) - inches(short.needed)).toBe(inches(short.spare));
        expect(inches(short.spare) * INCH_M).toBeLessThanOrEqual(Math.max(0, limit - needed) + 1e-6);
        const bracket = inches(/\((.+)\)/.exec(shortSumIn('both', { limit, needed }).spare)?.[1] ?? '');
        expect(bracket * INCH_M).toBeLessThanOrEqual(limit - needed + 1e-6);
        expect(bracket * INCH_M).toBeGreaterThan(limit - needed - INCH_M - 1e-6);
        if (needed < limit) expect(inches(short.spare)).toBeGreaterThanOrEqual(0);
        if (needed > limit + 1e-6) expect(inches(short.spare)).toBeLessThan(0);
      }),
    );
  });
});
