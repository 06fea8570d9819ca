import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { Work } from '../../main/contract/work.ts';
import { ask } from '../host/ask.ts';
import { report } from '../state/check.ts';
import { fetching } from '../state/fetching.ts';
import { notice } from '../state/happening.ts';
import { settings } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { lookedAt, type WaysFound, ways } from '../state/ways.ts';
import { beginFetch } from './fetch-map.ts';
import { openWanted } from './open.ts';
import { checkAsked } from './recheck.ts';

let running: AbortController | undefined;

/** Looks for ways past a finding, or past all that bars the drive. The latest question wins. */
export async function findWays(past?: string): Promise<void> {
  const question = checkAsked.peek();
  if (!question) return;
  hideWays();
  const stop = new AbortController();
  running = stop;
  const tell = ({ what, share, secondsLeft }: Work) => {
    if (running !== stop) return;
    const doing = { what, ...given({ share, secondsLeft }), stop: () => stop.abort() };
    ways.value = { past, doing };
  };
  tell({ what: past === undefined ? 'Looking for ways past all that bars it' : 'Looking for ways round' });
  const reply = await ask(
    'wayRound',
    {
      ...question,
      prefer: settings.peek().prefer,
      ...given({ past: past === undefined ? undefined : [past] }),
    },
    { signal: stop.signal, onProgress: tell },
  );
  if (running !== stop) return;
  running = undefined;
  if (reply.ok) ways.value = { past, found: onlyPast(past, reply.value) };
  else ways.value = reply.error.code === 'cancelled' ? undefined : { past, problem: reply.error.message };
}

/** What was asked about alone: the answer tells of everything that bars the drive besides. */
function onlyPast(past: string | undefined, found: WaysFound): WaysFound {
  if (past === undefined) return found;
  const isPast = ({ findingIds }: { findingIds: readonly string[] }) => findingIds.includes(past);
  const { waysRound, noWayRound, wider } = found;
  return { waysRound: waysRound.filter(isPast), noWayRound: noWayRound.filter(isPast), wider };
}

/** Takes the ways found off the screen, and ends looking for more. */
export function hideWays(): void {
  running?.abort();
  running = undefined;
  ways.value = undefined;
  lookedAt.value = undefined;
}

/** Ways are of the check that is shown: another vehicle, time or drive has others. @returns the way to end it */
export function hideWaysOnChange(): () => void {
  let of = report.peek();
  return effect(() => {
    if (report.value === of) return;
    of = report.value;
    hideWays();
  });
}

/** Opens all of the map that was opened about the drive alone, and asks again. */
export async function readMore(past: string | undefined): Promise<void> {
  const map = openedMap.peek();
  const drive = openedDrive.peek();
  if (!map || !drive) return;
  await openWanted({
    map: { source: map.source },
    drive: { source: drive.source, track: drive.followed.taken },
  });
  await checkDone();
  await findWays(past);
}

function checkDone(): Promise<void> {
  return new Promise((resolve) => {
    const stop = report.subscribe((shown) => {
      if (!shown) return;
      queueMicrotask(() => {
        stop();
        resolve();
      });
    });
  });
}

/** Shows what fetching the region about the drive would take; nothing is sent before a yes. */
export async function fetchRoundAbout(): Promise<void> {
  const drive = openedDrive.peek();
  if (!drive || fetching.peek()?.busy) return;
  const wanted = { source: drive.source, track: drive.followed.taken };
  const reply = await ask('planFetch', { ...wanted, by: 'region' });
  if (reply.ok) beginFetch(wanted, reply.value);
  else notice.value = { kind: 'error', say: reply.error.message };
}
