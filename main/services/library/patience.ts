import { setTimeout as wait } from 'node:timers/promises';
import { codeOf } from '../files/system-error.ts';

/**
 * What passes by itself: a file that another program holds open just now (Windows), one of a shared disk whose place
 * has changed since it was listed.
 */
const PASSING = new Set<unknown>(['EBUSY', 'ESTALE', 'EAGAIN']);
/** The same on Windows alone, where elsewhere it is a refusal. */
const PASSING_ON_WINDOWS = new Set<unknown>(['EPERM', 'EACCES']);

/** Waits that grow, as virus scanners and shared disks want them. */
const WAITS_MS = [5, 20, 60, 150, 400] as const;

/** Does some work on the disk again where it fails for what passes. @throws what it fails for in the end */
export async function patiently<T>(
  work: () => Promise<T>,
  platform: NodeJS.Platform = process.platform,
): Promise<T> {
  for (const ms of WAITS_MS)
    try {
      return await work();
    } catch (error) {
      const code = codeOf(error);
      const passes = PASSING.has(code) || (platform === 'win32' && PASSING_ON_WINDOWS.has(code));
      if (!passes) throw error;
      await wait(ms);
    }
  return work();
}

/** Does work on each, a few at a time: a shared disk that hangs must not take all of the program's hands. */
export async function eachInTurn<T>(list: readonly T[], work: (one: T) => Promise<void>): Promise<void> {
  const HANDS = 2;
  let next = 0;
  await Promise.all(
    Array.from({ length: HANDS }, async () => {
      for (let one = list[next++]; one !== undefined; one = list[next++]) await work(one);
    }),
  );
}
