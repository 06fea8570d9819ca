import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { fail, ok, type Result } from '../../../geo/result.ts';

/**
 * Reads a whole file of moderate size.
 * @param path where it lies
 * @param what what it is meant to be ("vehicle card"), for the message
 * @param maxBytes larger files are refused
 */
export async function readBytes(path: string, what: string, maxBytes: number): Promise<Result<Uint8Array>> {
  try {
    const handle = await open(path, constants.O_RDONLY);
    try {
      const stat = await handle.stat();
      if (stat.isDirectory())
        return fail('is-folder', `${path} is a folder, not a ${what}. Name the file itself.`);
      if (stat.size > maxBytes)
        return fail(
          'too-large',
          `${path} has ${(stat.size / 1e6).toFixed(1)} MB; a ${what} has at most ${(maxBytes / 1e6).toFixed(0)} MB. Is it the right file?`,
        );
      return ok(await handle.readFile());
    } finally {
      await handle.close();
    }
  } catch (error) {
    return fail('unreadable', unreadable(path, what, error));
  }
}

/** A sentence for a file that the system will not open. */
export function unreadable(path: string, what: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT') return `There is no file ${path}. Check the name of the ${what}.`;
  if (code === 'EACCES' || code === 'EPERM')
    return `${path} may not be read: the system refuses it. Change its permissions or choose another ${what}.`;
  if (code === 'EISDIR') return `${path} is a folder, not a ${what}. Name the file itself.`;
  return `${path} could not be read (${error instanceof Error ? error.message : String(error)}). Check the ${what} and its drive.`;
}
