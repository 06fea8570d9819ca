import { shareNearest } from '../earth/segment.ts';
/**
 * How far each position of a line may be missed: the squared distance at which Douglas and Peucker's rule (1973)
 * would drop it, so that keeping all above a tolerance simplifies the line for it. The ends are never dropped.
 * @param refs places in `x` and `y`
 */
export function weighLine(refs: Uint32Array, x: Float64Array, y: Float64Array): Float32Array {
  const weight = new Float32Array(refs.length);
  const last = refs.length - 1;
  weight[0] = Number.POSITIVE_INFINITY;
  weight[last] = Number.POSITIVE_INFINITY;
  // from, to, and the weight of the span it was cut from: a part never outweighs its whole
  const open: number[] = [0, last, Number.POSITIVE_INFINITY];
  while (open.length > 0) {
    const whole = open.pop() as number;
    const to = open.pop() as number;
    const from = open.pop() as number;
    let most = -1;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const away = squaredAway(refs[i]!, refs[from]!, refs[to]!, x, y);
      if (away > most) {
        most = away;
        at = i;
      }
    }
    if (at < 0) continue;
    const own = Math.min(most, whole);
    weight[at] = own;
    open.push(from, at, own, at, to, own);
  }
  return weight;
}

/** Squared distance of node p from the segment between nodes a and b. */
function squaredAway(p: number, a: number, b: number, x: Float64Array, y: Float64Array): number {
  const ax = x[a]!;
  const ay = y[a]!;
  const dx = x[b]! - ax;
  const dy = y[b]! - ay;
  const px = x[p]! - ax;
  const py = y[p]! - ay;
  const t = shareNearest(px, py, dx, dy);
  return (px - t * dx) ** 2 + (py - t * dy) ** 2;
}
