import { readdir, rename, rm, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import { newerDayBefore } from '../../../geo/report/map-age.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { makeFolders } from '../files/make-folders.ts';
import { codeOf, messageOf } from '../files/system-error.ts';
import { inTurn } from '../files/take-turn.ts';
import { type Manifest, type Origin, PART_NAME, readManifest, writeManifest } from './manifest.ts';
import { mapFolder } from './shelf-folder.ts';

/** A part that is whole and on the disk, outside of any map's folder. */
export interface MadePart {
  readonly path: string;
  readonly bytes: number;
  readonly meta: PartMeta;
  /** where its source lies, where it may be read again */
  readonly sourcePath?: string;
}

export interface NewMap {
  readonly name: string;
  /** ISO 8601 */
  readonly imported: string;
  readonly origin: Origin;
  readonly parts: readonly MadePart[];
}

/**
 * Puts a map on the shelf, in place of the one of that name: its files are moved beside the old ones under names of
 * their own, and the manifest, switched last, makes them the map. Stopped at any moment, the old map stays.
 */
export async function publishMap(shelf: string, map: NewMap): Promise<Result<Manifest>> {
  const folder = mapFolder(shelf, map.name);
  try {
    await makeFolders(folder);
    const done = await inTurn(folder, async () => {
      const read = await readManifest(folder);
      const old = read.kind === 'sound' ? read.manifest : undefined;
      const generation = (await highestGeneration(folder, old)) + 1;
      const parts = [];
      for (const [i, { path, bytes, meta, sourcePath }] of map.parts.entries()) {
        const file = `part-${generation}-${i + 1}.shelf`;
        await rename(path, join(folder, file));
        const { roads, dataDate, source } = meta;
        parts.push({ file, bytes, roads, source, ...given({ dataDate, path: sourcePath }) });
      }
      const { name, imported, origin } = map;
      const manifest: Manifest = {
        format: 'lanegauge.shelf',
        version: 1,
        name,
        generation,
        imported,
        origin,
        parts,
        ...given({
          newerBefore: old && newerDayBefore(parts, { sources: old.parts, newerBefore: old.newerBefore }),
        }),
      };
      await writeManifest(folder, manifest);
      return manifest;
    });
    return done;
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return fail(
      'shelf.unwritable',
      `The map could not be put on the shelf in ${folder}: ${messageOf(error)}. What was there stays as it was. See that the folder may be written, and try again.`,
    );
  }
}

/** Of the manifest and of files that nobody's manifest names: a number is never given twice. */
async function highestGeneration(folder: string, known: Manifest | undefined): Promise<number> {
  const files = (await readdir(folder)).filter((name) => PART_NAME.test(name));
  return files.reduce((most, name) => Math.max(most, Number(name.split('-')[1])), known?.generation ?? 0);
}

/** Takes a map off the shelf. */
export async function removeMap(shelf: string, folder: string): Promise<Result<null>> {
  try {
    const done = await inTurn(folder, async () => {
      // the first copy's going makes it no map; what is left goes with the folder
      for (const name of (await readdir(folder))
        .filter((each) => each.endsWith('.json'))
        .sort()
        .reverse())
        await unlink(join(folder, name));
    });
    if (!done.ok) return done;
    await rm(folder, { recursive: true, force: true });
    return ok(null);
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return fail(
      'shelf.unwritable',
      `The map in ${folder} could not be taken off the shelf of ${shelf}: ${messageOf(error)}. See that the folder may be written, and try again.`,
    );
  }
}
