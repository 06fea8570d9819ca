import { ACROSS_PX_PER_M, MARK_X } from '../../geo/drive/strip/paper/scale.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { middleOf, type StripDrawing } from './drawing.ts';

/** Left of this stand the distances. */
const TICKS_PX = 40;

interface Props {
  readonly drawing: StripDrawing;
  readonly atM: number;
  readonly card: VehicleCard | undefined;
}

/** The vehicle in plan at the cursor, its front down the paper, at the scale of the road's width: body, and mirrors sticking out. */
export function CursorVehicle({ drawing, atM, card }: Props) {
  const x = middleOf(drawing, atM);
  const y = drawing.scale.y(atM);
  const width = (card?.widthM ?? 2.3) * ACROSS_PX_PER_M;
  const mirrors = (card?.widthMirrorsM ?? 2.8) * ACROSS_PX_PER_M;
  const length = ((card?.lengthM ?? 7) + (card?.rack?.fitted ? card.rack.lengthM : 0)) * ACROSS_PX_PER_M;
  return (
    <g class="strip-cursor" transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      <path class="strip-cursor-line" d={`M${TICKS_PX - x} 0H${-mirrors}M${mirrors} 0H${MARK_X - 14 - x}`} />
      <path d={`M${-mirrors / 2} -3H${mirrors / 2}`} />
      <rect x={-width / 2} y={-length} width={width} height={length} rx={1.5} />
    </g>
  );
}
