import { itemAt, largest } from '../../lists.ts';
import type { Handled } from './remedies.ts';

/** The most that `count` of the items from one on can take off a limit, kilograms. */
export type Relief = (limit: number, from: number, count: number) => number;

export function reliefOf(limits: number, handled: readonly Handled[]): Relief {
  const best = Array.from({ length: limits }, (_, limit) =>
    handled.map(({ remedies }) => Math.max(0, largest(remedies.map(({ change }) => -itemAt(change, limit))))),
  );
  const sums = new Map<number, number>();
  return (limit, from, count) => {
    if (count === 0) return 0;
    const key = (limit * 1000 + from) * 1000 + count;
    const known = sums.get(key);
    if (known !== undefined) return known;
    const top = itemAt(best, limit)
      .slice(from)
      .sort((a, b) => b - a);
    const sum = top.slice(0, count).reduce((total, kg) => total + kg, 0);
    sums.set(key, sum);
    return sum;
  };
}
