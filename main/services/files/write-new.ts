import { randomUUID } from 'node:crypto';
import { link, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { makeFolders } from './make-folders.ts';
import { codeOf, messageOf } from './system-error.ts';

/**
 * Writes files that must not exist yet, each whole or not at all: written under a passing name first, then linked
 * into place, which the system refuses where the name is taken.
 * @param folder made when missing
 * @returns the paths written; on failure those already written by this call are taken away again
 */
export async function writeNew(
  folder: string,
  files: Readonly<Record<string, string | Uint8Array>>,
  signal?: AbortSignal,
): Promise<Result<string[]>> {
  const placed: string[] = [];
  const passing = new Set<string>();
  try {
    await makeFolders(folder);
    for (const [name, content] of Object.entries(files)) {
      const temporary = join(folder, `.${name}.${randomUUID()}`);
      passing.add(temporary);
      await writeFile(temporary, content, { flag: 'wx', ...given({ signal }) });
      const target = join(folder, name);
      await link(temporary, target);
      placed.push(target);
    }
    return ok(placed);
  } catch (error) {
    await Promise.all(placed.map((path) => unlink(path).catch(() => {})));
    return fail('unwritable', describe(folder, error));
  } finally {
    await Promise.all([...passing].map((path) => unlink(path).catch(() => {})));
  }
}

function describe(folder: string, error: unknown): string {
  const code = codeOf(error);
  if (code === 'EEXIST')
    return `${folder} already holds a file of that name (or is itself a file); nothing was written. Choose another folder.`;
  if (code === 'ABORT_ERR') return 'Cancelled; nothing was written.';
  return `Nothing could be written to ${folder} (${messageOf(error)}). Choose another folder.`;
}
