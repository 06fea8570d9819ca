import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { drawnSizeIn } from '../../../geo/units/in-units.ts';
import { clip } from '../../../geo/units/text.ts';
import { settings } from '../../state/kept.ts';
import type { Layout } from './layout.ts';

/** The arm of the item pointed at: from the front axle to where it stands, under the ground line. */
export function Arm({ item, at }: { item: LoadItem; at: Layout }) {
  const y = at.groundPx + 20;
  const [from, to] = [at.x(0), at.x(item.xM)];
  return (
    <g class="load-arm">
      <path d={`M${from} ${y - 5}v10m0 -5H${to}m0 -5v10`} />
      <path class="load-arm-up" d={`M${to} ${y - 5}V${at.y(0.78)}`} />
      <text x={(from + to) / 2} y={y + 15}>
        {`${clip(item.name, 40)}: ${drawnSizeIn(settings.value.units, item.xM, 'nearest')}`}
      </text>
    </g>
  );
}
