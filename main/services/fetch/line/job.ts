import type { Place } from '../../../../geo/earth/sphere.ts';
import { halve, type Piece, type Span } from '../../../../geo/fetch/line/piece.ts';
import { areasQuery, type Budget, pieceQuery } from '../../../../geo/fetch/line/query.ts';

/** One question to be asked: what lies along a piece, or which areas hold some places. */
export type Job = (
  | { readonly is: 'piece'; readonly piece: Piece }
  | { readonly is: 'areas'; readonly places: readonly Place[] }
) & {
  /** how often in a row it was asked in vain, as a part of larger ones too */
  readonly failed: number;
};

/** So many places are asked for at once. */
const PLACES_AT_ONCE = 50;

/** All there is to ask: areas last, since a server that cannot tell them has told the rest by then. */
export function jobsOf(pieces: readonly Piece[], places: readonly Place[]): Job[] {
  const jobs: Job[] = pieces.map((piece) => ({ is: 'piece', piece, failed: 0 }));
  for (let at = 0; at < places.length; at += PLACES_AT_ONCE)
    jobs.push({ is: 'areas', places: places.slice(at, at + PLACES_AT_ONCE), failed: 0 });
  return jobs;
}

/** @param budget left out: the question alone, by which its answer is kept */
export function questionOf(job: Job, budget?: Budget): string {
  return job.is === 'piece' ? pieceQuery(job.piece, budget) : areasQuery(job.places, budget);
}

/** The same in smaller parts; undefined where it is small enough. */
export function partsOf(job: Job): Job[] | undefined {
  if (job.is === 'piece') return halve(job.piece)?.map((piece) => ({ ...job, piece }));
  if (job.places.length < 2) return undefined;
  const middle = Math.ceil(job.places.length / 2);
  return [job.places.slice(0, middle), job.places.slice(middle)].map((places) => ({ ...job, places }));
}

/** The parts of the drive that hang on it. */
export function spansOf(job: Job): readonly Span[] {
  return job.is === 'piece' ? job.piece.spans : [];
}
