import { awayFromSpan } from '../../../earth/segment.ts';
import type { Point } from '../../point.ts';

/** The straight pieces of a line, in order. */
export function piecesOf(line: readonly Point[]): (readonly [Point, Point])[] {
  return line.slice(1).map((to, index) => [line[index]!, to] as const);
}

/** Whether two segments cross within both; meeting at an end, or lying along one another, is no crossing. */
export function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point): number =>
    (q.xM - p.xM) * (r.yM - p.yM) - (q.yM - p.yM) * (r.xM - p.xM);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** Distance of a place from a segment. Metres. */
export function toSegmentM(p: Point, a: Point, b: Point): number {
  return awayFromSpan(p.xM - a.xM, p.yM - a.yM, b.xM - a.xM, b.yM - a.yM);
}
