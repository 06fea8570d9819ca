import { constants } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { fail, ok, type Problem, type Result } from '../../../geo/result.ts';
import { codeOf, messageOf } from './system-error.ts';

/**
 * Reads a whole file of moderate size.
 * @param path where it lies
 * @param what what it is meant to be ("vehicle card"), for the message
 * @param maxBytes larger files are refused
 */
export async function readBytes(path: string, what: string, maxBytes: number): Promise<Result<Uint8Array>> {
  const opened = await openOrdinary(path, what);
  if (!opened.ok) return opened;
  const { handle, size } = opened.value;
  try {
    if (size > maxBytes)
      return fail(
        'too-large',
        `${path} has ${(size / 1e6).toFixed(1)} MB; a ${what} has at most ${(maxBytes / 1e6).toFixed(0)} MB. Is it the right file?`,
      );
    return ok(await handle.readFile());
  } catch (error) {
    return { ok: false, error: unreadable(path, what, error) };
  } finally {
    await handle.close();
  }
}

/**
 * Opens an ordinary file to be read; the caller closes it. Anything else is refused before it is opened: to open a
 * pipe is to wait for its writer, and a device never ends.
 * @param what what it is meant to be, for the message
 */
export async function openOrdinary(
  path: string,
  what: string,
): Promise<Result<{ readonly handle: FileHandle; readonly size: number }>> {
  let handle: FileHandle | undefined;
  try {
    const wrong = sayKind(path, what, await stat(path));
    if (wrong !== undefined) return wrong;
    // what takes its place meanwhile is not waited for either
    handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const found = await handle.stat();
    const changed = sayKind(path, what, found);
    if (changed === undefined) return ok({ handle, size: found.size });
    await handle.close();
    return changed;
  } catch (error) {
    await handle?.close();
    return { ok: false, error: unreadable(path, what, error) };
  }
}

interface Kind {
  isFile(): boolean;
  isDirectory(): boolean;
}

function sayKind(path: string, what: string, kind: Kind): ReturnType<typeof fail> | undefined {
  if (kind.isFile()) return undefined;
  return kind.isDirectory()
    ? fail('is-folder', `${path} is a folder, not a ${what}. Name the file itself.`)
    : fail('not-a-file', `${path} is a pipe or a device, not a ${what}. Name an ordinary file.`);
}

/** Why the system will not open or read a file, as a sentence. */
export function unreadable(path: string, what: string, error: unknown): Problem {
  const code = codeOf(error);
  const problem = (name: string, message: string) => fail(name, message).error;
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return problem('missing', `There is no file ${path}. Check the name of the ${what}.`);
  if (code === 'EACCES' || code === 'EPERM')
    return problem(
      'unreadable',
      `${path} may not be read: the system refuses it. Change its permissions or choose another ${what}.`,
    );
  return problem(
    'unreadable',
    `${path} could not be read (${messageOf(error)}). Check the ${what} and its disk.`,
  );
}
