import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { findMaps, MAPS, WORK } from '../../../main/services/shelf/shelf-folder.ts';
import { sweepShelf } from '../../../main/services/shelf/sweep-shelf.ts';
import { verifyMap } from '../../../main/services/shelf/verify-map.ts';

/**
 * What the shelf holds after a start of the program that it should not: work of ended programs, files that no manifest
 * names, maps that cannot be read to their end.
 */
export async function leftAfterSweep(shelf: string): Promise<string[]> {
  await sweepShelf(shelf, Date.now());
  const left = namesIn(join(shelf, WORK)).map((name) => `${WORK}/${name}`);
  const maps = await findMaps(shelf);
  for (const map of maps) {
    const named = map.manifest?.parts.map(({ file }) => file) ?? [];
    left.push(...namesIn(map.folder).filter((name) => name.startsWith('part-') && !named.includes(name)));
    const { state } = await verifyMap(map, { pause: async () => {} });
    if (state !== 'ready') left.push(`${map.name} is damaged`);
  }
  const folders = maps.map(({ folder }) => folder);
  for (const name of namesIn(join(shelf, MAPS)))
    if (!folders.includes(join(shelf, MAPS, name)) && namesIn(join(shelf, MAPS, name)).some(isPart))
      left.push(`${MAPS}/${name}`);
  return left;
}

function isPart(name: string): boolean {
  return name.startsWith('part-');
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
