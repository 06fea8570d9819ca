import type { LoadFigures } from '../../../geo/load/weigh/figures.ts';
import { FRONT_SHARE_LEAST, FRONT_SHARE_MOST } from '../../../geo/load/weigh/front-share.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { type Layout, WHEEL_M } from './layout.ts';

const R_PX = 8;
const WORD_PX = 88;

/** Where the centre of mass lies between the axles, on the span within which 40 to 70 % stand on the front. */
export function CentreOfMass({ card, result, at }: { card: VehicleCard; result: LoadFigures; at: Layout }) {
  const y = at.y(0) - R_PX - 5;
  const span = (share: number) => at.x(card.wheelbaseM * (1 - share));
  const room = at.x(card.wheelbaseM - WHEEL_M) - span(FRONT_SHARE_LEAST) > WORD_PX;
  const wordX = span(FRONT_SHARE_LEAST) + 6;
  // off the vehicle it would be drawn off the paper
  const x = Math.min(at.widthPx - R_PX, Math.max(R_PX, at.x(result.centreM)));
  const hides = x > wordX - R_PX && x < wordX + WORD_PX + R_PX;
  return (
    <g class="load-centre">
      <path
        class="load-span"
        d={`M${span(FRONT_SHARE_MOST)} ${y - 5}v10m0 -5H${span(FRONT_SHARE_LEAST)}m0 -5v10`}
      />
      {room && !hides && (
        <text class="load-span-word" x={wordX} y={y + 4}>
          front 70–40 %
        </text>
      )}
      <circle class="load-centre-ring" cx={x} cy={y} r={R_PX} />
      <path
        class="load-centre-quarters"
        d={`M${x} ${y}V${y - R_PX}A${R_PX} ${R_PX} 0 0 1 ${x + R_PX} ${y}ZM${x} ${y}V${y + R_PX}A${R_PX} ${R_PX} 0 0 1 ${x - R_PX} ${y}Z`}
      />
    </g>
  );
}
