import { existsSync } from 'node:fs';
import { link, open, readFile, rename, unlink, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { makeFolders } from '../files/make-folders.ts';
import { passingName } from '../files/passing-files.ts';
import { syncFolder } from '../files/sync-folder.ts';
import { codeOf } from '../files/system-error.ts';
import { patiently } from './patience.ts';

/**
 * Writes a file whose name is made of its content, whole or not at all, on the disk when this returns. It never takes
 * the place of another: what bears the name already is the same, or was cut off while it came, and then is made whole.
 * @param passing the folder it is written in first, on the same disk
 * @throws what the system says; nothing has changed then
 */
export async function writeOnce(path: string, contents: string | Uint8Array, passing: string): Promise<void> {
  const bytes = Buffer.from(contents);
  const aside = join(passing, passingName(basename(path)));
  const folder = dirname(path);
  const folderIsNew = !existsSync(folder);
  for (const each of [passing, folder]) await makeFolders(each);
  try {
    await patiently(() => writeAside(aside, bytes));
    await putInPlace(aside, path, bytes);
    await syncFolder(folder);
    if (folderIsNew) await syncFolder(dirname(folder));
  } finally {
    await unlink(aside).catch(() => {});
  }
}

async function writeAside(aside: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(aside, 'w', 0o644);
  try {
    await writeFile(handle, bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * A link is made at one stroke everywhere and takes nothing's place. Some disks have none; there the file is renamed,
 * which is safe, since no other content has its name.
 */
async function putInPlace(aside: string, path: string, bytes: Uint8Array): Promise<void> {
  try {
    await link(aside, path);
    return;
  } catch (error) {
    if (codeOf(error) === 'EEXIST' && (await holds(path, bytes))) return;
  }
  try {
    await patiently(() => rename(aside, path));
  } catch (error) {
    // another program was faster and holds it open
    if (!(await holds(path, bytes))) throw error;
  }
}

async function holds(path: string, bytes: Uint8Array): Promise<boolean> {
  const found = await readFile(path).catch(() => undefined);
  return found?.equals(bytes) ?? false;
}
