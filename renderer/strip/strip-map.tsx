import './strip.css';
import { useSignal, useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { printKm, printMiles } from '../../geo/units/print.ts';
import type { StripView } from '../../main/contract/strip.ts';
import { select } from '../state/actions.ts';
import { ask } from '../state/host.ts';
import { countryUsed } from '../state/recheck.ts';
import {
  cursorM,
  openedDrive,
  selected,
  selectedId,
  settings,
  shownFindings,
  vehicle,
} from '../state/state.ts';
import { CursorVehicle } from './cursor-vehicle.tsx';
import { Lettering } from './lettering.tsx';
import { Ribbon } from './ribbon.tsx';
import { PAD_PX, stripScale, WIDTH_PX } from './scale.ts';
import { StripFindings } from './strip-findings.tsx';

/** At first a drive stands on so many heights of its place: long enough to read, short enough to see. */
const HEIGHTS_AT_FIRST = 2.2;
const ZOOM_STEP = 1.5;
const PX_PER_M_MOST = 2;
/** Drawn beyond what is in view, so that scrolling shows no white. */
const MARGIN_PX = 300;

/** The drive unrolled into one ribbon, read from the bottom to the top. */
export function StripMap() {
  const strip = useSignal<StripView | undefined>(undefined);
  const problem = useSignal<string | undefined>(undefined);
  const box = useRef<HTMLDivElement>(null);
  const pxPerM = useSignal(0);
  const view = useSignal({ top: 0, height: 600 });

  useSignalEffect(() => {
    const driveId = openedDrive.value?.view.driveId;
    const country = countryUsed.value;
    if (driveId === undefined) return;
    const stop = new AbortController();
    void ask(
      'strip',
      { driveId, ...(country === undefined ? {} : { country }) },
      { signal: stop.signal },
    ).then((reply) => {
      if (stop.signal.aborted) return;
      problem.value = reply.ok ? undefined : reply.error.message;
      strip.value = reply.ok ? reply.value : undefined;
      pxPerM.value = 0;
    });
    return () => stop.abort();
  });

  const shown = strip.value;
  const lengthM = Math.max(1, shown?.lengthM ?? 1);
  const atFirst = Math.max(0.0005, (view.value.height * HEIGHTS_AT_FIRST - 2 * PAD_PX) / lengthM);
  const scale = stripScale(lengthM, pxPerM.value || Math.min(PX_PER_M_MOST, atFirst));

  // the place in the middle of the view stays there when the scale changes; until then the drive stands at its start,
  // whatever room its place is given
  const middleM = useRef(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element || !shown) return;
    if (pxPerM.value === 0) element.scrollTop = element.scrollHeight;
    else element.scrollTop = scale.y(middleM.current) - element.clientHeight / 2;
    view.value = { top: element.scrollTop, height: element.clientHeight };
  }, [shown, scale.heightPx]);

  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(() => {
      view.value = { top: element.scrollTop, height: element.clientHeight };
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);

  // whoever moves the cursor or chooses a finding, the strip follows
  const atM = selected.value?.fromM ?? cursorM.value;
  useLayoutEffect(() => {
    const element = box.current;
    if (!element || !shown) return;
    const y = scale.y(atM);
    const near = 60;
    if (y < element.scrollTop + near) element.scrollTop = y - element.clientHeight / 3;
    else if (y > element.scrollTop + element.clientHeight - near)
      element.scrollTop = y - (element.clientHeight * 2) / 3;
  }, [atM]);

  const zoom = (by: number) => {
    middleM.current = scale.atM(view.value.top + view.value.height / 2);
    pxPerM.value = Math.max(100 / lengthM, Math.min(PX_PER_M_MOST, scale.pxPerM * by));
  };
  const fromM = scale.atM(view.value.top + view.value.height + MARGIN_PX);
  const toM = scale.atM(view.value.top - MARGIN_PX);
  const inView = shownFindings.value.filter((finding) => finding.toM >= fromM && finding.fromM <= toM);

  return (
    <div class="strip-map">
      <div class="strip-scale">
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
        onScroll={(event) => {
          view.value = { top: event.currentTarget.scrollTop, height: event.currentTarget.clientHeight };
        }}
      >
        {shown ? (
          <svg
            class="strip-paper"
            width={WIDTH_PX}
            height={scale.heightPx}
            aria-hidden="true"
            onClick={(event) => {
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
            <StripFindings strip={shown} scale={scale} findings={inView} chosen={selectedId.value} />
            <Lettering strip={shown} scale={scale} fromM={fromM} toM={toM} units={settings.value.units} />
            <CursorVehicle strip={shown} scale={scale} atM={cursorM.value} card={vehicle.value?.card} />
          </svg>
        ) : (
          <p class="soft small strip-says">{problem.value ?? 'Drawing the strip…'}</p>
        )}
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

function placeText(strip: StripView | undefined, atM: number): string {
  const far = settings.value.units === 'imperial' ? printMiles(atM) : printKm(atM);
  const name = strip?.pieces.find((piece) => atM >= piece.fromM && atM <= piece.toM)?.name;
  return name === undefined ? far : `${far}, ${name.slice(0, 80)}`;
}
