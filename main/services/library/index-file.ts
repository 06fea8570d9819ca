import { join } from 'node:path';
import { z } from 'zod';
import { readRecordFile } from '../../../geo/library/record-name.ts';
import { makeFolders } from '../files/make-folders.ts';
import { readBytes } from '../files/read-bytes.ts';
import { replaceFile } from '../files/replace-file.ts';
import { sha256Of } from './known-records.ts';
import type { Listing, RecordFile } from './list-records.ts';

const INDEX_MAX_BYTES = 512 * 1024 * 1024;

const indexSchema = z.object({
  format: z.literal('lanegauge.library-index'),
  version: z.literal(1),
  /** by item: the paths of its files, from the folder of the records */
  items: z.record(z.string(), z.array(z.string())),
  /** texts of the newest versions, by path */
  texts: z.record(z.string(), z.string()),
});

/** What this computer last saw of a library, so that it opens without reading every record anew. */
export interface LibraryIndex {
  readonly listing: Listing;
  /** by path; each is held against its name again when it is taken in */
  readonly texts: Readonly<Record<string, string>>;
}

/** Where the index of a library lies: on this computer, never in a folder that others share. */
function indexPath(dataFolder: string, library: string): string {
  return join(dataFolder, 'library-index', `${sha256Of(library).slice(0, 20)}.json`);
}

/** @returns undefined where there is none that can be used: it is made anew */
export async function readIndex(dataFolder: string, library: string): Promise<LibraryIndex | undefined> {
  const bytes = await readBytes(indexPath(dataFolder, library), 'index', INDEX_MAX_BYTES);
  if (!bytes.ok) return undefined;
  try {
    const read = indexSchema.safeParse(JSON.parse(Buffer.from(bytes.value).toString('utf8')));
    if (!read.success) return undefined;
    const items = new Map<string, RecordFile[]>();
    for (const [id, paths] of Object.entries(read.data.items))
      items.set(
        id,
        paths.flatMap((path) => {
          const named = readRecordFile(path.split(/[\\/]/).at(-1) ?? '');
          return named ? [{ ...named, path }] : [];
        }),
      );
    return { listing: { items, strays: [] }, texts: read.data.texts };
  } catch {
    return undefined;
  }
}

/** Keeps the index. That it cannot be kept costs time at the next start and nothing else. */
export async function writeIndex(dataFolder: string, library: string, index: LibraryIndex): Promise<void> {
  const path = indexPath(dataFolder, library);
  const items = Object.fromEntries(
    [...index.listing.items].map(([id, files]) => [id, files.map((file) => file.path)]),
  );
  const kept = { format: 'lanegauge.library-index', version: 1, items, texts: index.texts };
  try {
    await makeFolders(join(dataFolder, 'library-index'));
    await replaceFile(path, JSON.stringify(kept));
  } catch {
    // the records themselves are read instead
  }
}
