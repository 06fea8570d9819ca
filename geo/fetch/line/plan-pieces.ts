import type { Place } from '../../earth/sphere.ts';
import { largest } from '../../lists.ts';
import type { DrawnRoute } from '../../roads/discs.ts';
import { cutEnds } from './cut-ends.ts';
import { cutLine } from './cut-line.ts';
import { layLines } from './lay-lines.ts';
import type { Piece } from './piece.ts';
import { MOST_RADIUS_M } from './radius.ts';
import { shuffle } from './shuffle.ts';

/** What is to be asked of a server for the map along a drive. */
export interface LinePlan {
  /** in the order in which they are to be asked */
  readonly pieces: readonly Piece[];
  /** a place in each piece: whatever holds a whole piece without its edge coming near holds this too */
  readonly places: readonly Place[];
  /** driven metres as drawn */
  readonly lengthM: number;
  /** the longest leg, where it is so long that roads far beside it are not asked for; metres */
  readonly sparseM?: number;
}

/**
 * Cuts a drive into what is asked piece by piece.
 * @param seed orders the pieces, so that a server is not told the drive from its beginning to its end
 */
export function planPieces(route: DrawnRoute, seed: number): LinePlan {
  const drawn = layLines(route);
  const { lines, squares } = cutEnds(drawn);
  const pieces = shuffle([...squares, ...lines.flatMap(cutLine)], seed);
  const longestM = largest(drawn.flat().map(({ legM }) => legM));
  return {
    pieces,
    places: shuffle(pieces.map(placeIn), seed + 1),
    lengthM: drawn.at(-1)?.at(-1)?.alongM ?? 0,
    ...(longestM > 2 * MOST_RADIUS_M ? { sparseM: longestM } : {}),
  };
}

function placeIn({ along, box }: Piece): Place {
  const place = along?.places[Math.floor(along.places.length / 2)];
  return place ?? { lat: (box.south + box.north) / 2, lon: (box.west + box.east) / 2 };
}
