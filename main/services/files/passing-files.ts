import { randomUUID } from 'node:crypto';
import { readdir, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { hasEnded, MARK_PATTERN, OWN_MARK } from './owner-mark.ts';

/** What a file is called while it is written. */
export function passingName(path: string): string {
  return `${path}.${OWN_MARK}-${randomUUID()}`;
}

const PASSING = new RegExp(
  `\\.(${MARK_PATTERN})-[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}$`,
);

/** What is younger may still be wanted by whoever looks after a crash. */
const OLD_MS = 60_000;

/** Deletes what a program that has ended left half written. What a living one is writing stays, and all else too. */
export async function sweepPassing(folder: string, nowMs: number): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  await Promise.all(
    names.map(async (name) => {
      const mark = PASSING.exec(name)?.[1];
      if (mark === undefined || !hasEnded(mark)) return;
      const path = join(folder, name);
      const found = await stat(path).catch(() => undefined);
      if (found?.isFile() && nowMs - found.mtimeMs > OLD_MS) await unlink(path).catch(() => {});
    }),
  );
}
