import { fromMercator, mercatorX, mercatorY } from '../../earth/mercator.ts';
import { largest, smallest } from '../../lists.ts';

/** A place on the drawing, millimetres from its left and top. */
export interface OnPaper {
  readonly x: number;
  readonly y: number;
}

export interface BoxMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** How the Earth lies on a drawing. */
export interface MapProjection {
  readonly box: BoxMm;
  /** degrees of what is seen */
  readonly south: number;
  readonly west: number;
  readonly north: number;
  readonly east: number;
  place(lat: number, lon: number): OnPaper;
}

/** Nothing is drawn larger than this: a drive along one street is seen with its neighbours. Unit square. */
const LEAST_ACROSS = 1.2e-5;

/** The projection that shows a line within a box, an edge left free about it. @param line [lon, lat] pairs */
export function projectionOf(
  line: readonly (readonly [number, number])[],
  box: BoxMm,
  edgeMm: number,
): MapProjection {
  const xs = line.map(([lon]) => mercatorX(lon));
  const ys = line.map(([, lat]) => mercatorY(lat));
  const [left, right, top, bottom] = [smallest(xs), largest(xs), smallest(ys), largest(ys)];
  const scale = Math.max(
    Math.max(right - left, LEAST_ACROSS) / (box.widthMm - 2 * edgeMm),
    Math.max(bottom - top, LEAST_ACROSS) / (box.heightMm - 2 * edgeMm),
  );
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2];
  const x0 = middleX - (box.widthMm / 2) * scale;
  const y0 = middleY - (box.heightMm / 2) * scale;
  const [x1, y1] = [x0 + box.widthMm * scale, y0 + box.heightMm * scale];
  const [upper, lower] = [fromMercator(x0, y0), fromMercator(x1, y1)];
  return {
    box,
    south: lower.lat,
    north: upper.lat,
    west: upper.lon,
    east: lower.lon,
    place: (lat, lon) => ({ x: (mercatorX(lon) - x0) / scale, y: (mercatorY(lat) - y0) / scale }),
  };
}
