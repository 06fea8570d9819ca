import type { Dirent } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { isItemId, type NamedRecord, readRecordFile } from '../../../geo/library/record-name.ts';
import { codeOf } from '../files/system-error.ts';
import { eachInTurn, patiently } from './patience.ts';

/** A record by the name of its file. */
export interface RecordFile extends NamedRecord {
  /** from the folder of the records */
  readonly path: string;
}

/** What lies among the records. */
export interface Listing {
  /** by the item's id */
  readonly items: ReadonlyMap<string, readonly RecordFile[]>;
  /** paths of files that only their content can tell: copies under other names, and what is none of ours */
  readonly strays: readonly string[];
}

/**
 * Lists the records, or those of some kind alone; nothing is read of them.
 * @param beginning what the ids wanted begin with
 * @returns undefined where there is no such folder
 * @throws what the system says
 */
export async function listRecords(folder: string, beginning = ''): Promise<Listing | undefined> {
  const items = new Map<string, RecordFile[]>();
  const entries = await entriesOf(folder);
  if (entries === undefined) return undefined;
  const within = entries.filter((entry) => !isLitter(entry.name));
  const wanted = within.filter((entry) => entry.isDirectory());
  const strays = within.filter((entry) => !entry.isDirectory()).map(({ name }) => name);
  await eachInTurn(
    wanted.filter(({ name }) => name.toLowerCase().startsWith(beginning) || !isItemId(name.toLowerCase())),
    async ({ name: inFolder }) => {
      // on a disk that minds large and small letters a copy may differ in them alone
      const id = inFolder.toLowerCase();
      for (const entry of (await entriesOf(join(folder, inFolder))) ?? []) {
        if (isLitter(entry.name) || entry.isDirectory()) continue;
        const path = join(inFolder, entry.name);
        const named = isItemId(id) ? readRecordFile(entry.name) : undefined;
        if (named === undefined) strays.push(path);
        else put(items, id, { ...named, path });
      }
    },
  );
  return { items, strays: strays.sort() };
}

function put(items: Map<string, RecordFile[]>, id: string, file: RecordFile): void {
  const files = items.get(id);
  if (files) files.push(file);
  else items.set(id, [file]);
}

async function entriesOf(folder: string): Promise<Dirent[] | undefined> {
  try {
    return await patiently(() => readdir(folder, { withFileTypes: true }));
  } catch (error) {
    if (codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR') return undefined;
    throw error;
  }
}

/** What systems and services leave in every folder, and what they are still writing. */
function isLitter(name: string): boolean {
  return /^[.~]|^(?:desktop\.ini|thumbs\.db|icon\r?)$|\.(?:tmp|partial|part|crdownload)$/i.test(name);
}
