import { itemAt, largest } from '../../lists.ts';
import { leastDrained, massOf } from './drain.ts';
import { type Chosen, type Found, NOISE } from './found.ts';
import { greedy } from './greedy.ts';
import { rank } from './rank.ts';
import { type Relief, reliefOf } from './relief.ts';
import type { Drained, Handled, Remedies } from './remedies.ts';
import type { Row } from './row.ts';
import { changed } from './row.ts';
import { spend, type Trials } from './trials.ts';

/** Everything that a search for sets of one size, with the same tanks drained, goes by. */
interface Search {
  readonly handled: readonly Handled[];
  readonly tanks: readonly Drained[];
  readonly relief: Relief;
  readonly wanted: number;
  readonly trials: Trials;
  /** the best so far, in their rank */
  readonly found: Found[];
}

/** A set begun: what is over with the steps chosen so far, and which items are left to choose from. */
interface Begun {
  readonly over: Row;
  readonly chosen: readonly Chosen[];
  readonly leftKg: number;
  readonly movedKg: number;
  /** steps still to be chosen, from the item of that number on */
  readonly count: number;
  readonly from: number;
}

/**
 * Every set of so many steps is tried, from one step upwards, until some set cures: the first size that does is the
 * smallest. A branch is left where even the best remaining steps cannot relieve some limit enough, or where more mass
 * is handled than in the sets found already.
 */
export function searchCures(
  remedies: Remedies,
  options: { readonly wanted: number; readonly trials: number },
): { readonly found: readonly Found[]; readonly proved: boolean } {
  const { over, handled, drained } = remedies;
  if (over.every((kg) => kg <= NOISE)) return { found: [], proved: true };
  const relief = reliefOf(over.length, handled);
  const trials: Trials = { left: options.trials };
  for (let size = 1; size <= handled.length + drained.length; size++) {
    const found: Found[] = [];
    for (const tanks of subsets(drained)) {
      const count = size - tanks.length;
      if (count < 0 || count > handled.length) continue;
      const search = { handled, tanks, relief, wanted: options.wanted, trials, found };
      goOn(search, { over, chosen: [], leftKg: 0, movedKg: 0, count, from: 0 });
    }
    if (trials.left <= 0) return { found: found.length > 0 ? found : greedy(remedies), proved: false };
    if (found.length > 0) return { found, proved: true };
  }
  return { found: [], proved: true };
}

/** Tries every way to complete a set. */
function goOn(search: Search, begun: Begun): void {
  const { handled, wanted, trials, found } = search;
  const { over, chosen, leftKg, movedKg, count, from } = begun;
  if (!spend(trials) || isHopeless(search, begun)) return;
  const last = found.length < wanted ? undefined : found.at(-1);
  if (last && leftKg > last.leftKg + NOISE) return;
  if (count === 0) {
    complete(search, begun);
    return;
  }
  for (let at = from; at + count <= handled.length; at++) {
    const each = itemAt(handled, at);
    const { massKg } = each.item;
    for (const remedy of each.remedies) {
      const isMove = remedy.kind === 'move';
      goOn(search, {
        over: changed(over, remedy.change),
        chosen: [...chosen, { handled: each, remedy }],
        leftKg: leftKg + (isMove ? 0 : massKg),
        movedKg: movedKg + (isMove ? massKg : 0),
        count: count - 1,
        from: at + 1,
      });
    }
  }
}

/** All steps are chosen: what must be drained besides, and the set's rank if that does. */
function complete({ tanks, trials, found, wanted }: Search, { over, chosen, leftKg, movedKg }: Begun): void {
  const litres = leastDrained(over, tanks, trials);
  if (litres === undefined) return;
  const drained = tanks.map((tank, i) => ({ tank, litres: itemAt(litres, i) }));
  const after = drained.reduce((row, { tank, litres }) => changed(row, tank.changePerL, litres), over);
  const cure = {
    leftKg: leftKg + massOf(litres, tanks),
    movedKg,
    chosen,
    drained,
    leastSpareKg: -largest(after.slice(0, 3)),
  };
  rank(cure, found, wanted);
}

/** Whether even the best remaining steps leave something over. */
function isHopeless({ tanks, relief }: Search, { over, count, from }: Begun): boolean {
  return over.some((kg, limit) => {
    const byTanks = tanks.reduce(
      (sum, tank) => sum + Math.max(0, -itemAt(tank.changePerL, limit)) * tank.litres,
      0,
    );
    return kg - byTanks - relief(limit, from, count) > NOISE;
  });
}

/** Every choice of tanks, none among them. */
function subsets(tanks: readonly Drained[]): Drained[][] {
  let all: Drained[][] = [[]];
  for (const tank of tanks) all = [...all, ...all.map((some) => [...some, tank])];
  return all;
}
