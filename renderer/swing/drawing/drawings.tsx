import { useEffect, useRef } from 'preact/hooks';
import { sayContact } from '../../../geo/swing/lessons/tell/say-contact.ts';
import { settings } from '../../state/kept.ts';
import { lessMotion } from '../state/motion-wish.ts';
import { atTravelM, type Shown, shown, shownBeside } from '../state/shown.ts';
import { Who } from '../who.tsx';
import { closer, fitAll, followTail, onTail, sideBySide, whole, zoom } from './look-at.ts';
import { SceneDrawing } from './scene-drawing.tsx';

/** One drawing, or two at one scale, and how near they are seen. */
export function Drawings() {
  const place = useRef<HTMLDivElement>(null);
  const [main, beside] = [shown.value, shownBeside.value];
  const two = beside !== undefined;
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    const measure = () => {
      const { clientWidth, clientHeight } = element;
      whole.value = { widthPx: clientWidth, heightPx: clientHeight };
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return (
    <div class="swing-drawings">
      <div ref={place} class={sideBySide.value ? 'swing-canvas swing-canvas-across' : 'swing-canvas'}>
        {main && <Named of={main} named={two} />}
        {beside && <Named of={beside} named />}
      </div>
      {main && isStoppedByTouch(main) && (
        <p class="swing-stop">{sayContact(main.judged?.contact, settings.value.units)}</p>
      )}
      <Nearness />
    </div>
  );
}

/** So near to the touch it stands there. Metres of travel. */
const THERE_M = 0.02;

function isStoppedByTouch(of: Shown): boolean {
  const contact = of.judged?.contact;
  return contact !== undefined && Math.abs(atTravelM(of) - contact.travelM) < THERE_M;
}

function Named({ of, named }: { of: Shown; named: boolean }) {
  return (
    <div class="swing-drawing">
      {named && (
        <p class="swing-name small">
          <Who of={of} />
        </p>
      )}
      <SceneDrawing of={of} still={lessMotion.value} />
    </div>
  );
}

function Nearness() {
  return (
    <fieldset class="swing-near bare">
      <legend class="unseen">How near</legend>
      <button type="button" aria-pressed={closer.value === 1} onClick={fitAll}>
        Whole
      </button>
      <button type="button" aria-pressed={onTail.value} onClick={followTail}>
        Close-up
      </button>
      <button type="button" aria-label="Nearer" onClick={() => zoom(1.4)}>
        +
      </button>
      <button type="button" aria-label="Farther" disabled={closer.value === 1} onClick={() => zoom(1 / 1.4)}>
        −
      </button>
    </fieldset>
  );
}
