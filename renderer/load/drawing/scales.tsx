import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { largest } from '../../../geo/lists.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { aboard } from '../../state/loads.ts';
import { asked, pointedAt, shown, weighed } from '../state/state.ts';
import { PlateBars } from './bars.tsx';
import { Elevation } from './elevation.tsx';
import { FLOOR_M, flagsOf, layOut } from './layout.ts';
import { shrinkToFit } from './stack.ts';

/** Of the window's height, what the vehicle may take. */
const BODY_SHARE = 0.3;

/** The vehicle on the scales: drawn as wide as there is room, with the bars under its axles. */
export function Scales({ card }: { card: VehicleCard }) {
  const place = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ widthPx: 0, bodyPx: 0 });
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    const measure = () =>
      setSize({
        widthPx: element.clientWidth,
        bodyPx: Math.min(400, Math.max(190, window.innerHeight * BODY_SHARE)),
      });
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return (
    <div ref={place} class="load-scales">
      {size.widthPx > 0 && <Drawn card={card} {...size} />}
    </div>
  );
}

function Drawn({ card, widthPx, bodyPx }: { card: VehicleCard; widthPx: number; bodyPx: number }) {
  const { flags, at } = useMemo(() => {
    const named = flagsOf(card, layOut(card, widthPx, bodyPx, 0).pxPerM);
    const rows = Math.max(0, largest(named.map(({ row }) => row + 1)));
    return { flags: named, at: layOut(card, widthPx, bodyPx, rows) };
  }, [card, widthPx, bodyPx]);
  const items = shown.value;
  const result = weighed.value?.ok ? weighed.value.value : undefined;
  return (
    <fieldset class="bare">
      <legend class="unseen">
        {items.length} items aboard, from the front to the rear. Arrows move an item by 5 cm, with Shift by
        50; Delete takes it off; Enter goes to its line in the table.
      </legend>
      <Elevation
        card={card}
        items={items}
        result={result}
        at={at}
        flags={flags}
        asked={asked.value}
        pointed={pointedAt.value === undefined ? undefined : items[pointedAt.value]}
        shrunk={shrinkToFit(aboard.value, card, card.heightM - FLOOR_M)}
      />
      {result && <PlateBars result={result} at={{ widthPx, x: at.x, wheelbaseM: card.wheelbaseM }} />}
    </fieldset>
  );
}
