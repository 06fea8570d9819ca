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
  let placing: string | undefined;
  try {
    await makeFolders(folder);
    for (const [name, content] of Object.entries(files)) {
      const temporary = join(folder, `.${name}.${randomUUID()}`);
      passing.add(temporary);
      await writeFile(temporary, content, { flag: 'wx', ...given({ signal }) });
      const target = join(folder, name);
      placing = target;
      await link(temporary, target);
      placed.push(target);
    }
    return ok(placed);
  } catch (error) {
    await Promise.all(placed.map((path) => unlink(path).catch(() => {})));
    return fail('unwritable', describe(folder, placing, error));
  } finally {
    await Promise.all([...passing].map((path) => unlink(path).catch(() => {})));
  }
}

function describe(folder: string, placing: string | undefined, error: unknown): string {
  const code = codeOf(error);
  if (code === 'EEXIST')
    return placing === undefined
      ? `${folder} is itself a file; nothing was written. Choose another folder.`
      : `${placing} is there already and stays as it is; nothing was written. Choose another name or folder.`;
  if (code === 'ABORT_ERR') return 'Cancelled; nothing was written.';
  return `Nothing could be written to ${folder} (${messageOf(error)}). Choose another folder.`;
}
