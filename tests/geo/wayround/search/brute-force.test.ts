import { expect, it } from 'vitest';
import { askOnce } from '../../../support/way-round/ask-small.ts';

const QUESTIONS = 150;

it('a search finds what trying every walk over the raw tags finds, from one end and from both', () => {
  const wrong: unknown[] = [];
  let ways = 0;
  let none = 0;
  for (let seed = 1; seed <= QUESTIONS; seed++) {
    const asked = askOnce(seed);
    if (asked === undefined) continue;
    const { found, brute } = asked;
    if (found.some((each) => each !== brute)) wrong.push({ seed, found, brute });
    else if (brute !== 'none') ways++;
    else none++;
  }
  expect(wrong.slice(0, 5)).toEqual([]);
  expect(ways).toBeGreaterThan(QUESTIONS / 10);
  expect(none).toBeGreaterThan(QUESTIONS / 10);
});
