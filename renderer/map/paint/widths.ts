import type { RoadKind } from '../../../geo/basemap/features.ts';

/** Zooms (of 256-pixel tiles) at which the widths below hold; between them they grow evenly by ratio. */
const STOPS = [6, 10, 13, 16, 19];

/** Width of the surface in pixels at each stop: by importance, not to scale until one is close. */
const WIDTHS: Readonly<Record<RoadKind, readonly number[]>> = {
  motorway: [1.5, 2.8, 5.4, 13, 56],
  trunk: [1.2, 2.4, 4.8, 11.5, 50],
  primary: [0.9, 2.1, 4.4, 10.5, 46],
  secondary: [0.6, 1.6, 3.7, 9, 42],
  tertiary: [0.4, 1.1, 3, 7.5, 36],
  link: [0.4, 1, 2.5, 6, 30],
  minor: [0.3, 0.6, 1.8, 6, 30],
  pedestrian: [0.3, 0.5, 1.4, 5, 24],
  service: [0.2, 0.4, 1.1, 3.2, 16],
  track: [0.3, 0.5, 1, 2.2, 6],
  path: [0.3, 0.4, 0.8, 1.4, 3],
  rail: [0.6, 0.9, 1.3, 1.8, 4],
  railMinor: [0.4, 0.6, 0.9, 1.3, 3],
};

/** Width of a road's surface on the screen, pixels. */
export function roadWidthPx(kind: RoadKind, zoom: number): number {
  const widths = WIDTHS[kind];
  if (zoom <= STOPS[0]!) return widths[0]!;
  for (let i = 1; i < STOPS.length; i++) {
    const to = STOPS[i]!;
    if (zoom > to) continue;
    const from = STOPS[i - 1]!;
    const a = widths[i - 1]!;
    const b = widths[i]!;
    return a * (b / a) ** ((zoom - from) / (to - from));
  }
  return widths.at(-1) as number;
}

/** Width of the line on either side of a road, pixels. */
export function casingPx(zoom: number): number {
  return zoom < 12 ? 0.7 : zoom < 15 ? 0.9 : 1.2;
}
