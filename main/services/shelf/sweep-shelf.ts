import { readdir, rm, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { hasEnded, isOfThisComputer, MARK_PATTERN } from '../files/owner-mark.ts';
import { inTurn } from '../files/take-turn.ts';
import { PART_NAME, readManifest } from './manifest.ts';
import { ASIDE, MAPS, WORK } from './shelf-folder.ts';

const WORK_NAME = new RegExp(`^(${MARK_PATTERN})-[0-9a-f-]{36}$`);
const DAY_MS = 24 * 3600 * 1000;
/** Of a program on another computer nothing is known; after a week it is not at it any more. */
const OLD_MS = 7 * DAY_MS;
const ASIDE_MS = 90 * DAY_MS;

/**
 * Deletes what programs that have ended left behind: work that was under way, files of maps since made anew,
 * and what was set aside ninety days ago. Folders whose manifest is damaged are left as they are. What the system will
 * not delete stays for the next time.
 */
export async function sweepShelf(shelf: string, nowMs: number): Promise<void> {
  for (const name of await namesIn(join(shelf, WORK))) {
    const mark = WORK_NAME.exec(name)?.[1];
    const path = join(shelf, WORK, name);
    if (mark === undefined) continue;
    if (hasEnded(mark) || (!isOfThisComputer(mark) && (await isOld(path, nowMs, OLD_MS))))
      await rm(path, { recursive: true, force: true }).catch(() => {});
  }
  for (const name of await namesIn(join(shelf, ASIDE))) {
    const path = join(shelf, ASIDE, name);
    if (await isOld(path, nowMs, ASIDE_MS)) await rm(path, { recursive: true, force: true }).catch(() => {});
  }
  for (const name of await namesIn(join(shelf, MAPS)))
    await sweepMap(join(shelf, MAPS, name)).catch(() => {});
}

async function sweepMap(folder: string): Promise<void> {
  const files = await namesIn(folder);
  const read = await readManifest(folder);
  if (read.kind === 'damaged') return;
  const named = read.kind === 'sound' ? read.manifest.parts.map(({ file }) => file) : [];
  if (read.kind === 'sound' && !files.some((name) => PART_NAME.test(name) && !named.includes(name))) return;
  await inTurn(folder, async () => {
    // once more, as another program may have put a map here meanwhile
    const now = await readManifest(folder);
    if (now.kind === 'damaged') return;
    const kept = now.kind === 'sound' ? now.manifest.parts.map(({ file }) => file) : [];
    for (const name of await namesIn(folder))
      if (PART_NAME.test(name) && !kept.includes(name)) await unlink(join(folder, name)).catch(() => {});
  });
}

/** By when it was last changed: a folder that was moved says when. */
async function isOld(path: string, nowMs: number, ageMs: number): Promise<boolean> {
  const found = await stat(path).catch(() => undefined);
  return found !== undefined && Math.abs(nowMs - Math.max(found.mtimeMs, found.ctimeMs)) > ageMs;
}

async function namesIn(folder: string): Promise<string[]> {
  return readdir(folder).catch(() => []);
}
