import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import type { MapSource } from '../../../geo/roads/roads.ts';
import { wasFoundDamaged } from './found-damaged.ts';
import { openPartOrNot } from './open-shelf.ts';
import { type FoundMap, findMaps } from './shelf-folder.ts';

/** One map of the shelf, as it is told. */
export interface ListedMap {
  readonly name: string;
  readonly roads: number;
  /** on the disk */
  readonly bytes: number;
  /** of its oldest part; left out where a part tells none */
  readonly dataDate?: string;
  /** the day of newer data that it took the place of, where its own is older or tells no date */
  readonly newerBefore?: string;
  /** ISO 8601; '' where its manifest cannot be read */
  readonly imported: string;
  readonly sources: readonly Pick<MapSource, 'name' | 'sha256'>[];
  /** the largest places on it, where they tell where it lies */
  readonly around?: readonly string[];
  /** damaged: its files do not open, or reading it once found damage */
  readonly state: 'ready' | 'damaged';
}

/** Named of a map of several parts. */
const AROUND_MOST = 3;

/** All maps of the shelf. Reads manifests, ends and directories, not the maps. @throws what the system says */
export async function listMaps(shelf: string): Promise<ListedMap[]> {
  return Promise.all((await findMaps(shelf)).map(listMap));
}

/** One map as it is told. */
export async function listMap({ name, folder, manifest }: FoundMap): Promise<ListedMap> {
  if (manifest === undefined)
    return { name, roads: 0, bytes: 0, imported: '', sources: [], state: 'damaged' };
  const { parts, imported, newerBefore } = manifest;
  const opened = parts.map(({ file }) => openPartOrNot(join(folder, file)));
  for (const part of opened) part?.close();
  const around = [...new Set(opened.flatMap((part) => part?.meta.around ?? []))].slice(0, AROUND_MOST);
  const sound =
    opened.every((part, i) => part?.fileBytes === parts[i]?.bytes) &&
    !(await wasFoundDamaged(folder, manifest.generation));
  return {
    name,
    roads: sum(parts.map((part) => part.roads)),
    bytes: sum(parts.map((part) => part.bytes)),
    ...given({ dataDate: oldest(parts.map(({ dataDate }) => dataDate)), newerBefore }),
    imported,
    ...(around.length > 0 && { around }),
    sources: parts.map(({ source }) => ({ name: source.name, sha256: source.sha256 })),
    state: sound ? 'ready' : 'damaged',
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((all, one) => all + one, 0);
}

/** Undefined where one of them is not known: what is as old as that may be older. */
function oldest(dates: readonly (string | undefined)[]): string | undefined {
  const known = dates.filter((date) => date !== undefined).sort();
  return known.length === dates.length ? known[0] : undefined;
}
