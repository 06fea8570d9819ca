import { randomUUID } from 'node:crypto';
import { rename } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import { makeFolders } from '../files/make-folders.ts';
import { codeOf, messageOf } from '../files/system-error.ts';
import { Cancelled } from '../map/map-reading.ts';
import { noteDamage } from './found-damaged.ts';
import { type ListedMap, listMaps } from './list-maps.ts';
import type { Origin } from './manifest.ts';
import { removeMap } from './publish-map.ts';
import { type ImportHooks, type ImportPart, type MapFile, putOnShelf } from './put-on-shelf.ts';
import { ASIDE, type FoundMap, findMaps } from './shelf-folder.ts';
import { shelfUnreadable } from './shelf-unreadable.ts';
import { sayNotMended, sourcesThere } from './sources-there.ts';
import { type Verified, verifyMap } from './verify-map.ts';

/** What work on the shelf needs of the outside. */
export interface ShelfTools {
  /** the shelf's folder */
  readonly shelf: string;
  readonly importPart: ImportPart;
  now(): Date;
}

/** Maps by the files they are made of. */
export interface MapWanted {
  readonly name: string;
  /** see PutRequest */
  readonly elsewhere?: string;
  readonly files: readonly MapFile[];
  readonly origin: Origin;
}

/** The name of a map that is given none: its file's, without its endings. */
export function nameOfFile(path: string): string {
  const name = basename(path);
  return name.replace(/(\.osm)?(\.(pbf|gz|osm|json|xml))*$/i, '').replace(/-latest$/, '') || name;
}

/** A map that was taken in. */
export interface ImportedMap extends ListedMap {
  /** the map whose name was wanted, which lies elsewhere and stays */
  readonly beside?: string;
}

/** Takes files in as one map, in place of the one of that name. @returns how the shelf tells it */
export async function importMap(
  { shelf, importPart, now }: ShelfTools,
  wanted: MapWanted,
  hooks: ImportHooks,
): Promise<Result<ImportedMap>> {
  const put = await putOnShelf({ shelf, ...wanted, now: now().toISOString() }, importPart, hooks);
  if (!put.ok) return put;
  const { name } = put.value;
  const there = (await listMaps(shelf)).find((map) => map.name === name);
  return there === undefined
    ? fail(
        'shelf.gone',
        `The map ${quote(name)} was taken off the shelf as soon as it was there. Import it again.`,
      )
    : ok(name === wanted.name ? there : { ...there, beside: wanted.name });
}

/** Takes a map off the shelf by its name. */
export async function removeByName(shelf: string, name: string): Promise<Result<null>> {
  const found = await findByName(shelf, name);
  return found.ok ? removeMap(shelf, found.value.folder) : found;
}

/** The map of this name; a sentence that lists what is there where there is none. */
export async function findByName(shelf: string, name: string): Promise<Result<FoundMap>> {
  try {
    const maps = await findMaps(shelf);
    const found = maps.find((map) => map.name === name);
    if (found) return ok(found);
    const there =
      maps.length === 0 ? 'It is empty.' : `It holds ${listed(maps.map((map) => quote(map.name)))}.`;
    return fail('shelf.unknown', `There is no map ${quote(name)} on the shelf. ${there}`);
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return shelfUnreadable(shelf, error);
  }
}

/** What was found of one map, and what became of it where it was to be mended. */
export interface VerifiedMap extends Verified {
  /** mended, or why not */
  readonly repair?: { readonly done: boolean; readonly say: string };
}

/**
 * Reads all of these maps; damaged ones are made anew from their sources where `repair` asks for it. With `note` what was
 * found is kept beside each map, for the list of the shelf.
 */
export async function verifyMaps(
  tools: ShelfTools,
  maps: readonly FoundMap[],
  { repair, note }: { readonly repair: boolean; readonly note: boolean },
  hooks: ImportHooks,
): Promise<Result<VerifiedMap[]>> {
  const all: VerifiedMap[] = [];
  for (const [i, map] of maps.entries()) {
    const found = await verifyOne(map, hooks, (share) => (i + share) / maps.length);
    if (!found.ok) return found;
    const sound = found.value.state === 'ready';
    if (note && map.manifest) await noteDamage(map.folder, sound ? undefined : map.manifest.generation);
    if (!repair || sound) {
      all.push(found.value);
      continue;
    }
    const mended = await repairMap(tools, map, hooks);
    if (hooks.signal.aborted) return CANCELLED;
    all.push({ ...found.value, repair: mended });
  }
  return ok(all);
}

const CANCELLED = fail('cancelled', 'Cancelled.');
const PAUSE_EVERY_MS = 15;

async function verifyOne(
  map: FoundMap,
  { signal, onProgress }: ImportHooks,
  shareOf: (share: number) => number,
): Promise<Result<Verified>> {
  let last = performance.now();
  try {
    const verified = await verifyMap(map, {
      onProgress: (share) => onProgress({ what: `Reading ${map.name}`, share: shareOf(share) }),
      async pause() {
        if (performance.now() - last < PAUSE_EVERY_MS) return;
        await new Promise((resolve) => setImmediate(resolve));
        if (signal.aborted) throw new Cancelled();
        last = performance.now();
      },
    });
    return ok(verified);
  } catch (error) {
    if (error instanceof Cancelled) return CANCELLED;
    throw error;
  }
}

async function repairMap(
  tools: ShelfTools,
  { name, folder, manifest }: FoundMap,
  hooks: ImportHooks,
): Promise<{ done: boolean; say: string }> {
  if (manifest === undefined) return setAside(tools.shelf, folder, name);
  const there = await sourcesThere(manifest);
  if (there.from !== 'files') return { done: false, say: sayNotMended(name, there) };
  const { files } = there;
  const put = await importMap(tools, { name, files, origin: manifest.origin }, hooks);
  return put.ok
    ? {
        done: true,
        say: `${quote(name)} was made anew from ${listed(files.map((file) => quote(file.name)))}.`,
      }
    : { done: false, say: put.error.message };
}

/** A folder whose manifest cannot be read is no map to anybody; it is kept, out of the way. */
async function setAside(
  shelf: string,
  folder: string,
  name: string,
): Promise<{ done: boolean; say: string }> {
  const aside = join(shelf, ASIDE, `${basename(folder)}-${randomUUID().slice(0, 8)}`);
  try {
    await makeFolders(join(shelf, ASIDE));
    await rename(folder, aside);
    return {
      done: false,
      say: `Nothing says what ${quote(name)} was made from: it was set aside for ninety days, in ${aside}. Import or fetch the map again.`,
    };
  } catch (error) {
    return { done: false, say: `${quote(name)} could not be set aside: ${messageOf(error)}.` };
  }
}
