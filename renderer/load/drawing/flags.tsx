import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { FLAG_ROW_PX, FLOOR_M, type Flag, type Layout } from './layout.ts';

/** The names of the places for things, each on a pole that stands where the place is. */
export function Flags({
  flags,
  card,
  at,
  taken,
}: {
  flags: readonly Flag[];
  card: VehicleCard;
  at: Layout;
  /** name of the place that takes in what is held */
  taken: string | undefined;
}) {
  const roof = at.y(card.heightM);
  return (
    <g class="load-flags">
      {flags.map(({ place, name, xM, row }) => {
        const [x, y] = [at.x(xM), roof - 9 - row * FLAG_ROW_PX];
        return (
          <g key={place} class={place === taken ? 'load-flag load-flag-taken' : 'load-flag'}>
            <path d={`M${x} ${y - 10}V${at.y(FLOOR_M)}`} />
            <text x={x + 4} y={y}>
              {name}
            </text>
          </g>
        );
      })}
    </g>
  );
}
