import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import { clip } from '../../geo/units/text.ts';
import type { RequestOf } from '../../main/contract/calls.ts';
import { runLong } from '../actions/long-work.ts';
import { checkWith } from '../actions/recheck.ts';
import { asFile } from '../actions/take-way.ts';
import { ask } from '../host/ask.ts';
import { report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { openedDrive } from '../state/opened.ts';
import { type PlanPlace, places, plan } from '../state/plan.ts';
import { cursorM, selectedId } from '../state/shown.ts';

/** Several changes in a row are looked for once. */
const SETTLE_MS = 150;

type Asked = RequestOf<'planDrive'>;

/** All that a planned drive rests on; undefined while there is nothing to look for. */
function askedNow(): Asked | undefined {
  const held = checkWith.value;
  const now = places.value;
  if (!held || now.length < 2) return undefined;
  return { ...held, prefer: settings.value.prefer, name: nameOf(now), places: now.map(placeAsked) };
}

function placeAsked({ lat, lon, stop }: PlanPlace, i: number, all: readonly PlanPlace[]) {
  return { lat, lon, stop: stop || i === 0 || i === all.length - 1 };
}

/** `Saltgarth to Larkenfold`, where both ends were chosen by name. */
function nameOf(all: readonly PlanPlace[]): string {
  const [from, to] = [all[0]?.name, all.at(-1)?.name];
  return from !== undefined && to !== undefined ? clip(`${from} to ${to}`, 120) : 'Planned drive';
}

/** Looks for the drive anew with every change of its places, the vehicle or what is preferred. @returns the way to end it */
export function replanOnChange(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let answered: string | undefined;
  const stop = effect(() => {
    const asked = askedNow();
    const key = asked && JSON.stringify(asked);
    if (key === answered) return;
    answered = key;
    clearTimeout(timer);
    timer = setTimeout(() => (asked ? void planNow(asked) : forgetPlanned()), SETTLE_MS);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}

/** Asks once more for what was cancelled or went wrong. */
export function planAgain(): void {
  const asked = askedNow();
  if (asked) void planNow(asked);
}

async function planNow(asked: Asked): Promise<void> {
  const of = plan.peek();
  if (!of) return;
  const open = openedDrive.peek();
  let problem: string | undefined;
  const ended = await runLong('Looking for the roads', async (job) => {
    const reply = await ask('planDrive', asked, { signal: job.signal, onProgress: job.tell });
    if (job.signal.aborted) return;
    if (!reply.ok) {
      problem = reply.error.message;
      return;
    }
    const { drive, say } = reply.value;
    const made = await asFile(drive, open?.source ?? { kind: 'shelf' }, job);
    if (job.signal.aborted || !plan.peek()) return;
    report.value = undefined;
    selectedId.value = undefined;
    cursorM.value = Math.min(cursorM.peek(), made.followed.lengthM);
    // the first is looked at whole; a change of it leaves the map where it is
    openedDrive.value = { ...made, ...given({ insteadOf: open?.followed.driveId }) };
    tell({ say });
  });
  if (ended === 'stopped') tell({ problem: 'Cancelled. The places are as you put them.' });
  if (ended === 'done' && problem !== undefined) tell({ problem });
}

function tell(told: { readonly problem?: string; readonly say?: readonly string[] }): void {
  const now = plan.peek();
  if (now) plan.value = { places: now.places, before: now.before, ...told };
}

/** With fewer than two places there is no drive. */
function forgetPlanned(): void {
  if (!plan.peek() || !openedDrive.peek()) return;
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
}
