import type { Level } from './level.ts';

/**
 * The four levels by shape: barred a filled bar across the road, tight two facing wedges, unknown a hollow
 * dashed ring, care a small flag. Drawn in a box of 24 by 24 about its middle, on the screen and on paper alike.
 */
export const LEVEL_SHAPES: Readonly<
  Record<Level, { readonly d: string; readonly filled: boolean; readonly dash?: string }>
> = {
  barred: { d: 'M1 8h22v8H1zM6.5 1.5v4M17.5 1.5v4M6.5 18.5v4M17.5 18.5v4', filled: true },
  tight: { d: 'M2 4v16l8-8zM22 4v16l-8-8z', filled: true },
  unknown: { d: 'M20 12a8 8 0 1 1-16 0 8 8 0 1 1 16 0z', filled: false, dash: '4.2 4.18' },
  care: { d: 'M6 3v18M6 4l13 4.5L6 13z', filled: true },
};

/** A verdict of `clear`: the road's two edges and nothing across them, the place of the bar is empty. */
export const CLEAR_SHAPE = 'M6.5 1.5v21M17.5 1.5v21';
