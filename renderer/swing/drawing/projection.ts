import type { Extent } from '../../../geo/swing/lessons/scene/scene.ts';
import type { Point } from '../../../geo/swing/point.ts';

/** How the ground lies on the drawing: x to the right, y up, one scale for both. */
export interface Projection {
  readonly pxPerM: number;
  /** where the ground's origin is drawn */
  readonly leftPx: number;
  readonly topPx: number;
}

export interface Box {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Pixels a metre at which the whole extent is seen within the box, less its edge. */
export function scaleToFit({ from, to }: Extent, box: Box, edgePx: number): number {
  const across = Math.max(1, to.xM - from.xM);
  const up = Math.max(1, to.yM - from.yM);
  const [wide, high] = [Math.max(40, box.widthPx - 2 * edgePx), Math.max(40, box.heightPx - 2 * edgePx)];
  return Math.min(wide / across, high / up);
}

/** The place of the ground that is drawn in the middle of the box. */
export function centredOn(middle: Point, pxPerM: number, box: Box): Projection {
  return {
    pxPerM,
    leftPx: box.widthPx / 2 - middle.xM * pxPerM,
    topPx: box.heightPx / 2 + middle.yM * pxPerM,
  };
}

/** The middle of a box. */
export function middleOf({ from, to }: Extent): Point {
  return { xM: (from.xM + to.xM) / 2, yM: (from.yM + to.yM) / 2 };
}

/** A place of the ground on the drawing, pixels. */
export function drawn(projection: Projection, at: Point): { readonly x: number; readonly y: number } {
  return {
    x: projection.leftPx + at.xM * projection.pxPerM,
    y: projection.topPx - at.yM * projection.pxPerM,
  };
}

/** For a group whose children are drawn in metres. */
export function matrixOf({ pxPerM, leftPx, topPx }: Projection): string {
  const s = pxPerM.toFixed(4);
  return `matrix(${s} 0 0 -${s} ${leftPx.toFixed(2)} ${topPx.toFixed(2)})`;
}

const ROUND_M = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20];

/** The longest round length that is drawn within `mostPx`. Metres. */
export function scaleBarM(pxPerM: number, mostPx: number): number {
  return ROUND_M.findLast((m) => m * pxPerM <= mostPx) ?? 0.1;
}
