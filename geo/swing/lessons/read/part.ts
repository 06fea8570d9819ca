import type { Side } from '../../point.ts';

/** Which part of the vehicle touches, comes near or hangs over. */
export type VehiclePart =
  | { readonly kind: 'corner'; readonly side: Side; readonly end: 'front' | 'rear' }
  | { readonly kind: 'side'; readonly side: Side }
  | { readonly kind: 'end'; readonly end: 'front' | 'rear' }
  | { readonly kind: 'wheel'; readonly side: Side; readonly end: 'front' | 'rear' }
  | { readonly kind: 'rack' }
  | { readonly kind: 'rack corner'; readonly side: Side };
