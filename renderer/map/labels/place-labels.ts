import { toRad } from '../../../geo/earth/angles.ts';
/** A text that would like to stand somewhere: a box about its middle, turned. Pixels. */
export interface Wish {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly angleDeg: number;
  readonly rank: number;
  readonly say: string;
  /** one text is not said twice within this distance */
  readonly apart: number;
  /** how far it may step aside, across its own direction, where its place is taken */
  readonly aside?: number;
}

/** A place that is taken already: upright box about its middle. Pixels. */
export interface Taken {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

const CELL = 64;

/**
 * Chooses texts so that none meets another or what is taken: the lowest rank first, then by place, so that the same
 * view always chooses the same.
 * @param margin room left about each text
 */
export function placeLabels<T extends Wish>(wishes: readonly T[], taken: readonly Taken[], margin = 3): T[] {
  const grid = new Map<string, Taken[]>();
  const cells = function* ({ x, y, halfWidth, halfHeight }: Taken) {
    for (let cx = Math.floor((x - halfWidth) / CELL); cx <= Math.floor((x + halfWidth) / CELL); cx++)
      for (let cy = Math.floor((y - halfHeight) / CELL); cy <= Math.floor((y + halfHeight) / CELL); cy++)
        yield `${cx},${cy}`;
  };
  const put = (box: Taken) => {
    for (const cell of cells(box)) {
      const there = grid.get(cell);
      if (there) there.push(box);
      else grid.set(cell, [box]);
    }
  };
  const free = (box: Taken) => {
    for (const cell of cells(box)) if (grid.get(cell)?.some((other) => meet(box, other))) return false;
    return true;
  };
  for (const box of taken) put(box);
  const said = new Map<string, T[]>();
  const chosen: T[] = [];
  const ordered = [...wishes].sort(
    (a, b) => a.rank - b.rank || (a.say < b.say ? -1 : a.say > b.say ? 1 : 0) || a.x - b.x || a.y - b.y,
  );
  for (const wish of ordered) {
    const before = said.get(wish.say) ?? [];
    if (before.some((other) => Math.hypot(other.x - wish.x, other.y - wish.y) < wish.apart)) continue;
    for (const standing of standings(wish)) {
      const boxes = boxesOf(standing, margin);
      if (!boxes.every(free)) continue;
      boxes.forEach(put);
      said.set(wish.say, [...before, standing]);
      chosen.push(standing);
      break;
    }
  }
  return chosen;
}

/** Where it would stand, then above, then below. */
function* standings<T extends Wish>(wish: T): Generator<T> {
  yield wish;
  const { aside, angleDeg } = wish;
  if (aside === undefined) return;
  const turn = toRad(angleDeg);
  for (const side of [1, -1])
    yield {
      ...wish,
      x: wish.x + Math.sin(turn) * aside * side,
      y: wish.y - Math.cos(turn) * aside * side,
    };
}

function meet(a: Taken, b: Taken): boolean {
  return Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth && Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight;
}

/** A turned text as a row of small upright boxes along it: close enough, and cheap to compare. */
function boxesOf({ x, y, halfWidth, halfHeight, angleDeg }: Wish, margin: number): Taken[] {
  if (angleDeg === 0) return [{ x, y, halfWidth: halfWidth + margin, halfHeight: halfHeight + margin }];
  const count = Math.max(1, Math.ceil(halfWidth / halfHeight));
  const cos = Math.cos(toRad(angleDeg));
  const sin = Math.sin(toRad(angleDeg));
  const step = (2 * halfWidth) / count;
  return Array.from({ length: count }, (_, i) => {
    const along = (i + 0.5) * step - halfWidth;
    return {
      x: x + along * cos,
      y: y + along * sin,
      halfWidth: halfHeight + margin,
      halfHeight: halfHeight + margin,
    };
  });
}
