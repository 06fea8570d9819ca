import { given } from '../../geo/given.ts';
import type { Problem } from '../../geo/result.ts';
import { clip, listed } from '../../geo/units/text.ts';
import { RECENTS_MAX } from '../../main/contract/limits.ts';
import type { AddedFile, Recent } from '../../main/contract/source.ts';
import { addFile, ask } from '../host/ask.ts';
import { notice } from '../state/happening.ts';
import { description } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { type Job, runLong } from './long-work.ts';
import { openIn, openMapIn, sayOtherMap } from './open-in.ts';
import { isFile, type MapWanted, type Wanted, wantedAdded, wantedRecent, wantedSample } from './wanted.ts';

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

/** Opens a map with no drive on it. */
export function openMapAlone(map: MapWanted): Promise<void> {
  return opening('Opening the map', (job) => openMapIn(job, map));
}

/** One of the drives that come with the program, on their own map. */
export function openSample(id: string): Promise<void> {
  const sample = description.peek()?.sample;
  return sample ? openWanted(wantedSample(sample, id)) : Promise.resolve();
}

/** A file opened before; a drive on its own map. */
export async function openRecent(recent: Recent): Promise<void> {
  if (recent.use === 'drive') {
    const open = openedMap.peek()?.source;
    await openWanted(wantedRecent(recent, { open, shelfMaps: mapsOnShelf.peek() }));
    if (recent.map && !recent.map.source && !notice.peek() && isFile(open))
      notice.value = sayOtherMap(recent.map.name, { why: 'not remembered', instead: 'the open map' });
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
  await refreshKept();
}

/** What has just been opened stands first among the recent files; another window may have filled the shelf. */
async function refreshKept(): Promise<void> {
  const reply = await ask('describe', {});
  const known = description.peek();
  if (!reply.ok || !known) return;
  const { recents, shelfMaps } = reply.value;
  description.value = { ...known, recents, shelfMaps };
}
