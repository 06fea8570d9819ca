import { awayFromSpan } from '../../../geo/earth/segment.ts';
import type { Point } from '../../../geo/swing/point.ts';

/** Half a centimetre, far below a pixel at any zoom. */
const PLACES = 3;

/** A line in metres for a path's `d`, back to its beginning where it is closed. */
export function pathOf(line: readonly Point[], end: 'open' | 'closed' = 'open'): string {
  if (line.length === 0) return '';
  return `M${line.map(({ xM, yM }) => `${xM.toFixed(PLACES)} ${yM.toFixed(PLACES)}`).join('L')}${end === 'closed' ? 'Z' : ''}`;
}

/** A line that is drawn up to a sample: the text of the whole, cut where that sample ends. */
export interface GrowingPath {
  upTo(index: number): string;
  readonly whole: string;
}

export function growingPath(line: readonly Point[]): GrowingPath {
  let whole = '';
  const ends = line.map(({ xM, yM }, i) => {
    whole += `${i === 0 ? 'M' : 'L'}${xM.toFixed(PLACES)} ${yM.toFixed(PLACES)}`;
    return whole.length;
  });
  return { whole, upTo: (index) => whole.slice(0, ends[Math.min(index, ends.length - 1)] ?? 0) };
}

/** A line moved sideways, left positive; mitred at its bends, less at very sharp ones. */
export function besideLine(line: readonly Point[], leftM: number): Point[] {
  return line.map((at, i) => {
    const before = direction(line[i - 1] ?? at, at) ?? direction(at, line[i + 1] ?? at);
    const after = direction(at, line[i + 1] ?? at) ?? before;
    if (!before || !after) return at;
    const [nx, ny] = [-(before.y + after.y) / 2, (before.x + after.x) / 2];
    const squared = Math.max(0.25, nx * nx + ny * ny);
    return { xM: at.xM + (leftM * nx) / squared, yM: at.yM + (leftM * ny) / squared };
  });
}

/** On which side of a line a place lies: 1 left, −1 right, by the piece nearest to it. */
export function sideOf(line: readonly Point[], place: Point): 1 | -1 {
  let nearest = Number.POSITIVE_INFINITY;
  let side: 1 | -1 = 1;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
    if (dx === 0 && dy === 0) continue;
    const [px, py] = [place.xM - a.xM, place.yM - a.yM];
    const distance = awayFromSpan(px, py, dx, dy);
    if (distance < nearest - 1e-9) {
      nearest = distance;
      side = dx * py - dy * px >= 0 ? 1 : -1;
    }
  }
  return side;
}

function direction(from: Point, to: Point): { readonly x: number; readonly y: number } | undefined {
  const [x, y] = [to.xM - from.xM, to.yM - from.yM];
  const long = Math.hypot(x, y);
  return long < 1e-9 ? undefined : { x: x / long, y: y / long };
}
