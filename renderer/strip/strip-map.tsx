import { given } from '../../geo/given.ts';
import './strip.css';
import { useSignal, useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Strip } from '../../geo/drive/strip/strip.ts';
import { printKm, printMiles } from '../../geo/units/print.ts';
import { select } from '../actions/choose.ts';
import { ask } from '../host/ask.ts';
import { report } from '../state/check.ts';
import { settings, vehicle } from '../state/kept.ts';
import { countryUsed, openedDrive } from '../state/opened.ts';
import { cursorM, selected, selectedId, shownFindings } from '../state/shown.ts';
import { CursorVehicle } from './cursor-vehicle.tsx';
import { Lettering } from './lettering.tsx';
import { Ribbon } from './ribbon.tsx';
import { drawnSpan, PAD_PX, pieceAt, smoothed, stripScale, WIDTH_PX } from './scale.ts';
import { StripFindings } from './strip-findings.tsx';
import { useDrag } from './use-drag.ts';

/** At first a drive stands on so many heights of its place: long enough to read, short enough to see. */
const HEIGHTS_AT_FIRST = 2.2;
/** A long drive stands on more heights: closer than this nothing is told apart. */
const PX_PER_M_AT_FIRST = 0.015;
const ZOOM_STEP = 1.5;
const PX_PER_M_MOST = 2;
/** Bends shorter than this on the paper are no more than a tremor. */
const BEND_PX = 14;
/** Scale per pixel of the wheel. */
const WHEEL_STEP = 1.002;
/** The cursor is kept this far from the edge of the view. */
const NEAR_PX = 60;

/** The drive unrolled into one ribbon, read from the bottom to the top. */
export function StripMap() {
  const strip = useSignal<Strip | undefined>(undefined);
  const problem = useSignal<string | undefined>(undefined);
  const box = useRef<HTMLDivElement>(null);
  const pxPerM = useSignal(0);
  const height = useSignal(600);
  // which step of the paper is in view, see drawnSpan
  const drawn = useSignal(drawnSpan(0, 600));
  const look = (element: HTMLElement) => {
    height.value = element.clientHeight;
    const next = drawnSpan(element.scrollTop, element.clientHeight);
    if (next.fromPx !== drawn.peek().fromPx || next.toPx !== drawn.peek().toPx) drawn.value = next;
  };

  const drawnId = useRef<string | undefined>(undefined);
  useSignalEffect(() => {
    const driveId = openedDrive.value?.followed.driveId;
    const country = countryUsed.value;
    if (driveId === undefined) return;
    // one drive's findings must not stand on another's road
    if (drawnId.current !== driveId) strip.value = undefined;
    const stop = new AbortController();
    void ask('strip', { driveId, ...given({ country }) }, { signal: stop.signal }).then((reply) => {
      if (stop.signal.aborted) return;
      problem.value = reply.ok ? undefined : reply.error.message;
      strip.value = reply.ok ? reply.value : undefined;
      drawnId.current = driveId;
      pxPerM.value = 0;
    });
    return () => stop.abort();
  });

  const lengthM = Math.max(1, strip.value?.lengthM ?? 1);
  const atFirst = Math.max(PX_PER_M_AT_FIRST, (height.value * HEIGHTS_AT_FIRST - 2 * PAD_PX) / lengthM);
  const scale = stripScale(lengthM, pxPerM.value || Math.min(PX_PER_M_MOST, atFirst));
  const shown = useMemo(
    () =>
      strip.value && {
        ...strip.value,
        lean: smoothed(strip.value.lean, BEND_PX / (strip.value.leanStepM * scale.pxPerM)),
      },
    [strip.value, scale.pxPerM],
  );

  // whoever moves the cursor or chooses a finding, the strip follows
  const show = (atM: number) => {
    const element = box.current;
    if (!element || !shown) return;
    const y = scale.y(atM);
    if (y < element.scrollTop + NEAR_PX) element.scrollTop = y - element.clientHeight / 3;
    else if (y > element.scrollTop + element.clientHeight - NEAR_PX)
      element.scrollTop = y - (element.clientHeight * 2) / 3;
  };

  // the place in the middle of the view stays there when the scale changes; until then the drive stands at its start,
  // whatever room its place is given
  const held = useRef({ atM: 0, fromTopPx: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (!element || !shown) return;
    if (pxPerM.value === 0) {
      element.scrollTop = element.scrollHeight;
      show(cursorM.peek());
    } else element.scrollTop = scale.y(held.current.atM) - held.current.fromTopPx;
    look(element);
  }, [strip.value, scale.heightPx]);

  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(() => {
      // what stands at the lower edge stays there
      element.scrollTop += height.peek() - element.clientHeight;
      look(element);
    });
    watch.observe(element);
    // by hand, since it must be able to keep the page from scaling
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      zoomBy.current(WHEEL_STEP ** -event.deltaY, event.clientY - element.getBoundingClientRect().top);
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      watch.disconnect();
      element.removeEventListener('wheel', onWheel);
    };
  }, []);

  useLayoutEffect(() => show(cursorM.value), [cursorM.value]);
  useLayoutEffect(() => {
    if (selected.value) show(selected.value.fromM);
  }, [selectedId.value]);

  /** @param fromTopPx the place that stays where it is; without it the middle of the view */
  const zoom = (by: number, fromTopPx?: number) => {
    const element = box.current;
    if (!element || !shown) return;
    const fromTop = fromTopPx ?? element.clientHeight / 2;
    held.current = { atM: scale.atM(element.scrollTop + fromTop), fromTopPx: fromTop };
    pxPerM.value = Math.max(100 / lengthM, Math.min(PX_PER_M_MOST, scale.pxPerM * by));
  };
  const zoomBy = useRef(zoom);
  zoomBy.current = zoom;
  const drag = useDrag(box);
  const fromM = scale.atM(drawn.value.toPx);
  const toM = scale.atM(drawn.value.fromPx);

  return (
    <div class="strip-map">
      <div
        ref={box}
        class="strip-scroll"
        role="slider"
        tabIndex={0}
        aria-label="Place along the drive"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.round(lengthM)}
        aria-valuenow={Math.round(cursorM.value)}
        aria-valuetext={placeText(shown, cursorM.value)}
        onKeyDown={(event) => {
          const to = KEYS[event.key]?.(cursorM.value, lengthM);
          if (to === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
          event.preventDefault();
          cursorM.value = Math.max(0, Math.min(lengthM, to));
        }}
        onScroll={(event) => look(event.currentTarget)}
        onPointerDown={drag.down}
        onPointerMove={drag.move}
        onPointerUp={drag.end}
        onPointerCancel={drag.end}
      >
        {shown ? (
          <svg
            class="strip-paper"
            width={WIDTH_PX}
            height={scale.heightPx}
            aria-hidden="true"
            onClick={(event) => {
              if (drag.dragged()) return;
              const mark = event.target instanceof Element ? event.target.closest('[data-finding]') : null;
              if (mark) {
                select(mark.getAttribute('data-finding') ?? undefined);
                return;
              }
              const top = event.currentTarget.getBoundingClientRect().top;
              cursorM.value = scale.atM(event.clientY - top);
            }}
          >
            <Hatches />
            <Ribbon strip={shown} scale={scale} fromM={fromM} toM={toM} />
            <StripFindings
              strip={shown}
              scale={scale}
              findings={shownFindings.value}
              chosen={selectedId.value}
              times={report.value?.timetable}
              fromM={fromM}
              toM={toM}
            />
            <Lettering strip={shown} scale={scale} fromM={fromM} toM={toM} units={settings.value.units} />
            <CursorVehicle strip={shown} scale={scale} atM={cursorM.value} card={vehicle.value?.card} />
          </svg>
        ) : (
          <p class="soft small strip-says">{problem.value ?? 'Drawing the strip…'}</p>
        )}
      </div>
      <div class="strip-scale">
        <span class="strip-here" aria-hidden="true">
          {distanceText(cursorM.value)}
        </span>
        <button
          type="button"
          aria-label="Strip map: show more of the drive"
          onClick={() => zoom(1 / ZOOM_STEP)}
        >
          −
        </button>
        <button type="button" aria-label="Strip map: show it larger" onClick={() => zoom(ZOOM_STEP)}>
          +
        </button>
      </div>
    </div>
  );
}

