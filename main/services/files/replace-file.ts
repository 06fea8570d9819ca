import { copyFile, open, rename, unlink, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { passingName } from './passing-files.ts';
import { syncFolder } from './sync-folder.ts';
import { codeOf } from './system-error.ts';

/**
 * Writes a file whole or not at all, on the disk when this returns.
 * @param backup where the version before is kept
 * @param mayStill asked last, before the file takes its place
 * @throws what the system says, or that the turn was lost; what was there is then unchanged
 */
export async function replaceFile(
  path: string,
  contents: string | Uint8Array | AsyncIterable<string>,
  { backup, mayStill }: { readonly backup?: string; readonly mayStill?: () => Promise<boolean> } = {},
): Promise<void> {
  const passing = passingName(path);
  try {
    const handle = await open(passing, 'wx', 0o600);
    try {
      await writeFile(handle, contents);
      await handle.sync();
    } finally {
      await handle.close();
    }
    if (backup !== undefined) await keepPrevious(path, backup);
    if (mayStill && !(await mayStill())) throw new Error('another program has written meanwhile');
    await rename(passing, path);
    await syncFolder(dirname(path));
  } catch (error) {
    await unlink(passing).catch(() => {});
    throw error;
  }
}

async function keepPrevious(path: string, backup: string): Promise<void> {
  const passing = passingName(backup);
  try {
    await copyFile(path, passing);
    await rename(passing, backup);
  } catch (error) {
    await unlink(passing).catch(() => {});
    if (codeOf(error) !== 'ENOENT') throw error;
  }
}
