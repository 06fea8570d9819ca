import { effect } from '@preact/signals';
import { given } from '../../geo/given.ts';
import type { Problem } from '../../geo/result.ts';
import { clip } from '../../geo/units/text.ts';
import type { RequestOf } from '../../main/contract/calls.ts';
import { planMapReady } from '../actions/begin-plan.ts';
import { type Job, runLong } from '../actions/long-work.ts';
import { openMapIn } from '../actions/open-in.ts';
import { checkWith } from '../actions/recheck.ts';
import { asFile } from '../actions/take-way.ts';
import { SHELF } from '../actions/wanted.ts';
import { isOffMap } from '../actions/which-map.ts';
import { ask } from '../host/ask.ts';
import { report } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { type PlanPlace, places, plan } from '../state/plan.ts';
import { mapsOnShelf } from '../state/shelf.ts';
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
    timer = setTimeout(() => void (asked ? planNow(asked) : forgetPlanned()), SETTLE_MS);
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
  await planMapReady();
  if (!plan.peek()) return;
  const open = openedDrive.peek();
  let problem: Problem | undefined;
  const ended = await runLong('Looking for the roads', async (job) => {
    await openShelfIfOff(job);
    const reply = await ask('planDrive', asked, { signal: job.signal, onProgress: job.tell });
    if (job.signal.aborted) return;
    if (!reply.ok) {
      problem = reply.error;
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
  if (ended === 'done' && problem !== undefined)
    tell({ problem: problem.message, offMap: problem.code === 'place off the map' });
}

function tell(told: Pick<NonNullable<typeof plan.value>, 'problem' | 'offMap' | 'say'>): void {
  const now = plan.peek();
  if (now) plan.value = { places: now.places, before: now.before, ...told };
}

/** A place off the file that is open lies on the shelf, if anywhere. */
async function openShelfIfOff(job: Job): Promise<void> {
  if (isOffOpenFile()) await openMapIn(job, { source: SHELF });
}

function isOffOpenFile(): boolean {
  const open = openedMap.peek();
  if (open === undefined || open.source.kind === 'shelf' || mapsOnShelf.peek() === 0) return false;
  return places.peek().some((place) => isOffMap(place, open.summary.bounds));
}

/** With fewer than two places there is no drive; where the first lies is shown all the same. */
async function forgetPlanned(): Promise<void> {
  await planMapReady();
  if (plan.peek() && isOffOpenFile()) await runLong('Opening your shelf', openShelfIfOff);
  if (!plan.peek() || !openedDrive.peek()) return;
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
}