/** Water and woods as a pen would draw them. */
function Hatches() {
  return (
    <defs>
      <pattern id="strip-water-hatch" width="12" height="8" patternUnits="userSpaceOnUse">
        <path class="strip-water-line" d="M0 4q3 -3 6 0t6 0" />
      </pattern>
      <pattern id="strip-wood-hatch" width="14" height="14" patternUnits="userSpaceOnUse">
        <path class="strip-wood-line" d="M4 7v-2m-3 0a3 3 0 1 1 6 0zM11 14v-2m-3 0a3 3 0 1 1 6 0z" />
      </pattern>
      <pattern id="strip-building-hatch" width="11" height="12" patternUnits="userSpaceOnUse">
        <path class="strip-building-line" d="M1.5 5.5v-3h5v3zM7 10.5h3v-3h-3z" />
      </pattern>
    </defs>
  );
}

const STEP_M = 100;
const KEYS: Readonly<Record<string, (atM: number, lengthM: number) => number>> = {
  ArrowUp: (atM) => atM + STEP_M,
  ArrowRight: (atM) => atM + STEP_M,
  ArrowDown: (atM) => atM - STEP_M,
  ArrowLeft: (atM) => atM - STEP_M,
  PageUp: (atM) => atM + 10 * STEP_M,
  PageDown: (atM) => atM - 10 * STEP_M,
  Home: () => 0,
  End: (_, lengthM) => lengthM,
};

function distanceText(atM: number): string {
  return settings.value.units === 'imperial' ? printMiles(atM) : printKm(atM);
}

function placeText(strip: Strip | undefined, atM: number): string {
  const far = distanceText(atM);
  const piece = pieceAt(strip?.pieces ?? [], atM);
  const road = piece?.kind === 'offMap' ? 'off the map' : (piece?.name ?? piece?.ref);
  return road === undefined ? far : `${far}, ${road}`;
}
