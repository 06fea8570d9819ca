import { given } from '../../geo/given.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip, listed } from '../../geo/units/text.ts';
import type { Fetched, FetchPlan } from '../../main/contract/fetch.ts';
import { ask } from '../host/ask.ts';
import { asked, type FetchFor, type Fetching, fetching, planned, underWay } from '../state/fetching.ts';
import { type Offer, tellAlso } from '../state/happening.ts';
import { settings } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { mapChanges } from '../state/shelf.ts';
import { compareDrives, OFFER_CHANGES } from './keep-map.ts';
import type { Job } from './long-work.ts';
import { openWanted } from './open.ts';
import { lookAtShelf } from './shelf-changed.ts';
import { openingDone, runOnShelf } from './shelf-work.ts';
import { sameSource } from './wanted.ts';
import { shelfAbout } from './which-map.ts';

/** Has both ways of fetching a drive's map worked out; nothing is sent for it. */
export async function planBoth(drive: FetchFor, signal: AbortSignal): Promise<void> {
  planned.value = { line: undefined, region: undefined };
  for (const by of ['line', 'region'] as const) {
    const reply = await ask('planFetch', { ...drive, by }, { signal });
    if (signal.aborted) return;
    const found = reply.ok ? reply.value : { problem: reply.error.message };
    planned.value = { ...planned.peek(), [by]: found };
  }
}

/** Shows what would be asked of whom; nothing is sent before a yes. */
export function beginFetch(drive: FetchFor, plan: FetchPlan): void {
  fetching.value = { for: drive, plan, busy: false };
  dialog.value = 'fetch';
}

/**
 * The user's yes to the step that is shown. What is short stays in its dialog and shows the next step there; what is long
 * goes on while the window is used.
 */
export async function agree({ keepFiles }: { readonly keepFiles: boolean }): Promise<void> {
  const now = fetching.peek();
  if (!now || now.busy) return;
  const { by } = now.plan;
  const step = now.plan.by === 'region' ? now.plan.step : undefined;
  if (step === 'none') return;
  const isLast = step === undefined || step === 'maps';
  fetching.value = isLast ? undefined : { for: now.for, plan: now.plan, busy: true };
  if (isLast) dialog.value = undefined;
  if (isLast) underWay.value = now.for;
  await runOnShelf(WHAT[step ?? 'line'], async ({ signal, tell }) => {
    const reply = await ask(
      'fetchMap',
      { ...now.for, by, ...given({ step, keepFiles: step === 'maps' ? keepFiles : undefined }) },
      { signal, onProgress: tell },
    );
    asked.value++;
    underWay.value = undefined;
    if (!reply.ok) await notFetched(now, reply.error);
    else if (reply.value.kind === 'plan') goOn(now, reply.value.plan);
    else await arrived(now.for, reply.value, { signal, tell });
  });
}

const WHAT = {
  line: 'Fetching the map of the drive',
  index: 'Asking for the list of regions',
  sizes: 'Asking how large the regions are',
  maps: 'Fetching the regions',
};

/** Whether the dialog still waits for what was asked. */
const isAwaited = (): boolean => dialog.peek() === 'fetch' && fetching.peek()?.busy === true;

async function notFetched(
  before: Fetching,
  { code, message }: { code: string; message: string },
): Promise<void> {
  const again = () => beginFetch(before.for, before.plan);
  const cancelled = code === 'cancelled';
  const say = cancelled
    ? 'Fetching was cancelled. What has come so far need not be asked for again.'
    : message;
  await lookAtShelf();
  if (isAwaited()) fetching.value = { for: before.for, plan: before.plan, busy: false, problem: say };
  else if (cancelled) tellAlso({ kind: 'note', say, offers: [{ say: 'Go on fetching…', act: again }] });
  else tellAlso({ kind: 'error', say, again });
}

function goOn(before: Fetching, plan: FetchPlan): void {
  if (isAwaited()) {
    fetching.value = { for: before.for, plan, busy: false };
    return;
  }
  const act = () => beginFetch(before.for, plan);
  tellAlso({
    kind: 'note',
    say: 'What was asked about the regions is here; the next step waits for you.',
    offers: [{ say: 'Next step…', act }],
  });
}

/** The drive is followed again on what has come; one that is no longer open is offered. */
async function arrived(
  drive: FetchFor,
  { maps, lacking, notes }: Extract<Fetched, { kind: 'maps' }>,
  job: Job,
): Promise<void> {
  await lookAtShelf();
  await openingDone();
  const open = openedDrive.peek();
  const isOpen = open && sameSource(open.source, drive.source) && open.followed.taken === drive.track;
  const reopen = () => openWanted({ map: shelfAbout(drive.source), drive });
  if (isOpen) await reopen();
  await compareDrives(job);
  const offers: Offer[] = [
    ...(isOpen ? [] : [{ say: 'Open that drive', act: () => void reopen() }]),
    ...(mapChanges.peek().drives.length > 0 ? [OFFER_CHANGES] : []),
  ];
  const lackingM = lacking.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
  const say = [
    `The map has come: ${listed(maps.map((name) => clip(name, 60)))} ${maps.length === 1 ? 'is' : 'are'} on your shelf.`,
    ...(lackingM > 0
      ? [
          `${distanceIn(settings.peek().units, lackingM)} of the drive have no road in what came: what is there is unknown.`,
        ]
      : []),
    ...notes,
  ];
  tellAlso({ kind: 'note', say: say.join(' '), offers });
}
