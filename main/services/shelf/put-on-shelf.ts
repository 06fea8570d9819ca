import { randomUUID } from 'node:crypto';
import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import type { Work } from '../../contract/work.ts';
import { makeFolders } from '../files/make-folders.ts';
import { OWN_MARK } from '../files/owner-mark.ts';
import { codeOf, messageOf } from '../files/system-error.ts';
import type { Manifest, Origin } from './manifest.ts';
import { nameOfNew } from './name-of-new.ts';
import { type MadePart, publishMap } from './publish-map.ts';
import { findMaps, WORK } from './shelf-folder.ts';

/** A file to take in. */
export interface MapFile {
  readonly path: string;
  /** for sentences, and as the name of the source */
  readonly name: string;
  /** whether it stays where it is, so that the map can be made anew from it */
  readonly stays: boolean;
}

export interface ImportHooks {
  /** `share` 0…1 of the whole */
  onProgress(work: Work): void;
  readonly signal: AbortSignal;
}

/** Makes a part of one file; see main/services/shelf/import. */
export type ImportPart = (
  source: Pick<MapFile, 'path' | 'name'>,
  outFile: string,
  tempFolder: string,
  hooks: ImportHooks,
) => Promise<Result<PartMeta>>;

export interface PutRequest {
  readonly shelf: string;
  readonly name: string;
  /** where the map of that name lies in another place: it stays, and the new one is called so, or by a number */
  readonly elsewhere?: string;
  readonly files: readonly MapFile[];
  readonly origin: Origin;
  /** ISO 8601 */
  readonly now: string;
}

/**
 * Takes files in as one map of the shelf, a part each, and puts it in place of the map of that name when all is whole.
 * Given up or gone wrong, the old map stays and nothing is left behind.
 */
export async function putOnShelf(
  { shelf, name, elsewhere, files, origin, now }: PutRequest,
  importPart: ImportPart,
  hooks: ImportHooks,
): Promise<Result<Manifest>> {
  const work = join(shelf, WORK, `${OWN_MARK}-${randomUUID()}`);
  try {
    await makeFolders(work);
    const parts: MadePart[] = [];
    for (const [i, file] of files.entries()) {
      const path = join(work, `part-${i + 1}`);
      const made = await importPart(file, path, join(work, `temp-${i + 1}`), {
        signal: hooks.signal,
        onProgress: ({ share, ...work }) =>
          hooks.onProgress({ ...work, ...given({ share: share && (i + share) / files.length }) }),
      });
      if (!made.ok) return made;
      // the same file once more adds nothing
      if (parts.some(({ meta }) => meta.source.sha256 === made.value.source.sha256)) continue;
      const { size } = await stat(path);
      parts.push({ path, bytes: size, meta: made.value, ...(file.stays ? { sourcePath: file.path } : {}) });
    }
    if (hooks.signal.aborted) return fail('cancelled', 'Cancelled.');
    const metas = parts.map(({ meta }) => meta);
    if (metas.every(({ roads }) => roads === 0) && (await hasRoads(shelf, name)))
      return fail(
        'shelf.no-road',
        `No road is in ${listed(files.map((file) => quote(file.name)))}: ${quote(name)} on the shelf, which has roads, stays as it was. Use an extract with roads.`,
      );
    const called = elsewhere === undefined ? name : await nameOfNew(shelf, metas, [name, elsewhere]);
    const put = await publishMap(shelf, { name: called, imported: now, origin, parts });
    return put.ok ? ok(put.value) : put;
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return fail(
      'shelf.unwritable',
      `Nothing could be written to the shelf in ${shelf}: ${messageOf(error)}. What was there stays as it was. See that the folder may be written, and try again.`,
    );
  } finally {
    await rm(work, { recursive: true, force: true }).catch(() => {});
  }
}

async function hasRoads(shelf: string, name: string): Promise<boolean> {
  const old = (await findMaps(shelf)).find((map) => map.name === name);
  return old?.manifest?.parts.some(({ roads }) => roads > 0) ?? false;
}
