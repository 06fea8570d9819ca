import { describe, expect, it } from 'vitest';
import { append, itemAt, largest, lastOrZero, smallest } from '../../geo/lists.ts';

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

  it('give the one at a place, and throw where they do not reach so far', () => {
    expect([itemAt(['a', 'b'], 1), itemAt(Float64Array.of(7), 0), itemAt([''], 0)]).toEqual(['b', 7, '']);
    expect(() => itemAt(['a', 'b'], 2)).toThrow('no item 2 in a list of 2');
    expect(() => itemAt([], -1)).toThrow('no item -1 in a list of 0');
  });

  it('tell how long a line is by its last place, and nothing of no places', () => {
    expect([lastOrZero([0, 12, 30.5]), lastOrZero([])]).toEqual([30.5, 0]);
  });
});
