import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Coverer, coverAll } from '../../../../geo/fetch/region/cover.ts';

const one = () => 1;
const costOf = (coverers: readonly Coverer[], chosen: readonly number[]) =>
  chosen.reduce((sum, at) => sum + (coverers[at]?.cost ?? 0), 0);
const itemsOf = (coverers: readonly Coverer[], chosen: readonly number[]) =>
  new Set(chosen.flatMap((at) => coverers[at]?.items ?? []));

/** Of every subset of the coverers. */
function leastPossible(coverers: readonly Coverer[]): number {
  const all = itemsOf(coverers, [...coverers.keys()]).size;
  let least = Infinity;
  for (let bits = 0; bits < 2 ** coverers.length; bits++) {
    const chosen = [...coverers.keys()].filter((at) => (bits >> at) & 1);
    if (itemsOf(coverers, chosen).size === all) least = Math.min(least, costOf(coverers, chosen));
  }
  return least;
}

/** 1 + 1/2 + … + 1/n */
const harmonic = (n: number) => Array.from({ length: n }, (_, i) => 1 / (i + 1)).reduce((a, b) => a + b, 0);

const anyCoverers = fc.array(
  fc.record({
    items: fc.uniqueArray(fc.integer({ min: 0, max: 11 }), { minLength: 1, maxLength: 8 }),
    cost: fc.integer({ min: 1, max: 40 }),
  }),
  { minLength: 1, maxLength: 9 },
);

it('everything is covered, nothing is redundant, and it costs at most H(n) times the least possible', () => {
  // the bound: Chvátal 1979, named at coverAll
  let dearer = 0;
  fc.assert(
    fc.property(anyCoverers, (coverers) => {
      const chosen = coverAll(coverers, one);
      expect(itemsOf(coverers, chosen)).toEqual(itemsOf(coverers, [...coverers.keys()]));
      for (const at of chosen)
        expect(
          itemsOf(
            coverers,
            chosen.filter((other) => other !== at),
          ).size,
        ).toBeLessThan(itemsOf(coverers, chosen).size);
      const largest = Math.max(0, ...coverers.map(({ items }) => items.length));
      const [cost, least] = [costOf(coverers, chosen), leastPossible(coverers)];
      expect(cost).toBeLessThanOrEqual(harmonic(largest) * least + 1e-9);
      if (cost > least) dearer++;
    }),
    { numRuns: 300 },
  );
  // and hardly ever dearer at all
  expect(dearer).toBeLessThan(15);
});

it('what is there already costs nothing and is taken first', () => {
  const coverers = [
    { items: [0, 1], cost: 10 },
    { items: [0], cost: 0 },
    { items: [1], cost: 4 },
  ];
  expect(coverAll(coverers, one)).toEqual([1, 2]);
});

it('a large one is taken where the small ones together cost more', () => {
  const small = Array.from({ length: 5 }, (_, i) => ({ items: [i], cost: i + 1 }));
  const large = { items: [0, 1, 2, 3, 4], cost: 12 };
  expect(coverAll([...small, large], one)).toEqual([5]);
  expect(coverAll([...small, { ...large, cost: 16 }], one)).toEqual([0, 1, 2, 3, 4]);
});

it('of nothing nothing is chosen', () => {
  expect(coverAll([], one)).toEqual([]);
  expect(coverAll([{ items: [], cost: 3 }], one)).toEqual([]);
});
