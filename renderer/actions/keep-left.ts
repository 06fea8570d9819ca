import { effect } from '@preact/signals';
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
    // as it was opened is as it was left before
    if (isFirst) {
      isFirst = false;
      return;
    }
    const source = opened?.source;
    const drive =
      opened && source?.kind === 'library' ? { id: source.id, track: opened.followed.taken } : null;
    timer = setTimeout(() => void keepQuietly({ left: { view, drive } }), SETTLE_MS);
  });
}
