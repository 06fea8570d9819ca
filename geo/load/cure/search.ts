import { leastDrained, massOf } from './drain.ts';
import { greedy } from './greedy.ts';
import type { Drained, Handled, Remedies, Remedy, Row } from './remedies.ts';

export interface Found {
  readonly leftKg: number;
  readonly movedKg: number;
  readonly chosen: readonly { readonly handled: Handled; readonly remedy: Remedy }[];
  readonly drained: readonly { readonly tank: Drained; readonly litres: number }[];
  /** spare of the plate nearest its limit, when all is done */
  readonly leastSpareKg: number;
}

const NOISE = 1e-6;

/**
 * Every set of so many steps is tried, from one step upwards, until some set cures: the first size that does is the
 * smallest. A branch is left where even the best remaining steps cannot relieve some limit enough, or where more mass
 * is handled than in the sets found already.
 */
export function searchCures(
  { over, handled, drained }: Remedies,
  wanted: number,
  trials: number,
): { readonly found: readonly Found[]; readonly proved: boolean } {
  if (over.every((kg) => kg <= NOISE)) return { found: [], proved: true };
  const relief = reliefTable(over.length, handled);
  let left = trials;
  const spend = () => --left > 0;

  for (let size = 1; size <= handled.length + drained.length; size++) {
    const found: Found[] = [];
    for (const tanks of subsets(drained).filter((some) => some.length <= size)) {
      const count = size - tanks.length;
      if (count <= handled.length) pick(tanks, count, 0, [...over], [], 0, 0, found);
    }
    if (left <= 0)
      return { found: found.length > 0 ? found : greedy({ over, handled, drained }), proved: false };
    if (found.length > 0) return { found, proved: true };
  }
  return { found: [], proved: true };

  function pick(
    tanks: readonly Drained[],
    count: number,
    from: number,
    now: Row,
    chosen: Found['chosen'],
    leftKg: number,
    movedKg: number,
    found: Found[],
  ): void {
    if (!spend() || isHopeless(now, tanks, count, from)) return;
    const last = found.length < wanted ? undefined : found.at(-1);
    if (last && leftKg > last.leftKg + NOISE) return;
    if (count === 0) {
      const litres = leastDrained(now, tanks, spend);
      if (litres === undefined) return;
      const after = (limit: number) =>
        tanks.reduce((kg, tank, i) => kg + (litres[i] ?? 0) * (tank.changePerL[limit] ?? 0), now[limit] ?? 0);
      keep(
        {
          leftKg: leftKg + massOf(litres, tanks),
          movedKg,
          chosen,
          drained: tanks.map((tank, i) => ({ tank, litres: litres[i] ?? 0 })),
          leastSpareKg: -Math.max(after(0), after(1), after(2)),
        },
        found,
        wanted,
      );
      return;
    }
    for (let at = from; at + count <= handled.length; at++) {
      const each = handled[at] as Handled;
      for (const remedy of each.remedies) {
        const isMove = remedy.kind === 'move';
        pick(
          tanks,
          count - 1,
          at + 1,
          now.map((kg, limit) => kg + (remedy.change[limit] ?? 0)),
          [...chosen, { handled: each, remedy }],
          leftKg + (isMove ? 0 : each.item.massKg),
          movedKg + (isMove ? each.item.massKg : 0),
          found,
        );
      }
    }
  }

  function isHopeless(now: Row, tanks: readonly Drained[], count: number, from: number): boolean {
    return now.some((kg, limit) => {
      const byTanks = tanks.reduce(
        (sum, tank) => sum + Math.max(0, -(tank.changePerL[limit] ?? 0)) * tank.litres,
        0,
      );
      return kg - byTanks - relief(limit, from, count) > NOISE;
    });
  }
}

/** @returns the most that `count` of the items from one on can take off a limit */
function reliefTable(limits: number, handled: readonly Handled[]) {
  const best = Array.from({ length: limits }, (_, limit) =>
    handled.map(({ remedies }) => Math.max(0, ...remedies.map(({ change }) => -(change[limit] ?? 0)))),
  );
  const sums = new Map<number, number>();
  return (limit: number, from: number, count: number): number => {
    if (count === 0) return 0;
    const key = (limit * 1000 + from) * 1000 + count;
    const known = sums.get(key);
    if (known !== undefined) return known;
    const top = (best[limit] ?? []).slice(from).sort((a, b) => b - a);
    const sum = top.slice(0, count).reduce((total, kg) => total + kg, 0);
    sums.set(key, sum);
    return sum;
  };
}

/** Every choice of tanks, none among them. */
function subsets(tanks: readonly Drained[]): Drained[][] {
  let all: Drained[][] = [[]];
  for (const tank of tanks) all = [...all, ...all.map((some) => [...some, tank])];
  return all;
}

/** Puts a set in its rank; of several about the same items the best alone stays. */
function keep(cure: Found, found: Found[], wanted: number): void {
  const key = itemsOf(cure);
  const same = found.findIndex((each) => itemsOf(each) === key);
  if (same >= 0) {
    if (!isBetter(cure, found[same] as Found)) return;
    found.splice(same, 1);
  }
  const place = found.findIndex((each) => isBetter(cure, each));
  found.splice(place < 0 ? found.length : place, 0, cure);
  if (found.length > wanted) found.pop();
}

function isBetter(a: Found, b: Found): boolean {
  if (Math.abs(a.leftKg - b.leftKg) > NOISE) return a.leftKg < b.leftKg;
  if (Math.abs(a.movedKg - b.movedKg) > NOISE) return a.movedKg < b.movedKg;
  const [roomA, roomB] = [roomOf(a), roomOf(b)];
  if (Math.abs(roomA - roomB) > NOISE) return roomA > roomB;
  return a.leastSpareKg > b.leastSpareKg + NOISE;
}

/**
 * How much the smallest place that something is moved to takes: nobody knows what fits by size, and a place for more
 * kilograms is the likelier one.
 */
function roomOf({ chosen }: Found): number {
  return Math.min(
    Number.MAX_VALUE,
    ...chosen.map(({ remedy: { to } }) => (to === undefined ? Number.MAX_VALUE : (to.limitKg ?? 0))),
  );
}

function itemsOf({ chosen, drained }: Found): string {
  const things = chosen.map(({ handled }) => handled);
  return JSON.stringify([
    // of several alike, numbered on, it makes no difference which
    things.map(({ item }) => [item.name.replace(/ \d+$/, ''), item.massKg, item.xM]),
    drained.map(({ tank }) => tank.name),
  ]);
}
