import './strip.css';
import { pieceAt } from '../../geo/drive/strip/paper/road-drawn.ts';
import { WIDTH_PX } from '../../geo/drive/strip/paper/scale.ts';
import type { Strip } from '../../geo/drive/strip/strip.ts';
import { printKm, printMiles } from '../../geo/units/print.ts';
import { select } from '../actions/choose.ts';
import { report } from '../state/check.ts';
import { stopsMet } from '../state/day.ts';
import { settings, vehicle } from '../state/kept.ts';
import { cursorM, hoveredId, selectedId, shownFindings } from '../state/shown.ts';
import { raisedWays, waysFound } from '../state/ways.ts';
import { CursorVehicle } from './cursor-vehicle.tsx';
import type { StripDrawing } from './drawing.ts';
import { Lettering, TownGrounds } from './lettering.tsx';
import { Bypassed, LoopLabels, LoopLines } from './loops.tsx';
import { Ribbon } from './ribbon.tsx';
import { StopKnots } from './stop-knots.tsx';
import { StripFindings } from './strip-findings.tsx';
import { useDrag } from './use-drag.ts';
import { usePaper } from './use-paper.ts';
import { useStrip } from './use-strip.ts';

const ZOOM_STEP = 1.5;

/** The drive unrolled into one ribbon, read from the top down, beside the rows. */
export function StripMap() {
  const { strip, problem } = useStrip();
  const { box, scale, drawing, look, zoom } = usePaper(strip);
  const drag = useDrag(box);
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
        aria-valuemax={Math.round(scale.lengthM)}
        aria-valuenow={Math.round(cursorM.value)}
        aria-valuetext={placeText(strip, cursorM.value)}
        onKeyDown={(event) => moveByKey(event, scale.lengthM)}
        onScroll={look}
        onPointerDown={drag.down}
        onPointerMove={drag.move}
        onPointerUp={drag.end}
        onPointerCancel={drag.end}
      >
        {drawing ? (
          <PaperDrawn drawing={drawing} wasDragged={drag.dragged} />
        ) : (
          <p class="soft small strip-says">{problem ?? 'Drawing the strip…'}</p>
        )}
      </div>
      <Scaling zoom={zoom} />
    </div>
  );
}

function PaperDrawn({ drawing, wasDragged }: { drawing: StripDrawing; wasDragged(): boolean }) {
  const found = waysFound.value;
  const raised = raisedWays.value.map((index) => ({ way: found[index]!, number: index + 1 }));
  return (
    <svg
      class="strip-paper"
      width={WIDTH_PX}
      height={drawing.scale.heightPx}
      aria-hidden="true"
      onPointerOver={(event) => {
        hoveredId.value = findingUnder(event);
      }}
      onPointerLeave={() => {
        hoveredId.value = undefined;
      }}
      onClick={(event) => {
        if (wasDragged()) return;
        const id = findingUnder(event);
        if (id !== undefined) select(id);
        else
          cursorM.value = drawing.scale.atM(event.clientY - event.currentTarget.getBoundingClientRect().top);
      }}
    >
      <Hatches />
      <Ribbon drawing={drawing} />
      <Bypassed drawing={drawing} ways={raised} />
      <TownGrounds drawing={drawing} />
      <StripFindings
        drawing={drawing}
        findings={shownFindings.value}
        chosen={selectedId.value}
        near={hoveredId.value}
        times={report.value?.timetable}
      />
      <StopKnots drawing={drawing} stops={stopsMet.value} />
      <LoopLines drawing={drawing} ways={raised} />
      <Lettering drawing={drawing} units={settings.value.units} />
      <LoopLabels drawing={drawing} ways={raised} units={settings.value.units} />
      <CursorVehicle drawing={drawing} atM={cursorM.value} card={vehicle.value?.card} />
    </svg>
  );
}

function findingUnder({ target }: Event): string | undefined {
  const mark = target instanceof Element ? target.closest('[data-finding]') : null;
  return mark?.getAttribute('data-finding') ?? undefined;
}

/** Where the cursor is, and the buttons that scale the paper. */
function Scaling({ zoom }: { zoom(by: number): void }) {
  return (
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
/** Down the strip is on along the drive. */
const KEYS: Readonly<Record<string, (atM: number, lengthM: number) => number>> = {
  ArrowDown: (atM) => atM + STEP_M,
  ArrowRight: (atM) => atM + STEP_M,
  ArrowUp: (atM) => atM - STEP_M,
  ArrowLeft: (atM) => atM - STEP_M,
  PageDown: (atM) => atM + 10 * STEP_M,
  PageUp: (atM) => atM - 10 * STEP_M,
  Home: () => 0,
  End: (_, lengthM) => lengthM,
};

function moveByKey(event: KeyboardEvent, lengthM: number): void {
  const to = KEYS[event.key]?.(cursorM.value, lengthM);
  if (to === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  cursorM.value = Math.max(0, Math.min(lengthM, to));
}

function distanceText(atM: number): string {
  return settings.value.units === 'imperial' ? printMiles(atM) : printKm(atM);
}

function placeText(strip: Strip | undefined, atM: number): string {
  const far = distanceText(atM);
  const piece = pieceAt(strip?.pieces ?? [], atM);
  const road = piece?.kind === 'offMap' ? 'off the map' : (piece?.name ?? piece?.ref);
  return road === undefined ? far : `${far}, ${road}`;
}
