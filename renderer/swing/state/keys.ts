import { held } from './hand.ts';
import { inYard } from './lesson.ts';
import { playOrPause, scrubBy } from './play.ts';
import { byHand } from './shown.ts';

const SCRUB_M = 0.1;
const WHEEL: Readonly<Record<string, -1 | 1>> = { ArrowLeft: 1, ArrowRight: -1 };
const MOVE: Readonly<Record<string, -1 | 1>> = { ArrowUp: 1, ArrowDown: -1 };
/** Where the arrows and the space bar mean something of their own. */
const TAKEN = 'input, select, textarea, [role="tab"], dialog';

/** Arrows and space anywhere in the view but in a field: they scrub and play, or steer and roll. @returns the way to end it */
export function listenToKeys(page: Window): () => void {
  const stop = new AbortController();
  const on = (type: 'keydown' | 'keyup', act: (event: KeyboardEvent) => void) =>
    page.addEventListener(type, act, { signal: stop.signal });
  on('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented) return;
    const { target, key } = event;
    if (inYard.peek() || (target instanceof Element && target.closest(TAKEN))) return;
    // space on a button presses it
    if (key === ' ' && target instanceof Element && target.closest('button')) return;
    if (byHand.peek() ? hold(key) : scrub(key)) event.preventDefault();
  });
  on('keyup', ({ key }) => {
    if (held.wheel === WHEEL[key]) held.wheel = 0;
    if (held.move === MOVE[key]) held.move = 0;
  });
  page.addEventListener('blur', letGo, { signal: stop.signal });
  return () => stop.abort();
}

function letGo(): void {
  held.wheel = 0;
  held.move = 0;
}

function hold(key: string): boolean {
  const [wheel, move] = [WHEEL[key], MOVE[key]];
  if (wheel !== undefined) held.wheel = wheel;
  if (move !== undefined) held.move = move;
  return wheel !== undefined || move !== undefined;
}

function scrub(key: string): boolean {
  if (key === ' ') {
    playOrPause();
    return true;
  }
  const way = key === 'ArrowRight' ? 1 : key === 'ArrowLeft' ? -1 : 0;
  if (way !== 0) scrubBy(way * SCRUB_M);
  return way !== 0;
}
