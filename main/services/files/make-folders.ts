import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { codeOf } from './system-error.ts';

/** Step by step: where the system refuses a folder in its own way, the recursive call may never come back. */
export async function makeFolders(folder: string): Promise<void> {
  if (existsSync(folder)) return;
  const parent = dirname(folder);
  if (parent !== folder) await makeFolders(parent);
  try {
    await mkdir(folder);
  } catch (error) {
    // another program was faster
    if (codeOf(error) !== 'EEXIST') throw error;
  }
}
