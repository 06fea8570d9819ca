import { apartM, type Point, pointBetween } from '../../../geo/earth/point.ts';
import { nearestOn } from '../../../geo/earth/segment.ts';
import type { Meeting, Tags } from '../../plan/words.ts';
import { item } from './plane.ts';

/** A point of one or several lines; lines that share the object meet there. */
export interface Vertex extends Point {
  tags?: Tags;
  /** ways must end here, as turn restrictions need */
  split?: boolean;
  /** another line has it too */
  joined?: boolean;
}

export type LineKind = 'road' | 'path' | 'rail' | 'river' | 'stream' | 'ferry' | 'coast' | 'trees';

export interface Line extends Meeting {
  readonly key: string;
  readonly kind: LineKind;
  readonly tags: Tags;
  pts: Vertex[];
  /** tags of its own for each piece between two vertices, on top of the line's */
  seg: Tags[];
}

export function lineLength(line: Line): number {
  let sum = 0;
  for (let i = 1; i < line.pts.length; i++) sum += apartM(item(line.pts, i - 1), item(line.pts, i));
  return sum;
}

/** Where on the line a point falls: metres along, and the distance to it. */
export function placeOn(line: Line, p: Point): { metres: number; distance: number } {
  let best = { metres: 0, distance: Number.POSITIVE_INFINITY };
  let gone = 0;
  for (let i = 1; i < line.pts.length; i++) {
    const a = item(line.pts, i - 1);
    const b = item(line.pts, i);
    const near = nearestOn(p, a, b);
    const run = apartM(a, b);
    if (near.awayM < best.distance) best = { metres: gone + run * near.t, distance: near.awayM };
    gone += run;
  }
  return best;
}

/** Vertices this close to a wanted place serve as it. Metres. */
const SAME_M = 1.5;

/** The vertex at so many metres along, made if there is none. */
export function vertexAt(line: Line, metres: number, same = SAME_M): Vertex {
  let gone = 0;
  for (let i = 1; i < line.pts.length; i++) {
    const a = item(line.pts, i - 1);
    const b = item(line.pts, i);
    const run = apartM(a, b);
    if (metres <= gone + run + 1e-6 || i === line.pts.length - 1) {
      const here = Math.min(run, Math.max(0, metres - gone));
      if (here <= same && here <= run / 2) return a;
      if (run - here <= same) return b;
      const made: Vertex = { ...pointBetween(a, b, here / run) };
      insert(line, i, made);
      return made;
    }
    gone += run;
  }
  throw new Error(`no place on ${line.key}`);
}

/** Puts a vertex before the vertex of the given index; both halves keep the piece's tags. */
export function insert(line: Line, index: number, vertex: Vertex): void {
  line.pts.splice(index, 0, vertex);
  line.seg.splice(index, 0, item(line.seg, index - 1));
}

/** Lays tags on the pieces between two places of the line. */
export function markSpan(line: Line, fromM: number, toM: number, tags: Tags): void {
  const first = vertexAt(line, Math.max(0, fromM));
  const last = vertexAt(line, Math.min(lineLength(line), toM));
  const from = line.pts.indexOf(first);
  const to = line.pts.lastIndexOf(last);
  for (let i = from; i < to; i++) line.seg[i] = { ...line.seg[i], ...tags };
}

/** Metres along the line of one of its vertices. */
export function metresOf(line: Line, vertex: Vertex): number {
  let gone = 0;
  for (const [i, p] of line.pts.entries()) {
    if (i > 0) gone += apartM(item(line.pts, i - 1), p);
    if (p === vertex) return gone;
  }
  throw new Error(`not a vertex of ${line.key}`);
}

/** The tags of the piece so many metres along, without the line's own. */
export function tagsAt(line: Line, metres: number): Tags {
  let gone = 0;
  for (const [i, tags] of line.seg.entries()) {
    gone += apartM(item(line.pts, i), item(line.pts, i + 1));
    if (metres <= gone) return tags;
  }
  return {};
}
