import { useEffect, useRef, useState } from 'preact/hooks';
import { swingVehicleOf } from '../../../geo/swing/swing-vehicle.ts';
import { vehicle } from '../../state/kept.ts';
import type { Box } from '../drawing/projection.ts';
import { YardDrawing } from './yard-drawing.tsx';
import { yardRead } from './yard-state.ts';

/** The yard in place of a lesson's drawing, as large as there is room; drawn by what is measured as soon as it is typed. */
export function YardPlace() {
  const place = useRef<HTMLDivElement>(null);
  const [box, take] = useState<Box>({ widthPx: 300, heightPx: 300 });
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    const measure = () => take({ widthPx: element.clientWidth, heightPx: element.clientHeight });
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const card = yardRead.value?.card ?? vehicle.value?.card;
  return (
    <>
      <ul class="swing-legend small">
        <li>
          <b>A</b> beside the rear wheel at the start
        </li>
        <li>
          <b>B</b> the tail’s farthest mark
        </li>
        <li>
          <b>C</b> straight across the inner rear tyre’s circle
        </li>
      </ul>
      <div ref={place} class="swing-drawings">
        {card && <YardDrawing vehicle={swingVehicleOf(card)} mirrorsM={card.widthMirrorsM} box={box} />}
      </div>
    </>
  );
}
