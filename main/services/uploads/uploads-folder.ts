import { lstat, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hasEnded, MARK_PATTERN, OWN_MARK } from '../files/owner-mark.ts';

const BEGIN = 'lanegauge-uploads-';
const OURS = new RegExp(`^${BEGIN}(${MARK_PATTERN})-[A-Za-z0-9]{6}$`);

/** A folder for the copies of this process alone, which its name tells. */
export function makeUploadsFolder(parent = tmpdir()): Promise<string> {
  return mkdtemp(join(parent, `${BEGIN}${OWN_MARK}-`));
}

/** Deletes the copies of programs that were ended before they could: this user's own, and of no program that lives. */
export async function sweepUploads(parent = tmpdir()): Promise<void> {
  const names = await readdir(parent).catch(() => []);
  await Promise.all(
    names.map(async (name) => {
      const mark = OURS.exec(name)?.[1];
      if (mark === undefined || !hasEnded(mark)) return;
      const path = join(parent, name);
      const found = await lstat(path).catch(() => undefined);
      // in a folder for everybody, a name alone proves nothing
      if (!found?.isDirectory() || (process.getuid && found.uid !== process.getuid())) return;
      await rm(path, { recursive: true, force: true }).catch(() => {});
    }),
  );
}
