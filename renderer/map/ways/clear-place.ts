import type { Taken } from '../labels/place-labels.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Of places in the order they are liked, the first where a box of this size covers least of what is taken. Pixels. */
export function clearPlace<P extends Spot>(
  places: readonly P[],
  taken: readonly Taken[],
  halfPx: number,
): P | undefined {
  let best: P | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const covered = coveredPx(place, taken, halfPx);
    if (covered < least) [best, least] = [place, covered];
  }
  return best;
}

/** Square pixels that a box about a place shares with what is taken, each by itself. */
export function coveredPx({ x, y }: Spot, taken: readonly Taken[], halfPx: number): number {
  let sum = 0;
  for (const { halfWidth, halfHeight, ...at } of taken) {
    const wide = halfPx + halfWidth - Math.abs(x - at.x);
    const high = halfPx + halfHeight - Math.abs(y - at.y);
    if (wide > 0 && high > 0) sum += wide * high;
  }
  return sum;
}
