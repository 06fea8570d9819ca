import { expect, it } from 'vitest';
import { holdChanges } from '../../../support/way-round/hold-changes.ts';

it('costs change only with what matters: numbers, islands and cuts do not, bars and height never make a way cheaper', () => {
  const held = [1, 2].map((seed) => holdChanges(seed, 5, 10));
  expect(held.flatMap(({ broken }) => broken)).toEqual([]);
});
