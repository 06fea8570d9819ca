import { smallest } from '../../lists.ts';
import { stemOf } from '../list/numbered.ts';
import { type Found, NOISE } from './found.ts';

/** Puts a set in its rank among the best; of several about the same items the best alone stays. */
export function rank(cure: Found, found: Found[], wanted: number): void {
  const key = itemsOf(cure);
  const same = found.findIndex((each) => itemsOf(each) === key);
  const rival = found[same];
  if (rival !== undefined) {
    if (!isBetter(cure, rival)) return;
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
    smallest(chosen.map(({ remedy: { to } }) => (to === undefined ? Number.MAX_VALUE : (to.limitKg ?? 0)))),
  );
}

function itemsOf({ chosen, drained }: Found): string {
  const things = chosen.map(({ handled }) => handled);
  return JSON.stringify([
    // of several alike, numbered on, it makes no difference which
    things.map(({ item }) => [stemOf(item.name), item.massKg, item.xM]),
    drained.map(({ tank }) => tank.name),
  ]);
}
