import type { Piece } from './piece.ts';
import { lengthOfSpans } from './spans.ts';

/** What is about to come, roughly. */
export interface Estimate {
  /** over the line */
  readonly packedBytes: number;
  /** on the disk */
  readonly unpackedBytes: number;
  readonly seconds: number;
}

/**
 * Bytes of an answer for each metre of line, and more for a wider strip. Measured on extracts of four kinds of country
 * with a radius of 150 to 430 m: 11 in flat country, 20 to 42 in the mountains, 91 and 161 in cities. Extracts lack
 * some of what stands beside a road, so somewhat more is told.
 */
const BYTES_PER_M = 45;
const BYTES_PER_M2 = 0.1;
/** Of a square of 3 km; measured 70 kB to 1.1 MB. */
const BYTES_PER_SQUARE = 600_000;
/** How much smaller gzip makes it; measured 5.3 to 6.5. */
const PACKED = 5.5;
/** A server's work on one question, and the pause after it. */
const SECONDS_PER_QUESTION = 6;
/** A slow line. */
const PACKED_BYTES_PER_S = 500_000;

/** Of so many pieces, and one question for the areas that hold them. */
export function estimate(pieces: readonly Piece[]): Estimate {
  const unpackedBytes = pieces.reduce((sum, piece) => sum + bytesOf(piece), 0);
  const packedBytes = unpackedBytes / PACKED;
  const questions = pieces.length + (pieces.length > 0 ? 1 : 0);
  return {
    packedBytes,
    unpackedBytes,
    seconds: questions * SECONDS_PER_QUESTION + packedBytes / PACKED_BYTES_PER_S,
  };
}

function bytesOf({ along, spans }: Piece): number {
  if (!along) return BYTES_PER_SQUARE;
  return lengthOfSpans(spans) * (BYTES_PER_M + BYTES_PER_M2 * along.radiusM);
}
