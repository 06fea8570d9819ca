import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { codeOf } from '../files/system-error.ts';
import type { Manifest } from './manifest.ts';
import { type OpenPart, openPart } from './read-part.ts';
import { type FoundMap, findMaps } from './shelf-folder.ts';

/** A part of a map, open, and the map's name. */
export interface ShelfPart {
  readonly map: string;
  /** what fetching it had to say: what it does not hold, how old it is */
  readonly notes: readonly string[];
  readonly part: OpenPart;
  /** where its map lies and which making of it this is, so that damage can be noted there */
  readonly of?: { readonly folder: string; readonly generation: number };
}

/** The maps of the shelf, open to be read; what lies there is not touched. */
export interface OpenShelf {
  /** those of newest data first, undated ones last: of what several hold, the first is used */
  readonly parts: readonly ShelfPart[];
  /** how many maps there are, damaged ones included */
  readonly maps: number;
  /** names of maps that could not be opened, or not all of them */
  readonly damaged: readonly string[];
  /** names of maps with files that this user may not read */
  readonly forbidden: readonly string[];
  /** tells one state of the shelf from another */
  readonly state: string;
  close(): void;
}

/** Opens all maps that can be opened. @throws what the system says where the shelf's folder may not be read */
export async function openShelf(shelf: string): Promise<OpenShelf> {
  const opened = openFound(await findMaps(shelf));
  if (opened.damaged.length === 0) return opened;
  // a map made anew between the look at its folder and the opening of its files is no damaged one
  const found = await findMaps(shelf);
  if (stateOfAll(found) === opened.state) return opened;
  opened.close();
  return openFound(found);
}

function openFound(found: readonly FoundMap[]): OpenShelf {
  const damaged = new Set<string>();
  const forbidden = new Set<string>();
  const parts: (ShelfPart & { readonly date: string })[] = [];
  for (const { name, folder, manifest } of found) {
    if (manifest === undefined) damaged.add(name);
    for (const { file } of manifest?.parts ?? []) {
      const part = tryPart(join(folder, file));
      if (part === 'damaged') damaged.add(name);
      else if (part === 'forbidden') forbidden.add(name);
      else
        parts.push({
          map: name,
          part,
          notes: notesOf(manifest),
          date: part.meta.dataDate ?? '',
          ...given({ of: manifest && { folder, generation: manifest.generation } }),
        });
    }
  }
  parts.sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? 1 : -1));
  return {
    parts,
    maps: found.length,
    damaged: [...damaged],
    forbidden: [...forbidden],
    state: stateOfAll(found),
    close() {
      for (const { part } of parts) part.close();
    },
  };
}

function notesOf(manifest: Manifest | undefined): readonly string[] {
  return manifest?.origin.by === 'line' ? manifest.origin.notes : [];
}

function stateOfAll(found: readonly FoundMap[]): string {
  return found
    .map(({ folder, manifest }) => `${folder} ${manifest?.generation ?? ''} ${manifest?.imported ?? ''}`)
    .join('\n');
}

/** A part's file, open; undefined where it is damaged, gone, or not for this user to read. */
export function openPartOrNot(path: string): OpenPart | undefined {
  const part = tryPart(path);
  return typeof part === 'string' ? undefined : part;
}

function tryPart(path: string): OpenPart | 'damaged' | 'forbidden' {
  try {
    return openPart(path);
  } catch (thrown) {
    const code = codeOf(thrown);
    if (code === 'EACCES' || code === 'EPERM') return 'forbidden';
    if (thrown instanceof Refusal || code !== undefined) return 'damaged';
    throw thrown;
  }
}
