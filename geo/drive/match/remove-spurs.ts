import type { RoadGraph } from '../../graph/road-graph.ts';
import type { Span } from '../drive.ts';
import type { EdgePart } from './trace-paths.ts';
import type { Pruned } from './trim-touches.ts';

/** Out-and-back shorter than this in each direction is a slip of the match, not a drive. */
const SPUR_M = 30;
const SAME_PLACE_M = 1e-3;

/** A part that remembers where it lay along the path as it was. */
interface Placed {
  directed: number;
  fromM: number;
  toM: number;
  pathM: number;
}

/**
 * Takes short spurs out of a path: out and back over the same ground, less than 30 m deep, as into a side road the
 * positions only brush. Where the drive goes on back along the road it came by, turning is the drive itself and stays.
 *
 * @returns the parts left, and the spans of the path that were taken, in metres along the path as it was
 */
export function removeSpurs(parts: readonly EdgePart[], graph: RoadGraph): Pruned {
  let pathM = 0;
  const ahead: Placed[] = parts.map((part) => {
    const placed = { ...part, pathM };
    pathM += part.toM - part.fromM;
    return placed;
  });
  const kept: Placed[] = [];
  const removed: Span[] = [];
  let at = 0;
  for (let part = ahead[at]; part !== undefined; part = ahead[at]) {
    const depthM = mirroredM(kept, ahead, at, graph);
    if (depthM === 0 || depthM > SPUR_M) {
      kept.push(part);
      at++;
      continue;
    }
    const fromM = dropEnd(kept, depthM);
    at = dropStart(ahead, at, depthM);
    const toM = ahead[at]?.pathM ?? pathM;
    while ((removed.at(-1)?.fromM ?? -1) >= fromM) removed.pop();
    removed.push({ fromM, toM });
  }
  return { parts: kept.map(({ directed, fromM, toM }) => ({ directed, fromM, toM })), removed };
}

/** How far, in metres, what lies ahead goes back over what was driven last; more than a spur is not told apart. */
function mirroredM(kept: readonly Placed[], ahead: readonly Placed[], at: number, graph: RoadGraph): number {
  let i = kept.length - 1;
  let j = at;
  let outM = kept[i]?.toM ?? 0;
  let backM = ahead[j]?.fromM ?? 0;
  let depthM = 0;
  for (;;) {
    const out = kept[i];
    const back = ahead[j];
    if (out === undefined || back === undefined || out.directed !== (back.directed ^ 1)) return depthM;
    const length = graph.lengthM[out.directed >> 1]!;
    if (Math.abs(outM - (length - backM)) > SAME_PLACE_M) return depthM;
    const stepM = Math.min(outM - out.fromM, back.toM - backM);
    depthM += stepM;
    if (depthM > SPUR_M) return depthM;
    outM -= stepM;
    backM += stepM;
    if (outM - out.fromM < SAME_PLACE_M) outM = kept[--i]?.toM ?? 0;
    if (back.toM - backM < SAME_PLACE_M) backM = ahead[++j]?.fromM ?? 0;
  }
}

/** Shortens the end by `lengthM`; where along the path it then ends. */
function dropEnd(kept: Placed[], lengthM: number): number {
  let leftM = lengthM;
  for (;;) {
    const last = kept.at(-1);
    if (last === undefined) return 0;
    const ownM = last.toM - last.fromM;
    if (ownM > leftM + SAME_PLACE_M) {
      last.toM -= leftM;
      return last.pathM + last.toM - last.fromM;
    }
    leftM -= ownM;
    kept.pop();
    if (leftM < SAME_PLACE_M) return last.pathM;
  }
}

/** Shortens what lies ahead of place `at` by `lengthM`; the place it then begins at. */
function dropStart(ahead: Placed[], at: number, lengthM: number): number {
  let leftM = lengthM;
  let next = at;
  for (let part = ahead[next]; part !== undefined && leftM > SAME_PLACE_M; part = ahead[next]) {
    const ownM = part.toM - part.fromM;
    if (ownM > leftM + SAME_PLACE_M) {
      part.fromM += leftM;
      part.pathM += leftM;
      return next;
    }
    leftM -= ownM;
    next++;
  }
  return next;
}

/** A distance along the path as it was, turned into one along the path without the removed spans. */
export function afterRemoval(atM: number, removed: readonly Span[]): number {
  let goneM = 0;
  for (const span of removed) {
    if (span.fromM >= atM) break;
    goneM += Math.min(atM, span.toM) - span.fromM;
  }
  return atM - goneM;
}
