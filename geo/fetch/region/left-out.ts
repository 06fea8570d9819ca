import type { Span } from '../../drive/drive.ts';
import type { DrawnThrough } from './drawn-through.ts';

/** A strip this narrow is a gap between two outlines: ways that cross it are whole in both maps. Metres. */
export const STRIP_M = 1_000;

/** What smallest kind of region a piece of the line lies in. */
type Lies = 'part' | 'whole only' | 'nowhere';

/** Consecutive pieces that lie alike. */
export interface Run {
  readonly lies: Lies;
  readonly pieces: readonly number[];
  /** metres along the line */
  readonly span: Span;
}

/** The line as runs of pieces by what they lie in. */
export function runsOf({ pieces, candidates }: DrawnThrough): Run[] {
  const lies: Lies[] = Array.from({ length: pieces.count }, () => 'nowhere');
  for (const { pieces: held, madeOfOthers } of candidates)
    for (const piece of held)
      if (!madeOfOthers) lies[piece] = 'part';
      else if (lies[piece] === 'nowhere') lies[piece] = 'whole only';
  return spansOf(pieces.lengthM, (piece) => lies[piece]!).map(({ value, ...run }) => ({
    lies: value,
    ...run,
  }));
}

/** Pieces in order, neighbours of one value together. */
export function spansOf<T>(
  lengthM: Float64Array,
  of: (piece: number) => T,
): { readonly value: T; readonly pieces: number[]; readonly span: { fromM: number; toM: number } }[] {
  const runs: { value: T; pieces: number[]; span: { fromM: number; toM: number } }[] = [];
  let atM = 0;
  for (const [piece, length] of lengthM.entries()) {
    const value = of(piece);
    const last = runs.at(-1);
    const toM = atM + length;
    if (last !== undefined && last.value === value) {
      last.pieces.push(piece);
      last.span.toM = toM;
    } else runs.push({ value, pieces: [piece], span: { fromM: atM, toM } });
    atM = toM;
  }
  return runs;
}

/**
 * Pieces that no region is fetched for: those in none, and those that only a region made of others holds, where they
 * lie between two parts that are covered, as a strait does, or are a narrow strip. At either end of a drive there is
 * land, so a longer run there is worth its region.
 */
export function notWorthARegion(runs: readonly Run[]): Set<number> {
  const left = new Set<number>();
  const [first, last] = [
    runs.findIndex(({ lies }) => lies === 'part'),
    runs.findLastIndex(({ lies }) => lies === 'part'),
  ];
  for (const [at, { lies, pieces, span }] of runs.entries()) {
    const between = at > first && at < last;
    const strip = first >= 0 && span.toM - span.fromM <= STRIP_M;
    if (lies === 'nowhere' || (lies === 'whole only' && (between || strip)))
      for (const piece of pieces) left.add(piece);
  }
  return left;
}
