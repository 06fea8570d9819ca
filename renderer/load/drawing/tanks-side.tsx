import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { litresIn } from '../../../geo/load/places/in-tank.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';

import { FLOOR_M, type Layout, UNDERSIDE_M } from './layout.ts';

/** Side of the tank's box, as if each were a quarter of a metre deep and most of a metre wide. */
const BOX_M2 = 0.2;
const LEAST_M = 0.24;

/** The tanks under the floor, each filled as far as it is. */
export function TanksSide({
  card,
  items,
  at,
}: {
  card: VehicleCard;
  items: readonly LoadItem[];
  at: Layout;
}) {
  const top = FLOOR_M - 0.03;
  const low = UNDERSIDE_M + 0.04;
  return (
    <g>
      {(card.tanks ?? []).map((tank) => {
        const long = Math.max(LEAST_M, tank.capacityL / 1000 / BOX_M2);
        const share = Math.min(1, litresIn(card, items, tank) / tank.capacityL);
        const level = low + share * (top - low);
        const [left, wide] = [at.x(tank.xM - long / 2), long * at.pxPerM];
        return (
          <g key={tank.name}>
            <title>{tank.name}</title>
            <rect
              class="load-liquid"
              x={left}
              y={at.y(level)}
              width={wide}
              height={at.y(low) - at.y(level)}
            />
            <rect class="load-tank" x={left} y={at.y(top)} width={wide} height={at.y(low) - at.y(top)} />
          </g>
        );
      })}
    </g>
  );
}
