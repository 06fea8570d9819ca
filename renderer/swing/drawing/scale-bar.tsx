import { METRES_PER_FOOT } from '../../../geo/units/exact.ts';
import { drawnUnits } from '../state/drawn-units.ts';
import type { Area } from './place-marks.ts';
import { type Box, scaleBarM } from './projection.ts';

const MOST_PX = 170;
const FOOT_PX = 14;
/** The scale and the buttons do not fit side by side. Pixels. */
const NARROW_PX = 480;

/** Where it stands. */
export function scaleBarArea({ heightPx }: Box, footPx = FOOT_PX): Area {
  return { x: 0, y: heightPx - footPx - 16, widthPx: MOST_PX + 80, heightPx: 32 };
}

/** A bar of a round length in the drawing's lower left corner. */
export function ScaleBar({ pxPerM, box, footPx = FOOT_PX }: { pxPerM: number; box: Box; footPx?: number }) {
  const feet = drawnUnits.value === 'imperial';
  const pxPerUnit = feet ? pxPerM * METRES_PER_FOOT : pxPerM;
  const units = scaleBarM(pxPerUnit, MOST_PX);
  const long = units * pxPerUnit;
  const y = box.heightPx - footPx;
  return (
    <g class="scale-bar">
      <path d={`M14 ${y}h${long}M14 ${y - 5}v10M${14 + long} ${y - 5}v10`} />
      <path class="scale-bar-half" d={`M14 ${y}h${long / 2}`} />
      <text x={22 + long} y={y + 4}>
        {feet ? `${units} ft` : units < 1 ? `${units * 100} cm` : `${units} m`}
      </text>
    </g>
  );
}

/** On the stage a narrow drawing has its buttons below the bar. Pixels above the drawing's foot. */
export function footOnStage({ widthPx }: Box): number {
  return widthPx < NARROW_PX ? 62 : FOOT_PX;
}
