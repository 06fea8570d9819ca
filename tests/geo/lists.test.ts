import { describe, expect, it } from 'vitest';
import { append, largest, smallest } from '../../geo/lists.ts';

/** More than fit on the stack as arguments. */
const MANY = 1_000_000;

describe('lists of any length', () => {
  const long = Array.from({ length: MANY }, (_, i) => i - 5);

  it('tell their smallest and largest number', () => {
    expect([smallest(long), largest(long)]).toEqual([-5, MANY - 6]);
    expect([smallest([]), largest([])]).toEqual([Infinity, -Infinity]);
    expect([smallest([1, Number.NaN]), largest([Number.NaN, 1])]).toEqual([Number.NaN, Number.NaN]);
  });

  it('are added to one another', () => {
    const list = [1];
    append(list, long);
    expect([list.length, list[1], list.at(-1)]).toEqual([MANY + 1, -5, MANY - 6]);
  });
});
