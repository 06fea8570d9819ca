import type { Span } from '../drive/drive.ts';
import type { Place } from './places.ts';

/** Legs meet exactly; this is for rounding. Metres. */
export const TOUCHING_M = 0.5;

/** A part of a driven way, or a node passed, that a rule has something to say about. */
export interface Piece extends Span {
  readonly place: Place;
}

export type Run<P extends Span = Piece> = readonly [P, ...P[]];

/** The whole of a driven way, or a node. */
export function wholeOf(place: Place): Piece {
  return { place, fromM: place.fromM, toM: place.toM };
}

/** A place by itself. */
export function runOf(place: Place): Run {
  return [wholeOf(place)];
}

/**
 * Pieces of one group that follow each other, interruptions up to `gapM` not counting, as one run.
 * Runs are in order of their beginnings.
 */
export function joinRuns<P extends Span>(
  pieces: readonly P[],
  gapM: number,
  groupOf: (piece: P) => string = () => '',
): Run<P>[] {
  const runs: [P, ...P[]][] = [];
  const open = new Map<string, { run: [P, ...P[]]; endM: number }>();
  for (const piece of [...pieces].sort((a, b) => a.fromM - b.fromM || a.toM - b.toM)) {
    const group = groupOf(piece);
    const last = open.get(group);
    if (last !== undefined && piece.fromM - last.endM <= gapM) {
      last.run.push(piece);
      last.endM = Math.max(last.endM, piece.toM);
      continue;
    }
    const run: [P, ...P[]] = [piece];
    runs.push(run);
    open.set(group, { run, endM: piece.toM });
  }
  return runs;
}

/** Where the last piece of a run ends. Metres along the drive. */
export function endOf(run: Run<Span>): number {
  return run.reduce((end, { toM }) => Math.max(end, toM), run[0].toM);
}

/** Metres of a run that its pieces cover, overlaps counted once. */
export function coveredM(run: Run<Span>): number {
  let sum = 0;
  let endM = Number.NEGATIVE_INFINITY;
  for (const { fromM, toM } of run) {
    sum += Math.max(0, toM - Math.max(fromM, endM));
    endM = Math.max(endM, toM);
  }
  return sum;
}
