import type { RoadEdges } from '../../graph/road-edges.ts';
import type { Span } from '../drive.ts';
import type { EdgePart } from './trace-paths.ts';

/** A road driven for less than this at an end of a path is only touched: positions are written to about a metre. */
export const TOUCH_M = 1;

/** What is left of a path, and the spans taken out of it, in metres along the path as it was. */
export interface Pruned {
  readonly parts: readonly EdgePart[];
  readonly removed: readonly Span[];
}

/** Takes out a first and a last way that the path only touches, where it ends by a junction. */
export function trimTouches({ parts, removed }: Pruned, edges: RoadEdges): Pruned {
  const from = touches(parts[0], parts[1], edges) ? 1 : 0;
  const to = touches(parts.at(-1), parts.at(-2), edges) ? parts.length - 1 : parts.length;
  if (from >= to) return { parts, removed };
  const kept = { parts: parts.slice(from, to), removed };
  if (from === 0) return kept;
  const [before] = removed;
  const startM = before?.fromM === 0 ? before.toM : 0;
  const touched = { fromM: startM, toM: startM + lengthOf(parts[0]!) };
  return { ...kept, removed: [...removed, touched].sort((a, b) => a.fromM - b.fromM) };
}

function touches(end: EdgePart | undefined, next: EdgePart | undefined, { way }: RoadEdges): boolean {
  if (end === undefined || next === undefined || lengthOf(end) >= TOUCH_M) return false;
  return way[end.directed >> 1] !== way[next.directed >> 1];
}

function lengthOf({ fromM, toM }: EdgePart): number {
  return toM - fromM;
}
