import { localFrame } from '../../earth/frame.ts';
import { apartM } from '../../earth/point.ts';
import { type Place, placeBetween } from '../../earth/sphere.ts';
import type { Box } from '../../roads/box.ts';
import { boxAlong } from './box-along.ts';

/** A part of the drive as drawn, metres from its beginning; jumps between segments are not counted. */
export interface Span {
  readonly fromM: number;
  readonly toM: number;
}

/** What one question to a server is about. */
export interface Piece {
  /** the parts of the drive that hang on its answer */
  readonly spans: readonly Span[];
  /** degrees, within ±180 */
  readonly box: Box;
  /** what lies within so many metres of a line of two or more places; without one, whatever lies in the box */
  readonly along?: Along;
  /** a part of a square, through which the drive need not run */
  readonly isQuarter?: true;
}

export interface Along {
  readonly places: readonly Place[];
  readonly radiusM: number;
}

/** Neither half of a piece is shorter than this: a server that cannot answer for a kilometre will not for less. */
export const SHORTEST_M = 1_000;

/** The same piece as two smaller ones, or four where it is a square; undefined where it is small enough. */
export function halve(piece: Piece): Piece[] | undefined {
  return piece.along ? halveLine(piece, piece.along) : quarter(piece);
}

function halveLine({ spans }: Piece, { places, radiusM }: Along): Piece[] | undefined {
  const lengths = places.slice(1).map((place, i) => stepM(places[i] ?? place, place));
  const wholeM = lengths.reduce((sum, length) => sum + length, 0);
  if (wholeM < 2 * SHORTEST_M) return undefined;
  let beforeM = 0;
  let at = 0;
  while (beforeM + lengths[at]! < wholeM / 2) beforeM += lengths[at++]!;
  const share = (wholeM / 2 - beforeM) / lengths[at]!;
  const middle = placeBetween(places[at]!, places[at + 1]!, share);
  const halves = [
    [...places.slice(0, at + 1), middle],
    [middle, ...places.slice(at + 1)],
  ];
  return halves.map((half, i) => ({
    spans: spans.map(({ fromM, toM }) => {
      const middleM = (fromM + toM) / 2;
      return i === 0 ? { fromM, toM: middleM } : { fromM: middleM, toM };
    }),
    along: { places: half, radiusM },
    box: boxAlong(half, radiusM),
  }));
}

function stepM(a: Place, b: Place): number {
  return apartM({ x: 0, y: 0 }, localFrame(a.lat, a.lon).toXY(b.lat, b.lon));
}

function quarter({ spans, box }: Piece): Piece[] | undefined {
  const { south, north, west, east } = box;
  const middle = { lat: (south + north) / 2, lon: (west + east) / 2 };
  if (stepM({ lat: south, lon: middle.lon }, { lat: north, lon: middle.lon }) < 2 * SHORTEST_M)
    return undefined;
  return [
    { south, north: middle.lat, west, east: middle.lon },
    { south, north: middle.lat, west: middle.lon, east },
    { south: middle.lat, north, west, east: middle.lon },
    { south: middle.lat, north, west: middle.lon, east },
  ].map((part) => ({ spans, box: part, isQuarter: true }));
}
