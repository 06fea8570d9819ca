/** Where things stand on the ribbon: it is read from the bottom (the start) to the top. Pixels from the top. */
export interface StripScale {
  readonly lengthM: number;
  readonly pxPerM: number;
  readonly heightPx: number;
  y(atM: number): number;
  atM(y: number): number;
}

export const PAD_PX = 34;
/** Across the ribbon one scale holds for road and vehicle alike. */
export const ACROSS_PX_PER_M = 3.6;
const MIDDLE_PX = 92;
export const WIDTH_PX = 200;
/** The middle of the findings' marks. */
export const MARK_X = 150;
const LEAN_PX = 16;

export function stripScale(lengthM: number, pxPerM: number): StripScale {
  const heightPx = lengthM * pxPerM + 2 * PAD_PX;
  return {
    lengthM,
    pxPerM,
    heightPx,
    y: (atM) => heightPx - PAD_PX - atM * pxPerM,
    atM: (y) => Math.max(0, Math.min(lengthM, (heightPx - PAD_PX - y) / pxPerM)),
  };
}

/** The ribbon's middle at a place, pixels from the left: it leans the way the road bends. */
export function middleAt(lean: readonly number[], stepM: number, atM: number): number {
  const at = atM / stepM;
  const i = Math.min(lean.length - 1, Math.max(0, Math.floor(at)));
  const a = lean[i] ?? 0;
  const b = lean[i + 1] ?? a;
  return MIDDLE_PX + LEAN_PX * (a + (b - a) * Math.min(1, Math.max(0, at - i)));
}

/** The mean about each value over `width` of them. */
export function smoothed(values: readonly number[], width: number): number[] {
  const reach = Math.floor(width / 2);
  if (reach < 1) return [...values];
  const sums = [0];
  for (const value of values) sums.push((sums.at(-1) ?? 0) + value);
  return values.map((_, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(values.length, i + reach + 1);
    return ((sums[to] ?? 0) - (sums[from] ?? 0)) / (to - from);
  });
}

/** Half the road's width on the paper: never a hair, never the whole ribbon. */
export function halfWidthPx(widthM: number): number {
  return Math.max(3, Math.min(20, (widthM * ACROSS_PX_PER_M) / 2));
}

const STEPS_M = [100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];

const TICK_APART_PX = 44;

/** The distance between two figures so that they stand at least so far apart. @param unitM 1 for kilometres, 1.609344 for miles */
export function tickStepM(pxPerM: number, unitM: number): number {
  const least = TICK_APART_PX / pxPerM;
  return unitM * (STEPS_M.find((step) => step * unitM >= least) ?? 100_000);
}

/**
 * Where marks stand: the graver first, each at its place or moved off those already there, none nearer to another than
 * `apartPx` and none below `lowestPx`. One that finds no room within `awayPx` has no mark, except the gravest
 * (rank 0), which always has.
 */
export function placeMarks(
  marks: readonly { readonly y: number; readonly rank: number }[],
  apartPx: number,
  awayPx: number,
  lowestPx: number,
): (number | undefined)[] {
  const placed: (number | undefined)[] = marks.map(() => undefined);
  // from the bottom up
  const taken: number[] = [];
  const order = marks.map((mark, i) => ({ ...mark, i })).sort((a, b) => a.rank - b.rank || b.y - a.y);
  for (const { y, rank, i } of order) {
    const up = firstFree(taken, y, -apartPx);
    const down = firstFree([...taken].reverse(), y, apartPx);
    const free = down <= lowestPx && down - y < y - up ? down : up;
    if (rank > 0 && Math.abs(y - free) > awayPx) continue;
    const at = taken.findIndex((other) => other < free);
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

/** The piece, of pieces in order without holes, that holds a place; undefined where there is none. */
export function pieceAt<T extends { readonly fromM: number; readonly toM: number }>(
  pieces: readonly T[],
  atM: number,
): T | undefined {
  let low = 0;
  let high = pieces.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const piece = pieces[middle];
    if (piece !== undefined && piece.toM < atM) low = middle + 1;
    else high = middle;
  }
  return pieces[low];
}

/**
 * Pieces as they can be drawn: none shorter than `leastM`. A short one takes in what lies within that length, at the
 * narrowest width there: a pinch must not vanish.
 */
export function visiblePieces<
  T extends { readonly fromM: number; readonly toM: number; readonly widthM: number },
>(pieces: readonly T[], leastM: number): T[] {
  const drawn: T[] = [];
  for (const piece of pieces) {
    const last = drawn.at(-1);
    const takenM = last === undefined ? piece.fromM : Math.max(piece.fromM, last.toM);
    if (last !== undefined && piece.toM <= last.toM)
      drawn[drawn.length - 1] = { ...last, widthM: Math.min(last.widthM, piece.widthM) };
    else drawn.push({ ...piece, fromM: takenM, toM: Math.max(piece.toM, takenM + leastM) });
  }
  return drawn;
}

/** The part of the paper that is drawn, in steps: scrolling within a step draws nothing anew. Pixels from the top. */
export function drawnSpan(
  topPx: number,
  heightPx: number,
): { readonly fromPx: number; readonly toPx: number } {
  const fromPx = (Math.floor(topPx / DRAWN_STEP_PX) - 1) * DRAWN_STEP_PX;
  return { fromPx, toPx: fromPx + (Math.ceil(heightPx / DRAWN_STEP_PX) + 3) * DRAWN_STEP_PX };
}

const DRAWN_STEP_PX = 240;

/** Where along a run its name is written: at even distances, clear of what is written there already. */
export function nameYs(topPx: number, bottomPx: number, textPx: number, taken: readonly number[]): number[] {
  const room = bottomPx - topPx;
  if (room < textPx) return [];
  const count = Math.max(1, Math.floor(room / NAME_EVERY_PX));
  const ys: number[] = [];
  for (let i = 0; i < count; i++) {
    const from = topPx + (i * room) / count + textPx / 2;
    const to = topPx + ((i + 1) * room) / count - textPx / 2;
    const middle = (from + to) / 2;
    for (const share of [0, -0.5, 0.5, -1, 1]) {
      const y = middle + (share * (to - from)) / 2;
      if (taken.some((each) => Math.abs(each - y) < textPx / 2 + CLEAR_PX)) continue;
      ys.push(y);
      break;
    }
  }
  return ys;
}

const NAME_EVERY_PX = 420;
const CLEAR_PX = 8;
