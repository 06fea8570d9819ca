import { join } from 'node:path';
import { readRecordFile } from '../../../geo/library/record-name.ts';
import { PROGRAM } from '../../version.ts';
import { makeFolders } from '../files/make-folders.ts';
import { readBytes } from '../files/read-bytes.ts';
import { replaceFile } from '../files/replace-file.ts';
import { sha256Of } from '../files/sha256.ts';
import type { RecordFile } from './list-records.ts';

const INDEX_MAX_BYTES = 512 * 1024 * 1024;
/** Another program may make otherwise of a record. */
const HEADER = `lanegauge.library-index 2 ${PROGRAM}`;

/** What this computer last saw of a library, so that it opens without reading every record anew. */
export interface LibraryIndex {
  /** by the item's id */
  readonly items: ReadonlyMap<string, readonly RecordFile[]>;
  /** of the newest versions, by path; each is held against its name again when it is taken in */
  readonly texts: ReadonlyMap<string, string>;
}

/** Where the index of a library lies: on this computer, never in a folder that others share. */
function indexPath(dataFolder: string, library: string): string {
  return join(dataFolder, 'library-index', `${sha256Of(library).slice(0, 20)}.txt`);
}

/**
 * The header, the hash of what follows, and a line a record: the item's id, its path, and its text where it is one of
 * the newest; a tab between.
 * @returns undefined where there is none that can be used: it is made anew
 */
export async function readIndex(dataFolder: string, library: string): Promise<LibraryIndex | undefined> {
  const bytes = await readBytes(indexPath(dataFolder, library), 'index', INDEX_MAX_BYTES);
  if (!bytes.ok) return undefined;
  const [header, hash, ...lines] = Buffer.from(bytes.value).toString('utf8').split('\n');
  if (header !== HEADER || hash !== sha256Of(lines.join('\n'))) return undefined;
  const items = new Map<string, RecordFile[]>();
  const texts = new Map<string, string>();
  for (const line of lines) {
    const [id = '', path, text] = line.split('\t');
    const named = path === undefined ? undefined : readRecordFile(path.split(/[\\/]/).at(-1) ?? '');
    if (path === undefined || named === undefined) continue;
    const files = items.get(id);
    if (files) files.push({ ...named, path });
    else items.set(id, [{ ...named, path }]);
    if (text !== undefined && text !== '') texts.set(path, `${text}\n`);
  }
  return { items, texts };
}

/** Keeps the index. That it cannot be kept costs time at the next start and nothing else. */
export async function writeIndex(
  dataFolder: string,
  library: string,
  { items, texts }: LibraryIndex,
): Promise<void> {
  const lines: string[] = [];
  for (const [id, files] of items)
    for (const { path } of files) lines.push(`${id}\t${path}\t${texts.get(path)?.trimEnd() ?? ''}`);
  // what a person has named may hold anything; it is read anew each time
  const plain = lines.filter((line) => /^[^\t\n]*\t[^\t\n]*\t[^\t\n]*$/.test(line));
  const body = `${plain.join('\n')}\n`;
  try {
    await makeFolders(join(dataFolder, 'library-index'));
    await replaceFile(indexPath(dataFolder, library), `${HEADER}\n${sha256Of(body)}\n${body}`);
  } catch {
    // the records themselves are read instead
  }
}
