import { effect } from '@preact/signals';
import { settings } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { shownView } from '../state/views.ts';
import { keepQuietly } from './keep.ts';

/** Who goes through the tabs has not left yet. */
const SETTLE_MS = 400;

/** Keeps the view and the library's drive that are shown, so that the next start opens there. @returns the way to end it */
export function keepWhereLeft(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isFirst = true;
  return effect(() => {
    const opened = openedDrive.value;
    const view = shownView.value;
    clearTimeout(timer);
    const first = isFirst;
    isFirst = false;
    // opened as it was left, and nobody has gone to another view while it was being opened
    if (first && view === (settings.peek().left?.view ?? 'drive')) return;
    const source = opened?.source;
    const drive =
      opened && source?.kind === 'library' ? { id: source.id, track: opened.followed.taken } : null;
    timer = setTimeout(() => void keepQuietly({ left: { view, drive } }), SETTLE_MS);
  });
}
