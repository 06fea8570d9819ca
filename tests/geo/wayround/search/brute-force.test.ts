import { expect, it } from 'vitest';
import { askNetwork } from '../../../support/way-round/ask-small.ts';

const NETWORKS = 30;
const EACH = 10;

it('a search finds what trying every walk over the raw tags finds, from one end and from both', () => {
  const wrong: unknown[] = [];
  let ways = 0;
  let none = 0;
  for (let seed = 1; seed <= NETWORKS; seed++)
    for (const { found, brute } of askNetwork(seed, EACH)) {
      if (found.some((each) => each !== brute)) wrong.push({ seed, found, brute });
      else if (brute !== 'none') ways++;
      else none++;
    }
  expect(wrong.slice(0, 5)).toEqual([]);
  expect(ways).toBeGreaterThan((NETWORKS * EACH) / 10);
  expect(none).toBeGreaterThan((NETWORKS * EACH) / 10);
});
