import { readFile, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * Damage that the window met when it read a map is noted beside it, for this generation of it, so that its list shows it.
 * Nothing else writes there: commands of the terminal tell what they meet.
 */
const FOUND_DAMAGED = 'found-damaged';

export async function wasFoundDamaged(folder: string, generation: number): Promise<boolean> {
  const text = await readFile(join(folder, FOUND_DAMAGED), 'utf8').catch(() => '');
  return text === String(generation);
}

/**
 * A folder that may not be written to keeps no note: the finding itself is told all the same.
 * @param generation undefined: all of it was read, and is sound
 */
export async function noteDamage(folder: string, generation: number | undefined): Promise<void> {
  const path = join(folder, FOUND_DAMAGED);
  if (generation === undefined) await unlink(path).catch(() => {});
  else await writeFile(path, String(generation)).catch(() => {});
}
