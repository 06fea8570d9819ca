import { middleAt } from '../../geo/drive/strip/paper/lean-drawn.ts';
import type { StripScale } from '../../geo/drive/strip/paper/scale.ts';
import type { Strip } from '../../geo/drive/strip/strip.ts';

/** A strip on its paper, and the part of it that is drawn: metres along the drive. */
export interface StripDrawing {
  readonly strip: Strip;
  readonly scale: StripScale;
  readonly fromM: number;
  readonly toM: number;
}

interface Reach {
  readonly fromM: number;
  readonly toM: number;
}

/** The ribbon's middle at a place, pixels from the left. */
export function middleOf({ strip }: StripDrawing, atM: number): number {
  return middleAt(strip.lean, strip.leanStepM, atM);
}

/** Whether a place is drawn. */
export function isDrawn({ fromM, toM }: StripDrawing, atM: number): boolean {
  return atM >= fromM && atM <= toM;
}

/** What of the items is drawn, at least in part. */
export function drawnOf<T extends Reach>({ fromM, toM }: StripDrawing, items: readonly T[]): T[] {
  return items.filter((item) => item.toM >= fromM && item.fromM <= toM);
}

/** The part of a span that is drawn. */
export function cutTo({ fromM, toM }: StripDrawing, span: Reach): Reach {
  return { fromM: Math.max(span.fromM, fromM), toM: Math.min(span.toM, toM) };
}

/** Pixels to the right of the ribbon's middle, negative to the left. */
export interface Aside {
  readonly left: number;
  readonly right: number;
}

/** A closed outline that follows the ribbon's lean over a span, as the data of an SVG path. */
export function band(drawing: StripDrawing, span: Reach, { left, right }: Aside): string {
  const up = sideLine(drawing, span, left);
  const down = sideLine(drawing, span, right).reverse();
  return `M${[...up, ...down].join('L')}Z`;
}

/** One side of it, as "x y" from the top down. @param aside from the ribbon's middle, pixels */
export function sideLine(drawing: StripDrawing, { fromM, toM }: Reach, aside: number): string[] {
  const { strip, scale } = drawing;
  const places: number[] = [fromM];
  // no finer than the eye: at a small scale every vertex would be drawn within one pixel
  const step = Math.max(strip.leanStepM, 3 / scale.pxPerM);
  for (let m = Math.ceil((fromM + 1) / step) * step; m < toM; m += step) places.push(m);
  places.push(toM);
  return places.map((m) => `${(middleOf(drawing, m) + aside).toFixed(1)} ${scale.y(m).toFixed(1)}`);
}
