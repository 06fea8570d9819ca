import { largest } from '../../../geo/lists.ts';

/** The middle of a mark and how wide it is drawn, pixels. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  /** stands by itself, whatever is near */
  readonly alone: boolean;
}

/** Marks that would hide each other, drawn as the first of them. */
export type Group<T> = readonly [T, ...T[]];

/** Marks may cover each other by this share of their size: what is still told apart stays apart. */
const COVER = 0.25;

/**
 * Gathers marks that would hide each other. Each group stands where its first mark belongs, so that nothing is drawn off
 * its road; whoever comes first is never hidden in another's group.
 * @param spots the gravest first
 */
export function groupMarks<T extends Spot>(spots: readonly T[]): Group<T>[] {
  const cellPx = Math.max(1, largest(spots.map(({ size }) => size)));
  const cell = (v: number) => Math.floor(v / cellPx);
  const grid = new Map<string, [T, ...T[]][]>();
  const groups: [T, ...T[]][] = [];
  for (const spot of spots) {
    const near = spot.alone ? undefined : nearest(spot, [...around(grid, cell(spot.x), cell(spot.y))]);
    if (near) {
      near.push(spot);
      continue;
    }
    const group: [T, ...T[]] = [spot];
    groups.push(group);
    if (spot.alone) continue;
    const key = `${cell(spot.x)},${cell(spot.y)}`;
    const there = grid.get(key);
    if (there) there.push(group);
    else grid.set(key, [group]);
  }
  return groups;
}

function* around<G>(grid: ReadonlyMap<string, readonly G[]>, x: number, y: number): Generator<G> {
  for (let cx = x - 1; cx <= x + 1; cx++)
    for (let cy = y - 1; cy <= y + 1; cy++) yield* grid.get(`${cx},${cy}`) ?? [];
}

/** The group whose first mark hides the spot, the nearest of several. */
function nearest<T extends Spot>(spot: T, groups: readonly [T, ...T[]][]): [T, ...T[]] | undefined {
  let best: { group: [T, ...T[]]; away: number } | undefined;
  for (const group of groups) {
    const [first] = group;
    const away = Math.hypot(first.x - spot.x, first.y - spot.y);
    if (away >= ((first.size + spot.size) / 2) * (1 - COVER)) continue;
    if (best === undefined || away < best.away) best = { group, away };
  }
  return best?.group;
}
