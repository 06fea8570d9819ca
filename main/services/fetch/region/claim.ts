import { readFile, stat, unlink, writeFile } from 'node:fs/promises';
import { hasEnded, OWN_MARK } from '../../files/owner-mark.ts';
import { codeOf } from '../../files/system-error.ts';
import type { PartPaths } from './part-file.ts';

/** Whoever fetches writes, or waits for a server that asked to be left alone, more often than this. */
const FORGOTTEN_MS = 15 * 60_000;

/**
 * Takes a file for this fetch alone, so that no second program writes into it.
 * @returns how to give it back; undefined while another is fetching it
 * @throws what the system says
 */
export async function claimPart(paths: PartPaths, nowMs: number): Promise<(() => Promise<void>) | undefined> {
  for (let attempt = 0; attempt < 2; attempt++)
    try {
      await writeFile(paths.claim, OWN_MARK, { flag: 'wx', mode: 0o600 });
      return () => unlink(paths.claim).catch(() => {});
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw error;
      if (await isHeld(paths, nowMs)) return undefined;
      await unlink(paths.claim).catch(() => {});
    }
  return undefined;
}

/** By a program that has not ended, and that has been heard of lately: process numbers are given out again. */
export async function isHeld({ claim, part }: PartPaths, nowMs: number): Promise<boolean> {
  const holder = await readFile(claim, 'utf8').catch(() => undefined);
  if (holder === undefined || hasEnded(holder)) return false;
  const times = await Promise.all([claim, part].map((path) => stat(path).catch(() => undefined)));
  return times.some((found) => found !== undefined && Math.abs(nowMs - found.mtimeMs) < FORGOTTEN_MS);
}
