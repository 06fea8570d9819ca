import { readdir, readFile, stat, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { makeFolders } from './make-folders.ts';
import { hasEnded, OWN_MARK } from './owner-mark.ts';
import { codeOf } from './system-error.ts';

/** The right to change the files of a folder, held by one program at a time. */
export interface Turn {
  /** Whether nobody has taken over, as after a long sleep of the computer. */
  isMine(): Promise<boolean>;
}

/** A turn takes milliseconds; one held for longer than this belongs to a program that hangs. */
const HELD_MOST_MS = 10_000;
const WAIT_MOST_MS = 15_000;
/** Written over the beginning of the holder's mark, at one stroke. */
const DONE = 'done';

/**
 * Does some work while no other program does any in this folder.
 *
 * Turns are files that carry numbers, made so that only one program can make each. The highest number has the turn
 * until it says that it is done or its program has ended: a program that is killed holds up nobody. The highest file
 * is never deleted, so that no number is given twice.
 */
export async function inTurn<T>(folder: string, work: (turn: Turn) => Promise<T>): Promise<Result<T>> {
  const turns = join(folder, 'turns');
  await makeFolders(turns);
  const number = await take(turns);
  if (number === undefined)
    return fail(
      'busy',
      `Another Lanegauge has been writing in ${folder} for some time. Wait for it, or end it, and try again.`,
    );
  try {
    return ok(await work({ isMine: async () => (await latest(turns)) === number }));
  } finally {
    await writeFile(join(turns, String(number)), DONE, { flag: 'r+' }).catch(() => {});
  }
}

/** @returns the number of the turn; undefined when it did not come */
async function take(turns: string): Promise<number | undefined> {
  const until = performance.now() + WAIT_MOST_MS;
  while (performance.now() < until) {
    const before = await latest(turns);
    if (before === 0 || (await isFree(join(turns, String(before))))) {
      const number = before + 1;
      if (await made(join(turns, String(number)))) {
        if ((await latest(turns)) === number) {
          await forgetBefore(turns, number);
          return number;
        }
        // this number had been given and forgotten while this program slept
        await unlink(join(turns, String(number))).catch(() => {});
      }
      continue;
    }
    await new Promise((resolve) => setTimeout(resolve, 2 + Math.random() * 10));
  }
  return undefined;
}

async function latest(turns: string): Promise<number> {
  return (await numbersIn(turns)).reduce((most, each) => Math.max(most, each), 0);
}

async function numbersIn(turns: string): Promise<number[]> {
  return (await readdir(turns)).filter((name) => /^\d{1,15}$/.test(name)).map(Number);
}

async function made(path: string): Promise<boolean> {
  try {
    await writeFile(path, OWN_MARK, { flag: 'wx', mode: 0o600 });
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/** Done, left by a program that has ended, or held for too long. */
async function isFree(path: string): Promise<boolean> {
  try {
    const holder = await readFile(path, 'utf8');
    if (holder.startsWith(DONE) || hasEnded(holder)) return true;
    return Math.abs(Date.now() - (await stat(path)).mtimeMs) > HELD_MOST_MS;
  } catch (error) {
    // forgotten by a later turn
    if (codeOf(error) === 'ENOENT') return false;
    throw error;
  }
}

async function forgetBefore(turns: string, number: number): Promise<void> {
  const old = (await numbersIn(turns)).filter((each) => each < number);
  await Promise.all(old.map((each) => unlink(join(turns, String(each))).catch(() => {})));
}
