import { type Box, scaleBarM } from './projection.ts';

const MOST_PX = 170;

/** A bar of a round length in the drawing's lower left corner. */
export function ScaleBar({ pxPerM, box }: { pxPerM: number; box: Box }) {
  const m = scaleBarM(pxPerM, MOST_PX);
  const long = m * pxPerM;
  const y = box.heightPx - 14;
  return (
    <g class="scale-bar">
      <path d={`M14 ${y}h${long}M14 ${y - 5}v10M${14 + long} ${y - 5}v10`} />
      <path class="scale-bar-half" d={`M14 ${y}h${long / 2}`} />
      <text x={22 + long} y={y + 4}>
        {m < 1 ? `${m * 100} cm` : `${m} m`}
      </text>
    </g>
  );
}
