import { computed, effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { RequestOf } from '../../main/contract/calls.ts';
import { ask } from '../host/ask.ts';
import { checking, checkProblem, leaveAt, report } from '../state/check.ts';
import { dayForCheck } from '../state/day.ts';
import { work } from '../state/happening.ts';
import { settings, vehicle } from '../state/kept.ts';
import { aboardForCheck } from '../state/loads.ts';
import { notesChanged } from '../state/notes.ts';
import { countryUsed, openedDrive, openedMap } from '../state/opened.ts';
import { selected, selectedId } from '../state/shown.ts';
import { openWanted } from './open.ts';

/** Typing in a field, or a held key, should not ask at every stroke. */
const SETTLE_MS = 120;

/** What drives are held against; undefined without a vehicle. */
export const checkWith = computed<Omit<RequestOf<'check'>, 'driveId'> | undefined>(() => {
  const card = vehicle.value?.card;
  if (!card) return undefined;
  const country = countryUsed.value;
  const items = aboardForCheck.value;
  return {
    vehicle: card,
    ...given({
      load: items && { format: 'lanegauge.load' as const, version: 1 as const, items: [...items] },
    }),
    margins: settings.value.margins,
    units: settings.value.units,
    ...given({ leaveAt: leaveAt.value, country, day: dayForCheck.value }),
  };
});

/** All that a check is made of; undefined while there is nothing to check. */
export const checkAsked = computed<RequestOf<'check'> | undefined>(() => {
  const driveId = openedDrive.value?.followed.driveId;
  const held = checkWith.value;
  return driveId === undefined || !held ? undefined : { driveId, ...held };
});

let timer: ReturnType<typeof setTimeout> | undefined;
let running: AbortController | undefined;
/** the question whose answer is shown */
let answered = '';
let reopened = false;

/** Checks at once when a drive, a vehicle, the time or a margin changes. @returns the way to end it */
export function recheckOnChange(): () => void {
  return effect(() => {
    // also when an opening ends: what was chosen meanwhile has waited for it
    notesChanged.value;
    if (!checkAsked.value || work.value) return;
    clearTimeout(timer);
    timer = setTimeout(recheck, report.peek() ? SETTLE_MS : 0);
  });
}

/** Asks for the check of what is chosen now, unless its answer is already shown. The latest question wins. */
function recheck(): void {
  clearTimeout(timer);
  const question = checkAsked.peek();
  // a drive that is being opened asks by itself when it is there
  if (!question || work.peek()) return;
  const key = JSON.stringify([question, notesChanged.peek()]);
  if (key === answered && report.peek()) {
    running?.abort();
    checkProblem.value = undefined;
    return;
  }
  void check(question, key);
}

async function check(question: RequestOf<'check'>, key: string): Promise<void> {
  running?.abort();
  const stop = new AbortController();
  running = stop;
  checking.value = true;
  const reply = await ask('check', question, { signal: stop.signal });
  if (running !== stop) return;
  running = undefined;
  checking.value = false;
  if (stop.signal.aborted) return;
  if (reply.ok) {
    answered = key;
    reopened = false;
    checkProblem.value = undefined;
    report.value = reply.value;
    if (!selected.peek()) selectedId.value = undefined;
    return;
  }
  const lost = reply.error.code === 'no-drive' || reply.error.code === 'no-map';
  if (lost && !reopened) return reopen();
  checkProblem.value = reply.error.message;
}

/** The program has lost what the page shows: it is opened again, once. */
async function reopen(): Promise<void> {
  const map = openedMap.peek();
  const drive = openedDrive.peek();
  if (!map || !drive) return;
  reopened = true;
  await openWanted({ map, drive: { source: drive.source, track: drive.followed.taken } });
}
