import { KINDS, type PlaceKind } from '../../../geo/vehicle/form/place-rows.ts';
import type { ReadPlaces } from '../../../geo/vehicle/form/read-places.ts';

const LETTER: Readonly<Record<PlaceKind, string>> = { seats: 'S', tanks: 'T', lockers: 'L' };
/** How high each kind is ticked, a share of the vehicle's height. */
const AT: Readonly<Record<PlaceKind, number>> = { lockers: 0.82, seats: 0.6, tanks: 0.38 };
const LETTER_PX = 15;

/**
 * A tick for each place in the side view, with its kind's letter where there is room.
 * @param atX across the drawing from metres behind the front axle
 * @param atY down the drawing from a share of the vehicle's height
 */
export function PlaceTicks({
  rows,
  atX,
  atY,
}: {
  rows: ReadPlaces['rows'];
  atX(m: number): number;
  atY(share: number): number;
}) {
  return (
    <g class="card-ticks">
      {KINDS.map(({ kind }) => {
        const all = rows[kind].flatMap(({ xM }) => (xM === undefined ? [] : [atX(xM)]));
        const xs = [...new Set(all)].sort((a, b) => a - b);
        const y = atY(AT[kind]);
        return xs.map((x, i) => (
          <g key={`${kind} ${x}`}>
            <path d={`M${x} ${y}v8`} />
            {x - (xs[i - 1] ?? -LETTER_PX) >= LETTER_PX && (
              <text x={x} y={y - 3}>
                {LETTER[kind]}
              </text>
            )}
          </g>
        ));
      })}
    </g>
  );
}
