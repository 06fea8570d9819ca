import { given } from '../../geo/given.ts';
import { sayOlderThanBefore } from '../../geo/report/map-age.ts';
import type { Problem } from '../../geo/result.ts';
import { clip, counted } from '../../geo/units/text.ts';
import type { ImportedMap } from '../../main/contract/shelf.ts';
import type { Source } from '../../main/contract/source.ts';
import { addFile, ask } from '../host/ask.ts';
import { settings, vehicle } from '../state/kept.ts';
import { dialog } from '../state/page.ts';
import { mapChanges, shelfTold } from '../state/shelf.ts';
import type { Job } from './long-work.ts';
import { lookAtShelf, useShelfAnew } from './shelf-changed.ts';
import { runOnShelf, tellOfShelf } from './shelf-work.ts';

/** Takes a file of the page's in. @param name of the map it replaces; without it the file gives the name */
export async function importFile(file: File, name?: string): Promise<void> {
  shelfTold.value = undefined;
  await runOnShelf(`Taking in ${clip(file.name, 60)}`, async (job) => {
    const added = await addFile(file, job.signal);
    if (!added.ok) return tellProblem(added.error);
    if (added.value.use === 'map') return takeIn(job, added.value.source, name);
    tellOfShelf({ kind: 'error', say: `${clip(file.name, 80)} is a drive. The shelf takes maps.` });
  });
}

/** Keeps a map that is open on the shelf, so that it need not be named again. */
export async function keepOpened(source: Source, fileName: string): Promise<void> {
  await runOnShelf(`Taking in ${clip(fileName, 60)}`, (job) => takeIn(job, source));
}

async function takeIn(job: Job, source: Source, name?: string): Promise<void> {
  // what the map before this one changed is no news beneath what becomes of this one
  mapChanges.value = { vehicle: '', drives: [] };
  const reply = await ask(
    'importMap',
    { source, ...given({ name }) },
    { signal: job.signal, onProgress: job.tell },
  );
  await lookAtShelf();
  if (!reply.ok) return tellProblem(reply.error);
  await useShelfAnew(source);
  await compareDrives(job);
  const changed = mapChanges.peek().drives.length > 0;
  tellOfShelf({
    kind: 'note',
    say: sayTaken(reply.value),
    ...(changed ? { offers: [OFFER_CHANGES] } : {}),
  });
}

export const OFFER_CHANGES = {
  say: 'What has changed…',
  act: () => {
    dialog.value = 'shelf';
  },
};

/** What a map that took another's place says otherwise of the drives opened before, for the chosen vehicle. */
export async function compareDrives({ signal, tell }: Job): Promise<void> {
  const card = vehicle.peek()?.card;
  if (!card) return;
  const { margins } = settings.peek();
  const reply = await ask(
    'mapChanges',
    { vehicle: card, margins, ...given({ country: settings.peek().country ?? undefined }) },
    { signal, onProgress: tell },
  );
  // a comparison that failed costs nothing that is kept
  mapChanges.value = { vehicle: card.name, drives: reply.ok ? reply.value.drives : [] };
}

function sayTaken(map: ImportedMap): string {
  const { name, roads, beside, newerBefore } = map;
  if (roads === 0)
    return `${clip(name, 80)} is on your shelf, but there is no road in it: no drive can be checked on it.`;
  const stays = beside === undefined ? '' : ` ${clip(beside, 80)} lies in another place and stays as it was.`;
  const older = newerBefore === undefined ? '' : ` ${sayOlderThanBefore([map], newerBefore)}`;
  return `${clip(name, 80)} is on your shelf, with ${counted(roads, 'road').replace(/^\d+/, roads.toLocaleString('en-GB'))}. Drives there use it from now on.${stays}${older}`;
}

/** Reads all of a map, so that damage is known. @param mend makes a damaged one anew */
export async function verifyMap(name: string, { mend }: { readonly mend: boolean }): Promise<void> {
  shelfTold.value = undefined;
  await runOnShelf(`${mend ? 'Mending' : 'Reading'} ${clip(name, 60)}`, async ({ signal, tell }) => {
    const reply = await ask('verifyMap', { name, repair: mend }, { signal, onProgress: tell });
    await lookAtShelf();
    if (!reply.ok) return tellProblem(reply.error);
    const { state, repair } = reply.value;
    if (repair) {
      if (repair.done) await useShelfAnew();
      tellOfShelf({ kind: repair.done ? 'note' : 'error', say: repair.say });
    } else if (state === 'ready')
      tellOfShelf({ kind: 'note', say: `All of ${clip(name, 80)} was read: it is whole.` });
    else
      tellOfShelf({
        kind: 'error',
        say: `${clip(name, 80)} is damaged. What cannot be read of it is unknown on every drive there until it is mended.`,
      });
  });
}

/** Takes a map off the shelf. */
export async function removeMap(name: string): Promise<void> {
  shelfTold.value = undefined;
  await runOnShelf(`Removing ${clip(name, 60)}`, async () => {
    const reply = await ask('removeMap', { name });
    await lookAtShelf();
    if (!reply.ok) return tellProblem(reply.error);
    await useShelfAnew();
    tellOfShelf({ kind: 'note', say: `${clip(name, 80)} was removed from your shelf.` });
  });
}

function tellProblem({ code, message }: Problem): void {
  const cancelled = code === 'cancelled';
  tellOfShelf({
    kind: cancelled ? 'note' : 'error',
    say: cancelled ? 'Cancelled. The shelf is as it was.' : message,
  });
}
