import { largest } from '../../../geo/lists.ts';
/** The middle of a mark and its side, pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/**
 * Moves marks apart that would hide each other: each takes its own place if that is free, else the nearest free one
 * on rings about it. Earlier ones choose first.
 */
export function spreadMarks<T extends Spot>(spots: readonly T[]): T[] {
  const cellPx = Math.max(1, largest(spots.map(({ size }) => size)));
  const grid = new Map<string, Spot[]>();
  const cell = (v: number) => Math.floor(v / cellPx);
  const free = (spot: Spot) => {
    for (let cx = cell(spot.x) - 1; cx <= cell(spot.x) + 1; cx++)
      for (let cy = cell(spot.y) - 1; cy <= cell(spot.y) + 1; cy++)
        if (grid.get(`${cx},${cy}`)?.some((other) => hides(other, spot))) return false;
    return true;
  };
  const take = (spot: T) => {
    const key = `${cell(spot.x)},${cell(spot.y)}`;
    const there = grid.get(key);
    if (there) there.push(spot);
    else grid.set(key, [spot]);
    return spot;
  };
  return spots.map((spot) => {
    for (const candidate of candidates(spot)) if (free(candidate)) return take(candidate);
    return take(spot);
  });
}

function hides(a: Spot, b: Spot): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) < (a.size + b.size) / 2 - 0.5;
}

const RINGS = 8;

function* candidates<T extends Spot>(spot: T): Generator<T> {
  yield spot;
  for (let ring = 1; ring <= RINGS; ring++) {
    const count = 6 * ring;
    const awayPx = ring * spot.size;
    for (let i = 0; i < count; i++) {
      // straight up first, then to either side
      const turn = ((i % 2 === 0 ? i : -i - 1) / 2 / count) * 2 * Math.PI;
      yield { ...spot, x: spot.x + Math.sin(turn) * awayPx, y: spot.y - Math.cos(turn) * awayPx };
    }
  }
}
