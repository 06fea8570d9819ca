import type { SwingVehicle } from '../swing-vehicle.ts';

/** One piece of a path: a straight, or an arc with its turn (left positive). Metres, radians. */
export type PathPiece =
  | { readonly kind: 'line'; readonly lengthM: number }
  | { readonly kind: 'arc'; readonly radiusM: number; readonly turnRad: number };

/** Where a guided point of the vehicle goes: tangent pieces one after another, from the origin along x. */
export interface GuidePath {
  readonly pieces: readonly PathPiece[];
}

/** The point of the vehicle that is kept on the path. */
export type Guide = 'front axle' | 'rear axle' | { readonly aheadM: number; readonly leftM: number };

/** The guided point in the vehicle's frame. */
export function guidedPoint(
  vehicle: SwingVehicle,
  guide: Guide,
): { readonly aheadM: number; readonly leftM: number } {
  if (guide === 'front axle') return { aheadM: vehicle.wheelbaseM, leftM: 0 };
  if (guide === 'rear axle') return { aheadM: 0, leftM: 0 };
  return guide;
}

/** Length of a piece and its curvature, left positive. */
export function shapeOf(piece: PathPiece): { readonly lengthM: number; readonly curvature: number } {
  if (piece.kind === 'line') return { lengthM: piece.lengthM, curvature: 0 };
  return {
    lengthM: piece.radiusM * Math.abs(piece.turnRad),
    curvature: Math.sign(piece.turnRad) / piece.radiusM,
  };
}
