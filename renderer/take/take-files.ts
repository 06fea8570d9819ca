import { type FileKind, fileKind, HEAD_BYTES, sayFolder, sayForeign } from '../../geo/document/file-kind.ts';
import { given } from '../../geo/given.ts';
import { counted } from '../../geo/units/text.ts';
import { FILES_MAX, takeIn } from '../actions/open.ts';
import { ask } from '../host/ask.ts';
import { choosing, notice, type Told, tellAlso } from '../state/happening.ts';
import { dialog } from '../state/page.ts';
import { showView } from '../state/views.ts';
import { foundDrives } from './found-drives.tsx';
import { type Held, offerHeld } from './offer-held.ts';
import { openTaken } from './offer-shelf.ts';

interface Taken {
  readonly file: File;
  readonly kind: FileKind;
}

/**
 * Takes whatever was dropped or chosen, each told by what it holds: a drive or a map is opened, of several drives one is
 * chosen; a card is offered for the fleet. A load list by itself is put aboard, among other files it is offered. What is
 * none of them is said in a sentence.
 * @param folders names of folders among them
 */
export async function takeFiles(files: readonly File[], folders: readonly string[] = []): Promise<void> {
  choosing.value++;
  try {
    await takeEach(files, folders);
  } finally {
    choosing.value--;
  }
}

async function takeEach(files: readonly File[], folders: readonly string[]): Promise<void> {
  notice.value = undefined;
  const taken = await Promise.all(files.map(tell));
  const refused = [
    ...folders.map(sayFolder),
    ...taken.flatMap(({ file, kind }) => sayForeign(kind, file.name) ?? []),
  ];
  const toOpen = taken.filter(
    ({ kind, file }) => isOpened(kind) && sayForeign(kind, file.name) === undefined,
  );
  const held = taken.flatMap(({ file, kind }): Held[] => (isOpened(kind) ? [] : [{ file, kind }]));
  const [only] = held.length === 1 && toOpen.length === 0 ? held : [];
  if (toOpen.length > FILES_MAX) refused.push(sayTooMany(toOpen.length - FILES_MAX));
  if (toOpen.length > 0) await openAll(toOpen.map(({ file }) => file));
  if (only?.kind === 'load') {
    showView('load');
    const { openList } = await import('../load/state/load-file.ts');
    await openList(only.file);
  } else tellAlso(offerHeld(held));
  tellAlso(sayRefused(refused));
}

/** More sentences than this nobody reads. */
const MOST_SAID = 3;

function sayRefused(refused: readonly string[]): Told | undefined {
  if (refused.length === 0) return undefined;
  const more = refused.length - MOST_SAID;
  const rest = more > 0 ? [`${counted(more, 'other')} could not be opened either.`] : [];
  return { kind: 'error', say: [...refused.slice(0, MOST_SAID), ...rest].join(' ') };
}

function sayTooMany(left: number): string {
  return `${FILES_MAX} files are taken in at once; ${counted(left, 'file')} more can be opened afterwards.`;
}

const isOpened = (kind: FileKind): kind is Exclude<FileKind, Held['kind']> =>
  kind !== 'card' && kind !== 'load';

/** A folder, and a file that has gone, cannot be read: the host says so. */
async function tell(file: File): Promise<Taken> {
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
  if (drives.length < 2) return openTaken(added);
  await ask('rememberDrives', { sources: drives.map(({ source }) => source) });
  foundDrives.value = { drives, ...given({ map: added.find(({ use }) => use === 'map') }) };
  dialog.value = 'drives';
}
