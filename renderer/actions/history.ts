import { effect } from '@preact/signals';
import { findings } from '../state/check.ts';
import { dialog } from '../state/page.ts';
import { selectedId } from '../state/shown.ts';
import { shownView, showView, type ViewId, viewNamed } from '../state/views.ts';
import { select } from './choose.ts';

/** What Back and Forward go between: the view and the finding that is open. */
interface Place {
  readonly view: ViewId;
  readonly open: string | undefined;
}

/** The entry below the first place: whoever comes back to it is sent up again, so that Back stays in the window. */
const FLOOR = { floor: true };

/**
 * Makes a step of the browser's history of each view shown and each finding opened, and goes back through them. Back
 * never leaves the window, nor a dialog that may hold something half typed. @returns the way to end it
 */
export function keepHistory(page: Window): () => void {
  const { history } = page;
  let now = shownPlace();
  if (placeOf(history.state)) history.replaceState(now, '');
  else {
    history.replaceState(FLOOR, '');
    history.pushState(now, '');
  }
  const stop = effect(() => {
    const next = { view: shownView.value, open: selectedId.value };
    if (samePlace(next, now)) return;
    now = next;
    history.pushState(now, '');
  });
  const onBack = ({ state }: PopStateEvent) => {
    const to = placeOf(state);
    if (!to || dialog.peek() !== undefined) {
      history.pushState(now, '');
      return;
    }
    now = to;
    showView(to.view);
    const known = findings.peek().some(({ id }) => id === to.open);
    select(known ? to.open : undefined);
    now = shownPlace();
  };
  page.addEventListener('popstate', onBack);
  return () => {
    stop();
    page.removeEventListener('popstate', onBack);
  };
}

function shownPlace(): Place {
  return { view: shownView.peek(), open: selectedId.peek() };
}

function samePlace(a: Place, b: Place): boolean {
  return a.view === b.view && a.open === b.open;
}

/** @returns undefined for an entry that is none of ours, the floor among them */
function placeOf(state: unknown): Place | undefined {
  if (typeof state !== 'object' || state === null || !('view' in state)) return undefined;
  const view = viewNamed(state.view);
  const open = 'open' in state && typeof state.open === 'string' ? state.open : undefined;
  return view && { view, open };
}
