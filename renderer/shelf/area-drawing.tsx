import type { ShelfMap } from '../../main/contract/shelf.ts';
import { boxOf } from './area.ts';

/** Where a map has roads: squares in our ink within the box they fill, north above. */
export function AreaDrawing({ area }: { area: ShelfMap['area'] }) {
  const box = boxOf(area);
  if (!box) return <div class="area-drawing" aria-hidden="true" />;
  // so much air about the squares that the frame is seen
  const air = Math.max(box.columns, box.rows) * 0.08;
  const view = [box.west - air, box.north - air, box.columns + 2 * air, box.rows + 2 * air];
  return (
    <svg class="area-drawing" viewBox={view.join(' ')} aria-hidden="true">
      <rect
        class="area-frame"
        x={view[0]}
        y={view[1]}
        width={view[2]}
        height={view[3]}
        vector-effect="non-scaling-stroke"
      />
      <path d={area.tiles.map(([x, y]) => `M${x + 0.04} ${y + 0.04}h.92v.92h-.92z`).join('')} />
    </svg>
  );
}
