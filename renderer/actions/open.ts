import { given } from '../../geo/given.ts';
import type { Problem } from '../../geo/result.ts';
import { clip, listed } from '../../geo/units/text.ts';
import { RECENTS_MAX } from '../../main/contract/limits.ts';
import type { AddedFile, Recent } from '../../main/contract/source.ts';
import { addFile, ask } from '../host/ask.ts';
import { leaveAt, report } from '../state/check.ts';
import { notice, type Told } from '../state/happening.ts';
import { description } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { dialog } from '../state/page.ts';
import { cursorM, selectedId } from '../state/shown.ts';
import { type Job, runLong } from './long-work.ts';
import {
  type DriveWanted,
  type MapWanted,
  sameSource,
  type Wanted,
  wantedAdded,
  wantedRecent,
  wantedSample,
} from './wanted.ts';

/** As many files as are taken in at once: as many as are listed afterwards. */
export const FILES_MAX = RECENTS_MAX;

/** Hands files of the page to the host. @returns undefined where one was refused, which is said, or it was stopped */
export async function takeIn(files: readonly File[]): Promise<readonly AddedFile[] | undefined> {
  const added: AddedFile[] = [];
  let whole = false;
  await opening('Taking in the file', async (job) => {
    for (const file of files.slice(0, FILES_MAX)) {
      const reply = await addFile(file, job.signal);
      if (!reply.ok) return reply.error;
      added.push(reply.value);
    }
    whole = true;
    return undefined;
  });
  return whole ? added : undefined;
}

/** Opens files that the host took in already. */
export function openAdded(added: readonly AddedFile[]): Promise<void> {
  return opening('Opening', (job) => openAddedIn(job, added));
}

export function openWanted(wanted: Wanted): Promise<void> {
  return opening('Opening', (job) => openIn(job, wanted));
}

/** One of the drives that come with the program, on their own map. */
export function openSample(id: string): Promise<void> {
  const sample = description.peek()?.sample;
  return sample ? openWanted(wantedSample(sample, id)) : Promise.resolve();
}

/** A file opened before; a drive on its own map. */
export async function openRecent(recent: Recent): Promise<void> {
  if (recent.use === 'drive') {
    await openWanted(wantedRecent(recent, openedMap.peek()?.source));
    if (recent.map && !recent.map.source && !notice.peek())
      notice.value = sayOtherMap(recent.map.name, 'not remembered');
    return;
  }
  const source = { kind: 'recent', id: recent.id } as const;
  const about = openedDrive.peek()?.source;
  return openWanted({ map: { source, ...given({ about }) } });
}

async function openAddedIn(job: Job, added: readonly AddedFile[]): Promise<Problem | undefined> {
  const wanted = wantedAdded(added, openedDrive.peek()?.source);
  const problem = await openIn(job, wanted);
  const left = added.filter(({ source }) => source !== wanted.map?.source && source !== wanted.drive?.source);
  if (!problem && left.length > 0)
    notice.value = {
      kind: 'note',
      say: `One drive and one map are open at a time; ${listed(left.map(({ name }) => clip(name, 80)))} ${left.length === 1 ? 'was' : 'were'} left out.`,
    };
  return problem;
}

async function opening(what: string, run: (job: Job) => Promise<Problem | undefined>): Promise<void> {
  let problem: Problem | undefined;
  notice.value = undefined;
  const ended = await runLong(what, async (job) => {
    problem = await run(job);
  });
  if (ended === 'overtaken') return;
  if (problem?.code === 'cancelled')
    notice.value = { kind: 'note', say: 'Cancelled. What was open is still open.' };
  else if (problem) notice.value = { kind: 'error', say: problem.message };
  await refreshRecents();
}

/** What has just been opened stands first among the recent files. */
async function refreshRecents(): Promise<void> {
  const reply = await ask('describe', {});
  const known = description.peek();
  if (reply.ok && known) description.value = { ...known, recents: reply.value.recents };
}

/**
 * Opens a map, a drive, or a drive on a map. What was open stays open where the new cannot be read; a drive that
 * stays is followed again on a new map.
 */
async function openIn(job: Job, wanted: Wanted): Promise<Problem | undefined> {
  const map = wanted.map ?? mapAbout(wanted.drive);
  if (map) {
    const problem = await openMapIn(job, map);
    const withoutIt = problem && map.ownOf !== undefined && openedMap.peek() && !job.signal.aborted;
    if (problem && !withoutIt) return problem;
    if (withoutIt) notice.value = sayOtherMap(map.ownOf ?? '', 'gone');
  }
  const kept = keptDrive();
  const drive = wanted.drive ?? (map ? kept : undefined);
  if (!drive) return undefined;
  const problem = await openDriveIn(job, drive);
  if (problem && map && kept && wanted.drive) await openDriveIn(UNSTOPPED, kept);
  else if (problem && map) forgetDrive();
  return problem;
}

/** What helps where a map is missing. */
export const OFFER_MAP = {
  say: 'Open a map…',
  act: () => {
    dialog.value = 'open';
  },
};

/** A drive's own map is not at hand: the drive is held against the open one, and another can be opened. */
function sayOtherMap(name: string, why: 'gone' | 'not remembered'): Told {
  const so = why === 'gone' ? 'cannot be opened any more' : 'was too large to be kept';
  return {
    kind: 'note',
    say: `The map this drive was last held against, ${clip(name, 80)}, ${so}. The drive is held against the open map instead.`,
    offers: [OFFER_MAP],
  };
}

/** A map of which only a part was kept is read again for another drive. */
function mapAbout(drive: DriveWanted | undefined): MapWanted | undefined {
  const map = openedMap.peek();
  if (!drive || !map?.about || sameSource(map.about, drive.source)) return undefined;
  return { source: map.source, about: drive.source };
}

async function openMapIn(job: Job, { source, about }: MapWanted): Promise<Problem | undefined> {
  const reply = await ask(
    'openMap',
    { source, ...given({ about }) },
    { signal: job.signal, onProgress: job.tell },
  );
  if (!reply.ok) return reply.error;
  openedMap.value = { summary: reply.value, source, ...given({ about }) };
  return undefined;
}

async function openDriveIn(job: Job, { source, track }: DriveWanted): Promise<Problem | undefined> {
  const reply = await ask(
    'openDrive',
    { source, ...given({ track }) },
    { signal: job.signal, onProgress: job.tell },
  );
  if (!reply.ok) return reply.error;
  const before = openedDrive.peek();
  const same = before && sameSource(before.source, source);
  if (!same && reply.value.leaveAt !== undefined) leaveAt.value = reply.value.leaveAt;
  openedDrive.value = { followed: reply.value, source };
  if (!same || before.followed.taken !== reply.value.taken) {
    report.value = undefined;
    selectedId.value = undefined;
    cursorM.value = 0;
  }
  return undefined;
}

function keptDrive(): DriveWanted | undefined {
  const kept = openedDrive.peek();
  return kept && { source: kept.source, track: kept.followed.taken };
}

function forgetDrive(): void {
  openedDrive.value = undefined;
  report.value = undefined;
  selectedId.value = undefined;
}

const UNSTOPPED: Job = { signal: new AbortController().signal, tell: () => {} };
