import { largest } from '../../lists.ts';

/** A corner that goes out: b from the rear axle, w from the middle line, and how far it may come out. Metres. */
export interface OutCorner {
  readonly bM: number;
  readonly wM: number;
  readonly outM: number;
}

/**
 * The radius of the rear-axle centre at which a corner comes out that far, steered from straight and held: of
 * out = √((R + w)² + b²) − (R + w), R = (b² − out²) / 2·out − w. `Infinity` for a corner that may not come out at all.
 */
function radiusOfCornerM({ bM, wM, outM }: OutCorner): number {
  return outM <= 0 ? Number.POSITIVE_INFINITY : (bM ** 2 - outM ** 2) / (2 * outM) - wM;
}

/** The least radius at which no corner comes out farther than it may; at it, one of them does just that. Metres. */
export function radiusOfSwingM(corners: readonly OutCorner[]): number {
  return largest(corners.map(radiusOfCornerM));
}
