/**
 * Where things stand on the ribbon: it is read from the top (the start) down, as the rows beside it are. So the paper is
 * turned: what lies left of the driver stands on the right. Pixels from the top.
 */
export interface StripScale {
  readonly lengthM: number;
  readonly pxPerM: number;
  readonly heightPx: number;
  y(atM: number): number;
  atM(y: number): number;
}

/** Room above the start and below the end. */
export const PAD_PX = 34;
/** Across the ribbon one scale holds for road and vehicle alike. */
export const ACROSS_PX_PER_M = 3.6;
export const WIDTH_PX = 200;
/** The middle of the findings' marks, pixels from the left. */
export const MARK_X = 150;

export function stripScale(lengthM: number, pxPerM: number): StripScale {
  const heightPx = lengthM * pxPerM + 2 * PAD_PX;
  return {
    lengthM,
    pxPerM,
    heightPx,
    y: (atM) => PAD_PX + atM * pxPerM,
    atM: (y) => Math.max(0, Math.min(lengthM, (y - PAD_PX) / pxPerM)),
  };
}

const STEPS_M = [100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];
const TICK_APART_PX = 44;

/** The distance between two figures so that they stand at least so far apart. @param unitM 1 for kilometres, 1.609344 for miles */
export function tickStepM(pxPerM: number, unitM: number): number {
  const least = TICK_APART_PX / pxPerM;
  return unitM * (STEPS_M.find((step) => step * unitM >= least) ?? 100_000);
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
