import { effect } from '@preact/signals';
import type { Source } from '../../main/contract/source.ts';
import { ask } from '../host/ask.ts';
import { isMadeHere } from '../state/changed.ts';
import { settings } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { unsavedPlaces } from '../state/plan.ts';
import { shownView } from '../state/views.ts';
import { keepQuietly } from './keep.ts';

/** Who goes through the tabs has not left yet. */
const SETTLE_MS = 400;

/**
 * Keeps the view and the library's drive that are shown, and the places of a plan, so that the next start opens there; a
 * drive that was made here is listed among those opened before. @returns the way to end it
 */
export function keepWhereLeft(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isFirst = true;
  return effect(() => {
    const opened = openedDrive.value;
    const view = shownView.value;
    const plan = [...unsavedPlaces.value];
    const made = isMadeHere.value;
    clearTimeout(timer);
    const first = isFirst;
    isFirst = false;
    // opened as it was left, and nobody has gone to another view while it was being opened
    if (first && view === (settings.peek().left?.view ?? 'drive') && !made) return;
    const source = opened?.source;
    const drive =
      opened && source?.kind === 'library' ? { id: source.id, track: opened.followed.taken } : null;
    timer = setTimeout(() => {
      void keepQuietly({ left: { view, drive, ...(plan.length > 0 && { plan }) } });
      if (opened) void listMade(opened.source, made);
    }, SETTLE_MS);
  });
}

/** The state of a drive made here that is listed; the next one takes its place, and so does the drive it was made of. */
let listed: Source | undefined;

/** Another drive is opened: what is listed of this one stays. */
export function leaveListed(): void {
  listed = undefined;
}

async function listMade(source: Source, made: boolean): Promise<void> {
  if (!made && listed === undefined) return;
  const insteadOf = listed === undefined || listed === source ? [] : [listed];
  listed = made ? source : undefined;
  await ask('rememberDrives', { sources: [source], insteadOf });
}
