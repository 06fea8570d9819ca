import { leastWhere } from '../../../earth/bisect.ts';
import type { Span } from '../../drive.ts';
import type { StripPiece } from '../strip.ts';
import { ACROSS_PX_PER_M } from './scale.ts';

/** Where nothing tells the width of the road. */
const USUAL_WIDTH_M = 5;

/** Half the road's width on the paper: never a hair, never the whole ribbon. */
export function halfWidthPx(widthM: number): number {
  return Math.max(3, Math.min(20, (widthM * ACROSS_PX_PER_M) / 2));
}

/** Half the road's width on the paper at a place. */
export function halfWidthAt(pieces: readonly StripPiece[], atM: number): number {
  return halfWidthPx(pieceAt(pieces, atM)?.widthM ?? USUAL_WIDTH_M);
}

/** The piece, of pieces in order without holes, that holds a place; undefined where there is none. */
export function pieceAt<T extends Span>(pieces: readonly T[], atM: number): T | undefined {
  return pieces[leastWhere(0, pieces.length - 1, (i) => !(pieces[i]!.toM < atM))];
}

/**
 * Pieces as they can be drawn: none shorter than `leastM`. A short one takes in what lies within that length, at the
 * narrowest width there: a pinch must not vanish.
 */
export function visiblePieces<T extends Span & { readonly widthM: number }>(
  pieces: readonly T[],
  leastM: number,
): T[] {
  const drawn: T[] = [];
  for (const piece of pieces) {
    const last = drawn.at(-1);
    const takenM = last === undefined ? piece.fromM : Math.max(piece.fromM, last.toM);
    if (last !== undefined && piece.toM <= last.toM)
      drawn[drawn.length - 1] = { ...last, widthM: Math.min(last.widthM, piece.widthM) };
    else drawn.push({ ...piece, fromM: takenM, toM: Math.max(piece.toM, takenM + leastM) });
  }
  return drawn;
}

/** Consecutive pieces of one kind: their edges are drawn as one line, stepped where the width changes. */
export function piecesByKind(pieces: readonly StripPiece[]): [StripPiece, ...StripPiece[]][] {
  const groups: [StripPiece, ...StripPiece[]][] = [];
  for (const piece of pieces) {
    const group = groups.at(-1);
    if (group?.[0].kind === piece.kind) group.push(piece);
    else groups.push([piece]);
  }
  return groups;
}
