/** Flat lists of x and y in turn. */
export type Flat = readonly number[];

/**
 * The parts of a line inside the square from `min` to `max` in both directions, in order.
 * A line that only touches the square leaves nothing.
 */
export function clipLine(line: Flat, min: number, max: number): Flat[] {
  const square = { min, max };
  const parts: number[][] = [];
  let part: number[] | undefined;
  for (let i = 2; i < line.length; i += 2) {
    const ax = line[i - 2]!;
    const ay = line[i - 1]!;
    const bx = line[i]!;
    const by = line[i + 1]!;
    const span = insideSpan(ax, ay, bx, by, square);
    if (span === undefined) {
      part = undefined;
      continue;
    }
    const [from, to] = span;
    if (part === undefined || from > 0) {
      part = [ax + (bx - ax) * from, ay + (by - ay) * from];
      parts.push(part);
    }
    if (to === 1) part.push(bx, by);
    else {
      part.push(ax + (bx - ax) * to, ay + (by - ay) * to);
      part = undefined;
    }
  }
  return parts;
}

/** Liang and Barsky (1984): the shares of a segment at which it enters and leaves the square. */
function insideSpan(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  { min, max }: { readonly min: number; readonly max: number },
): [number, number] | undefined {
  let from = 0;
  let to = 1;
  const edges: readonly [number, number][] = [
    [ax - bx, ax - min],
    [bx - ax, max - ax],
    [ay - by, ay - min],
    [by - ay, max - ay],
  ];
  for (const [step, room] of edges) {
    if (step === 0) {
      if (room < 0) return undefined;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  return from < to ? [from, to] : undefined;
}

/**
 * The part of a ring inside the square, as one ring whose pieces may be joined along the square's edge
 * (Sutherland and Hodgman 1974). The first position is not repeated at the end. Empty where nothing is inside.
 */
export function clipRing(ring: Flat, min: number, max: number): Flat {
  let inside = ring;
  for (const [axis, limit, sign] of [
    [0, min, 1],
    [0, max, -1],
    [1, min, 1],
    [1, max, -1],
  ] as const)
    inside = clipHalf(inside, axis, limit, sign);
  return inside;
}

function clipHalf(ring: Flat, axis: 0 | 1, limit: number, sign: 1 | -1): Flat {
  const out: number[] = [];
  const count = ring.length;
  for (let i = 0; i < count; i += 2) {
    const before = (i + count - 2) % count;
    const a = ring[before + axis]! - limit;
    const b = ring[i + axis]! - limit;
    const bx = ring[i]!;
    const by = ring[i + 1]!;
    if (a * sign >= 0 !== b * sign >= 0) {
      const share = a / (a - b);
      const ax = ring[before]!;
      const ay = ring[before + 1]!;
      out.push(ax + (bx - ax) * share, ay + (by - ay) * share);
    }
    if (b * sign >= 0) out.push(bx, by);
  }
  return out;
}
