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
