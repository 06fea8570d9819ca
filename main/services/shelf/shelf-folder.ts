import { createHash } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { foldName } from '../../../geo/shelf/names.ts';
import { codeOf } from '../files/system-error.ts';
import { type Manifest, readManifest } from './manifest.ts';

/** Where what is being made lies until it is whole; on the same disk, so that it can be moved into its place. */
export const WORK = 'work';
export const MAPS = 'maps';
/** Where folders of maps lie that nothing can be made of any more. */
export const ASIDE = 'set-aside';

/** The folder of the map of this name: readable, and another for each name. */
export function mapFolder(shelf: string, name: string): string {
  const readable = foldName(name)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 32);
  const hash = createHash('sha256').update(name).digest('hex').slice(0, 12);
  return join(shelf, MAPS, readable === '' ? hash : `${readable}-${hash}`);
}

/** A map's folder and what it holds. */
export type FoundMap =
  | { readonly folder: string; readonly name: string; readonly manifest: Manifest }
  /** whose manifest cannot be read: known by its folder */
  | { readonly folder: string; readonly name: string; readonly manifest: undefined };

/**
 * Every map on the shelf, by name. A folder without a manifest is one being made, or left over: no map.
 * @throws what the system says where the shelf is there and may not be read
 */
export async function findMaps(shelf: string): Promise<FoundMap[]> {
  const root = join(shelf, MAPS);
  const names = await readdir(root).catch((error: unknown) => {
    if (codeOf(error) === 'ENOENT') return [];
    throw error;
  });
  const found: FoundMap[] = [];
  for (const each of names.sort()) {
    const folder = join(root, each);
    const read = await readManifest(folder);
    if (read.kind === 'sound') found.push({ folder, name: read.manifest.name, manifest: read.manifest });
    else if (read.kind === 'damaged') found.push({ folder, name: each, manifest: undefined });
  }
  return found.sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** How many maps there are; none where the shelf may not be read, which is told when it is opened. */
export async function countMaps(shelf: string): Promise<number> {
  return findMaps(shelf).then(
    (maps) => maps.length,
    () => 0,
  );
}
