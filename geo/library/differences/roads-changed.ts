import type { Span } from '../../drive/drive.ts';
import { joinSpans } from '../../drive/join-spans.ts';
import type { DriveReport } from '../../report/report.ts';
import { lengthM, sharedM } from './item.ts';

export type Road = DriveReport['roads'][number];

/** Shorter than this it is a junction drawn otherwise. Metres. */
const LEAST_M = 50;

/** A part of the drive that runs on another road than before, or on the same road of another class. */
export interface RoadChange {
  /** metres along the newer report's drive */
  readonly span: Span;
  /** the longest road there, before and now */
  readonly was: Road;
  readonly now: Road;
}

/**
 * Where the drive is on another road by the newer map. A way in two halves, under another number, drawn the other way
 * or a little beside is the same road. What either map has no road for is not told here.
 * @param newer from metres of the older report to the newer one's
 */
export function roadsChanged(was: DriveReport, now: DriveReport, newer: (m: number) => number): RoadChange[] {
  const older = was.roads.map((road) => ({ ...road, fromM: newer(road.fromM), toM: newer(road.toM) }));
  const differing: RoadChange[] = [];
  let first = 0;
  for (const road of now.roads) {
    while (first < older.length && older[first]!.toM <= road.fromM) first++;
    for (let at = first; at < older.length && older[at]!.fromM < road.toM; at++) {
      const before = older[at]!;
      const span = { fromM: Math.max(before.fromM, road.fromM), toM: Math.min(before.toM, road.toM) };
      if (sharedM(before, road) > 0 && !isSameRoad(before, road))
        differing.push({ span, was: before, now: road });
    }
  }
  return joinSpans(
    differing.map(({ span }) => span),
    LEAST_M,
  )
    .filter((span) => lengthM(span) > LEAST_M)
    .map((span) => longestIn(span, differing));
}

function longestIn(span: Span, changes: readonly RoadChange[]): RoadChange {
  const [longest] = changes
    .filter((change) => sharedM(change.span, span) > 0)
    .sort((a, b) => lengthM(b.span) - lengthM(a.span));
  return { ...longest!, span };
}

function isSameRoad(a: Road, b: Road): boolean {
  if (a.class !== b.class) return false;
  if (a.way === b.way || isOne(a.name, b.name) || isOne(a.ref, b.ref)) return true;
  return mayBeOne(a.name, b.name) && mayBeOne(a.ref, b.ref);
}

function isOne(a: string | undefined, b: string | undefined): boolean {
  return a !== undefined && a === b;
}

/** A road without a name may have been given one since. */
function mayBeOne(a: string | undefined, b: string | undefined): boolean {
  return a === undefined || b === undefined || a === b;
}
