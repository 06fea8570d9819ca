import { fileKind, HEAD_BYTES, sayFolder, sayForeign } from '../../../geo/document/file-kind.ts';
import { clip, counted, listed } from '../../../geo/units/text.ts';
import { addFile, ask } from '../../host/ask.ts';
import { takeFiles } from '../../take/take-files.ts';
import { begin, judge, lookAtYard, tell } from './work.ts';
import { drives, yardWork } from './yard.ts';

/** Where many are added the grid shows them a handful at a time. */
const LOOK_EVERY = 50;
/** More sentences than these nobody reads. */
const MOST_SAID = 5;

/**
 * Puts GPX files into the library: the good ones, and the bad ones are named. What is no drive goes where it would have
 * gone. What is new is checked at once.
 */
export async function addToYard(files: readonly File[], folders: readonly string[] = []): Promise<void> {
  if (yardWork.peek()) return tell('Wait for the work under way, or cancel it; then add the drives.', true);
  tell('');
  const job = begin(`Adding ${counted(files.length, 'file')}`, files.length);
  const others: File[] = [];
  const refused = folders.map(sayFolder);
  const count = { new: 0, there: 0, back: 0 };
  const added: string[] = [];
  for (const [i, file] of files.entries()) {
    if (job.signal.aborted) break;
    const kind = await kindOf(file);
    if (kind === 'map' || kind === 'card' || kind === 'load') others.push(file);
    else {
      const done = await addOne(file, kind, job.signal);
      if (typeof done === 'string') refused.push(done);
      else
        for (const { id, was } of done) {
          count[was]++;
          if (was !== 'there') added.push(id);
        }
    }
    job.show(i + 1);
    if (i % LOOK_EVERY === LOOK_EVERY - 1) await lookAtYard();
  }
  const stopped = job.signal.aborted;
  yardWork.value = undefined;
  await lookAtYard();
  if (!stopped && count.new + count.back > 0) await judge('missing');
  const alike = added.filter((id) => drives.peek().some((drive) => drive.id === id && drive.alike)).length;
  tell(`${sayAdded(count, refused, stopped)}${sayAlike(alike)}`, refused.length > 0);
  if (others.length > 0) await takeFiles(others);
}

type Was = 'new' | 'there' | 'back';

/** @returns what became of its drives, or why there are none */
async function addOne(
  file: File,
  kind: ReturnType<typeof fileKind>,
  signal: AbortSignal,
): Promise<readonly { readonly id: string; readonly was: Was }[] | string> {
  const foreign = sayForeign(kind, file.name);
  if (foreign !== undefined) return foreign;
  const held = await addFile(file, signal);
  if (!held.ok) return held.error.message;
  const added = await ask('addToYard', { source: held.value.source }, { signal });
  return added.ok ? added.value.drives : `${clip(file.name, 80)}: ${added.error.message}`;
}

function sayAlike(count: number): string {
  if (count === 0) return '';
  return ` ${count === 1 ? 'One has the name' : `${count} have the names`} of another drive: what tells them apart stands beside it, and they can be renamed.`;
}

async function kindOf(file: File): Promise<ReturnType<typeof fileKind>> {
  const head = await file
    .slice(0, HEAD_BYTES)
    .arrayBuffer()
    .catch(() => undefined);
  return head === undefined ? 'other' : fileKind(new Uint8Array(head));
}

function sayAdded(
  count: Readonly<Record<Was, number>>,
  refused: readonly string[],
  stopped: boolean,
): string {
  const parts = [
    ...(count.new > 0 ? [`${counted(count.new, 'drive')} added`] : []),
    ...(count.back > 0 ? [`${count.back} back from the bin`] : []),
    ...(count.there > 0 ? [`${count.there} there already, so kept once`] : []),
  ];
  const said = parts.length === 0 ? '' : `${listed(parts)}.`;
  const more = refused.length - MOST_SAID;
  const bad = [
    ...refused.slice(0, MOST_SAID),
    ...(more > 0 ? [`${counted(more, 'other file')} could not be used either.`] : []),
  ];
  return [stopped ? 'Stopped.' : '', said, ...bad].filter((part) => part !== '').join(' ');
}
