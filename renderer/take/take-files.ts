import { type FileKind, fileKind, HEAD_BYTES, sayFolder, sayForeign } from '../../geo/document/file-kind.ts';
import { given } from '../../geo/given.ts';
import { clip } from '../../geo/units/text.ts';
import { openAdded, takeIn } from '../actions/open.ts';
import { ask } from '../host/ask.ts';
import { openList } from '../load/state/load-file.ts';
import { notice } from '../state/happening.ts';
import { dialog } from '../state/page.ts';
import { showView } from '../state/views.ts';
import { addFromFile } from '../vehicle/fleet-work.ts';
import { foundDrives } from './found-drives.tsx';

interface Told {
  readonly file: File;
  readonly kind: FileKind;
}

/**
 * Takes whatever was dropped or chosen: a drive or a map is opened, a card offered for the fleet, a load list put
 * aboard, each told by what it holds; of several drives one is chosen. What is none of them is said in a sentence.
 * @param folders names of folders among them
 */
export async function takeFiles(files: readonly File[], folders: readonly string[] = []): Promise<void> {
  notice.value = undefined;
  const told = await Promise.all(files.map(tell));
  const refused = [
    ...folders.map(sayFolder),
    ...told.flatMap(({ file, kind }) => sayForeign(kind, file.name) ?? []),
  ];
  const toOpen = told.filter(({ kind, file }) => isOpened(kind) && sayForeign(kind, file.name) === undefined);
  const load = told.find(({ kind }) => kind === 'load');
  const card = told.find(({ kind }) => kind === 'card');
  if (toOpen.length > 0) await openAll(toOpen.map(({ file }) => file));
  else if (load) {
    showView('load');
    await openList(load.file);
  }
  if (notice.peek()?.kind === 'error') return;
  if (card) offerCard(card.file, refused);
  else if (refused.length > 0) notice.value = { kind: 'error', say: refused.slice(0, MOST_SAID).join(' ') };
}

/** More sentences than this nobody reads. */
const MOST_SAID = 3;

const isOpened = (kind: FileKind): boolean => kind !== 'card' && kind !== 'load';

/** A folder, and a file that has gone, cannot be read: the host says so. */
async function tell(file: File): Promise<Told> {
  const head = await file
    .slice(0, HEAD_BYTES)
    .arrayBuffer()
    .catch(() => undefined);
  return { file, kind: head === undefined ? 'other' : fileKind(new Uint8Array(head)) };
}

async function openAll(files: readonly File[]): Promise<void> {
  showView('drive');
  const added = await takeIn(files);
  if (added === undefined) return;
  const drives = added.filter(({ use }) => use === 'drive');
  if (drives.length < 2) return openAdded(added);
  await ask('rememberDrives', { sources: drives.map(({ source }) => source) });
  foundDrives.value = { drives, ...given({ map: added.find(({ use }) => use === 'map') }) };
  dialog.value = 'drives';
}

function offerCard(file: File, refused: readonly string[]): void {
  const say = [`${clip(file.name, 80)} is a vehicle card.`, ...refused.slice(0, MOST_SAID)].join(' ');
  notice.value = {
    kind: 'note',
    say,
    offer: {
      say: 'Add it to the fleet',
      act: () => {
        dialog.value = 'vehicles';
        void addFromFile(file);
      },
    },
  };
}
