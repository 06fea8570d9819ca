import { middleAt, smoothed } from '../../drive/strip/paper/lean-drawn.ts';
import type { Strip } from '../../drive/strip/strip.ts';

/** A part of the strip as it lies on paper, read from the bottom up; millimetres. */
export interface StripColumn {
  readonly strip: Strip;
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
  readonly heightMm: number;
  readonly mmPerM: number;
  /** from the top */
  y(atM: number): number;
  /** the ribbon's middle, from the left */
  middle(atM: number): number;
}

export const COLUMN_WIDTH_MM = 60;
/** Left free above and below the ribbon. */
const PAD_MM = 6;
/** The window's paper is laid out in pixels of so many millimetres. */
export const MM_PER_PX = 0.2;
/** Where the window has the ribbon's middle, and where it stands here. */
const MIDDLE_PX = 92;
const MIDDLE_MM = 20;
/** Bends shorter than this on the paper are no more than a tremor. */
const BEND_MM = 3;

/** Lays a span of the strip on a column of that height. */
export function layColumn(
  strip: Strip,
  { fromM, toM }: { readonly fromM: number; readonly toM: number },
  heightMm: number,
): StripColumn {
  const mmPerM = (heightMm - 2 * PAD_MM) / Math.max(1, toM - fromM);
  const lean = smoothed(strip.lean, BEND_MM / (strip.leanStepM * mmPerM));
  return {
    strip,
    fromM,
    toM,
    heightMm,
    mmPerM,
    y: (atM) => heightMm - PAD_MM - (atM - fromM) * mmPerM,
    // the window's paper is read from the top, so what leans left there leans right here
    middle: (atM) => MIDDLE_MM - (middleAt(lean, strip.leanStepM, atM) - MIDDLE_PX) * MM_PER_PX,
  };
}
