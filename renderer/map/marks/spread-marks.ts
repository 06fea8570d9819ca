export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * Moves marks apart that would hide each other: each takes its own place if that is free, else the nearest free one
 * on rings about it. Earlier ones choose first.
 * @param size side of a mark, pixels
 */
export function spreadMarks(spots: readonly Spot[], size: number): Spot[] {
  const grid = new Map<string, Spot[]>();
  const cell = (v: number) => Math.floor(v / size);
  const free = ({ x, y }: Spot) => {
    for (let cx = cell(x) - 1; cx <= cell(x) + 1; cx++)
      for (let cy = cell(y) - 1; cy <= cell(y) + 1; cy++)
        if (grid.get(`${cx},${cy}`)?.some((other) => Math.hypot(other.x - x, other.y - y) < size - 0.5))
          return false;
    return true;
  };
  const take = (spot: Spot) => {
    const key = `${cell(spot.x)},${cell(spot.y)}`;
    const there = grid.get(key);
    if (there) there.push(spot);
    else grid.set(key, [spot]);
    return spot;
  };
  return spots.map((spot) => {
    for (const candidate of candidates(spot, size)) if (free(candidate)) return take(candidate);
    return take(spot);
  });
}

const RINGS = 8;

function* candidates({ x, y }: Spot, size: number): Generator<Spot> {
  yield { x, y };
  for (let ring = 1; ring <= RINGS; ring++) {
    const count = 6 * ring;
    for (let i = 0; i < count; i++) {
      // straight up first, then to either side
      const turn = ((i % 2 === 0 ? i : -i - 1) / 2 / count) * 2 * Math.PI;
      yield { x: x + Math.sin(turn) * ring * size, y: y - Math.cos(turn) * ring * size };
    }
  }
}
