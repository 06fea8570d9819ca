import { randomUUID } from 'node:crypto';
import { readFile, stat, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { makeFolders } from '../files/make-folders.ts';
import { hasEnded, OWN_MARK } from '../files/owner-mark.ts';
import { codeOf } from '../files/system-error.ts';
import { inTurn } from '../files/take-turn.ts';
import type { Pace } from './pace.ts';

/** No question lasts so long: a mark that old was left by a program that no longer runs, on whatever computer. */
const OLD_MS = 15 * 60_000;
const LOOK_AGAIN_MS = 500;

let before: Promise<unknown> = Promise.resolve();

/**
 * Asks while nobody else asks: shared servers want one question at a time from a user, whatever windows and terminals
 * he has open. Programs that use the same data folder wait for each other by a mark in it.
 * @param folder where what is fetched is kept
 * @returns undefined when the signal was given while it waited
 */
export async function askAlone<T>(
  { folder, pace, signal }: { readonly folder: string; readonly pace: Pace; readonly signal?: AbortSignal },
  ask: () => Promise<T>,
): Promise<T | undefined> {
  let asking = false;
  const mine = before.then(async () => {
    const mark = join(folder, 'asking');
    const name = `${OWN_MARK} ${randomUUID()}`;
    while (!signal?.aborted) {
      if (await take(folder, mark, name)) {
        asking = true;
        try {
          return await ask();
        } finally {
          await giveBack(mark, name);
        }
      }
      await pace.sleep(LOOK_AGAIN_MS, signal);
    }
    return undefined;
  });
  // whatever became of one question, the next is asked
  before = mine.catch(() => {});
  let hear: (() => void) | undefined;
  const givenUp = new Promise<undefined>((resolve) => {
    // what is being asked hears the signal itself
    hear = () => asking || resolve(undefined);
    signal?.addEventListener('abort', hear, { once: true });
  });
  try {
    return await Promise.race([mine, givenUp]);
  } finally {
    if (hear) signal?.removeEventListener('abort', hear);
  }
}

async function take(folder: string, mark: string, name: string): Promise<boolean> {
  await makeFolders(folder);
  const taken = await inTurn(folder, async () => {
    if (!(await isFree(mark))) return false;
    await writeFile(mark, name, { mode: 0o600 });
    return true;
  });
  return taken.ok && taken.value;
}

/** Nobody's, or of one who has ended; within this program one waits for the other, so its own is left over. */
async function isFree(mark: string): Promise<boolean> {
  try {
    const [owner = ''] = (await readFile(mark, 'utf8')).split(' ');
    if (owner === OWN_MARK || hasEnded(owner)) return true;
    return Math.abs(Date.now() - (await stat(mark)).mtimeMs) > OLD_MS;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return true;
    throw error;
  }
}

async function giveBack(mark: string, name: string): Promise<void> {
  const held = await readFile(mark, 'utf8').catch(() => '');
  if (held === name) await unlink(mark).catch(() => {});
}
