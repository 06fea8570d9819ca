import { effect } from '@preact/signals';
import { playing, travelM } from './lesson.ts';
import { lessMotion } from './motion-wish.ts';
import { contactM, wayM } from './shown.ts';

/** Walking pace, as one turns in a yard. */
const SPEED_MS = 1.3;
/** After a pause of the browser the vehicle does not jump. */
const LONGEST_STEP_S = 0.1;

/** So many places of a way are stepped through where less motion is asked for, each shown this long. */
const STEPS = 8;
const STEP_MS = 1200;

/** The next place of the way to stand at: the end and where it touches are not stepped over. Metres. */
export function stepOnM(fromM: number, wholeM: number, touchM: number | undefined): number {
  const pieceM = wholeM / STEPS;
  const nextM = Math.min(wholeM, (Math.floor(fromM / pieceM + 1e-6) + 1) * pieceM);
  return touchM !== undefined && fromM < touchM - 1e-6 && nextM > touchM ? touchM : nextM;
}

/** Lets the vehicle roll while it plays; it stops where it touches, and at the end. @returns the way to end it */
export function rollWhilePlaying(page: Window): () => void {
  let timer = 0;
  /** nothing moves: it stands at one place, then at the next */
  const stand = () => {
    const [from, touch, whole] = [travelM.peek(), contactM.peek(), wayM.peek()];
    const to = stepOnM(from, whole, touch);
    travelM.value = to;
    if (to >= whole || to === touch) playing.value = false;
    else timer = page.setTimeout(stand, STEP_MS);
  };
  let asked = 0;
  let before: number | undefined;
  const step = (now: number) => {
    const seconds = before === undefined ? 0 : Math.min(LONGEST_STEP_S, (now - before) / 1000);
    before = now;
    const from = travelM.peek();
    const touch = contactM.peek();
    const end = touch !== undefined && from < touch - 1e-6 ? touch : wayM.peek();
    const to = Math.min(end, from + seconds * SPEED_MS);
    travelM.value = to;
    if (to >= end) playing.value = false;
    else asked = page.requestAnimationFrame(step);
  };
  const end = effect(() => {
    page.cancelAnimationFrame(asked);
    page.clearTimeout(timer);
    before = undefined;
    if (!playing.value) return;
    if (lessMotion.value) stand();
    else asked = page.requestAnimationFrame(step);
  });
  return () => {
    end();
    page.clearTimeout(timer);
    page.cancelAnimationFrame(asked);
  };
}

/** From the end it starts again. */
export function playOrPause(): void {
  if (!playing.peek() && travelM.peek() >= wayM.peek() - 1e-6) travelM.value = 0;
  playing.value = !playing.peek();
}

/** A little on or back, standing still. */
export function scrubBy(m: number): void {
  playing.value = false;
  travelM.value = Math.min(wayM.peek(), Math.max(0, travelM.peek() + m));
}
