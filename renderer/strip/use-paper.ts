import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { smoothed } from '../../geo/drive/strip/paper/lean-drawn.ts';
import { drawnSpan, PAD_PX, type StripScale, stripScale } from '../../geo/drive/strip/paper/scale.ts';
import type { Strip } from '../../geo/drive/strip/strip.ts';
import { cursorM, rowsLevel, selected, selectedId } from '../state/shown.ts';
import type { StripDrawing } from './drawing.ts';

/** At first a drive stands on so many heights of its place: long enough to read, short enough to see. */
const HEIGHTS_AT_FIRST = 2.2;
/** A long drive stands on more heights: closer than this nothing is told apart. */
const PX_PER_M_AT_FIRST = 0.015;
const PX_PER_M_MOST = 2;
/** The whole drive is never smaller than this. */
const PX_LEAST = 100;
/** Bends shorter than this on the paper are no more than a tremor. */
const BEND_PX = 14;
/** Scale per pixel of the wheel. */
const WHEEL_STEP = 1.002;
/** Rows that scroll so soon after a choice scroll because of it. */
const FOLLOWED_MS = 300;
/** The cursor is kept this far from the edge of the view. */
const NEAR_PX = 60;

/** The paper that a strip is drawn on, within the box that scrolls it. */
interface Paper {
  readonly box: RefObject<HTMLDivElement | null>;
  readonly scale: StripScale;
  /** undefined while there is no strip */
  readonly drawing: StripDrawing | undefined;
  /** The box has been scrolled. */
  look(): void;
  /** @param fromTopPx the place that stays where it is; without it the middle of the view */
  zoom(by: number, fromTopPx?: number): void;
}

/** Keeps scale and scrolling of the paper: what is chosen is in view, and what is in view stays there. */
export function usePaper(strip: Strip | undefined): Paper {
  const box = useRef<HTMLDivElement>(null);
  const heightPx = useSignal(600);
  // which step of the paper is in view, see drawnSpan
  const inView = useSignal(drawnSpan(0, 600));
  const zoomed = useSignal<{ readonly strip: Strip; readonly pxPerM: number } | undefined>(undefined);
  const zoomedTo = zoomed.value?.strip === strip ? zoomed.value?.pxPerM : undefined;
  const lengthM = Math.max(1, strip?.lengthM ?? 1);
  const scale = stripScale(lengthM, zoomedTo ?? firstPxPerM(heightPx.value, lengthM));
  const leaning = useMemo(() => strip && calmed(strip, scale.pxPerM), [strip, scale.pxPerM]);

  const look = () => {
    const element = box.current;
    if (!element) return;
    heightPx.value = element.clientHeight;
    const next = drawnSpan(element.scrollTop, element.clientHeight);
    if (next.fromPx !== inView.peek().fromPx || next.toPx !== inView.peek().toPx) inView.value = next;
  };
  const held = useRef<Held>({ atM: 0, fromTopPx: 0 });
  const zoom = (by: number, fromTopPx?: number) => {
    const element = box.current;
    if (!element || !strip) return;
    const fromTop = fromTopPx ?? element.clientHeight / 2;
    held.current = { atM: scale.atM(element.scrollTop + fromTop), fromTopPx: fromTop };
    const pxPerM = Math.max(PX_LEAST / lengthM, Math.min(PX_PER_M_MOST, scale.pxPerM * by));
    zoomed.value = { strip, pxPerM };
  };

  useLayoutEffect(() => {
    const element = box.current;
    if (!element || !strip) return;
    if (zoomedTo === undefined) standAtStart(element, scale);
    else element.scrollTop = scale.y(held.current.atM) - held.current.fromTopPx;
    look();
  }, [strip, scale.heightPx]);
  useBoxEvents(box, { zoom, look });
  // whoever moves the cursor or chooses a finding, the strip follows
  const followedAt = useRef(0);
  const follow = (atM: number) => {
    if (!box.current || !strip) return;
    followedAt.current = performance.now();
    bringIntoView(box.current, scale.y(atM));
  };
  useLayoutEffect(() => follow(cursorM.value), [cursorM.value]);
  useLayoutEffect(() => {
    if (selected.value) follow(selected.value.fromM);
  }, [selectedId.value]);

  // the rows are scrolled: the strip keeps level with them, unless they only bring what was chosen into sight
  useLayoutEffect(() => {
    const level = rowsLevel.value;
    if (!box.current || !strip || !level || performance.now() - followedAt.current < FOLLOWED_MS) return;
    // before the first row and past the last the strip, too, has come to its end
    if (level.atM === undefined) box.current.scrollTop = scale.heightPx;
    else box.current.scrollTop = level.atM === 0 ? 0 : scale.y(level.atM) - level.fromTopPx;
  }, [rowsLevel.value]);

  const drawing = leaning && {
    strip: leaning,
    scale,
    fromM: scale.atM(inView.value.fromPx),
    toM: scale.atM(inView.value.toPx),
  };
  return { box, scale, drawing, look, zoom };
}

/** The place that stays where it is when the scale changes. */
interface Held {
  readonly atM: number;
  readonly fromTopPx: number;
}

function firstPxPerM(heightPx: number, lengthM: number): number {
  const fitting = (heightPx * HEIGHTS_AT_FIRST - 2 * PAD_PX) / lengthM;
  return Math.min(PX_PER_M_MOST, Math.max(PX_PER_M_AT_FIRST, fitting));
}

function calmed(strip: Strip, pxPerM: number): Strip {
  return { ...strip, lean: smoothed(strip.lean, BEND_PX / (strip.leanStepM * pxPerM)) };
}

/** Until it is scaled a drive stands at its start, whatever room its place is given, or where the cursor is. */
function standAtStart(element: HTMLElement, scale: StripScale): void {
  element.scrollTop = 0;
  bringIntoView(element, scale.y(cursorM.peek()));
}

function bringIntoView(element: HTMLElement, y: number): void {
  const { scrollTop, clientHeight } = element;
  if (y < scrollTop + NEAR_PX) element.scrollTop = y - (clientHeight * 2) / 3;
  else if (y > scrollTop + clientHeight - NEAR_PX) element.scrollTop = y - clientHeight / 3;
}

type BoxEvents = Pick<Paper, 'look' | 'zoom'>;

/** The box given another size, and the wheel that scales the paper. */
function useBoxEvents(box: RefObject<HTMLDivElement | null>, events: BoxEvents): void {
  const latest = useRef(events);
  latest.current = events;
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const watch = new ResizeObserver(() => latest.current.look());
    watch.observe(element);
    // by hand, since it must be able to keep the page from scaling
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      latest.current.zoom(WHEEL_STEP ** -event.deltaY, event.clientY - element.getBoundingClientRect().top);
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      watch.disconnect();
      element.removeEventListener('wheel', onWheel);
    };
  }, []);
}
