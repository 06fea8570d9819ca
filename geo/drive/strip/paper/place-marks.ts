/**
 * Where marks stand: the graver first, each at its place or moved off those already there, none nearer to another than
 * `apartPx` and none above `highestPx`. One that finds no room within `awayPx` has no mark, except the gravest
 * (rank 0), which always has. Pixels from the top.
 */
export function placeMarks(
  marks: readonly { readonly y: number; readonly rank: number }[],
  {
    apartPx,
    awayPx,
    highestPx,
  }: { readonly apartPx: number; readonly awayPx: number; readonly highestPx: number },
): (number | undefined)[] {
  const placed: (number | undefined)[] = marks.map(() => undefined);
  // from the top down
  const taken: number[] = [];
  const order = marks.map((mark, i) => ({ ...mark, i })).sort((a, b) => a.rank - b.rank || a.y - b.y);
  for (const { y, rank, i } of order) {
    const down = firstFree(taken, y, apartPx);
    const up = firstFree([...taken].reverse(), y, -apartPx);
    const free = up >= highestPx && y - up < down - y ? up : down;
    if (rank > 0 && Math.abs(y - free) > awayPx) continue;
    const at = taken.findIndex((other) => other > free);
    taken.splice(at < 0 ? taken.length : at, 0, free);
    placed[i] = free;
  }
  return placed;
}

/** @param taken in the order they are met by who goes that way @param step signed: how far apart, and which way to go */
function firstFree(taken: readonly number[], y: number, step: number): number {
  let free = y;
  for (const other of taken) if (Math.abs(other - free) < Math.abs(step)) free = other + step;
  return free;
}
