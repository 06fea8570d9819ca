import { readdir, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { isDeleted, isDue } from '../../../geo/library/bin.ts';
import { ancestorsOf, type Parents } from '../../../geo/library/heads.ts';
import { type Item, isOfKind } from '../../../geo/library/item.ts';
import { oldestFirst } from '../../../geo/library/oldest-first.ts';
import { largest } from '../../../geo/lists.ts';
import type { RecordFile } from './list-records.ts';
import type { WatchedRecords } from './watched-records.ts';

interface Swept {
  /** where the library lies, and its records in it */
  readonly folder: string;
  readonly records: string;
  readonly watched: WatchedRecords;
}

/**
 * Throws away what has lain in the bin for 90 days. That it was deleted stays on record, so that no other computer
 * brings it back unasked. Nothing goes while nothing has been changed for as long: by a clock that was put forward
 * everything would be due.
 */
export async function sweepBin({ folder, records, watched }: Swept, nowMs: number): Promise<void> {
  if (isDue(nowMs, newestMs(watched.items()))) return;
  const due = watched
    .items()
    .filter((item) => isDeleted(item) && isDue(nowMs, Date.parse(item.deleted ?? '')));
  let swept = false;
  for (const item of due) swept = (await sweepItem(item, records, watched)) || swept;
  // where something could not be read nobody knows which drive's file it names
  if (swept && watched.notices().length === 0) await sweepDrives(folder, watched, nowMs);
}

/** When something was last changed, by the clocks of the computers it was changed on; -Infinity where none tells. */
function newestMs(items: readonly Item[]): number {
  const told = items.flatMap(({ versions, deleted }) => [deleted ?? '', ...versions.map(({ made }) => made)]);
  const times = told.map((iso) => Date.parse(iso)).filter((ms) => !Number.isNaN(ms));
  return largest(times);
}

/**
 * What came before the deletion, and nothing else: a version that this program cannot read may have brought the item
 * back. The oldest first: what is cut off in between leaves no version that looks like the newest.
 */
async function sweepItem(item: Item, records: string, watched: WatchedRecords): Promise<boolean> {
  const all = watched.filesOf(item.id);
  const before = ancestorsOf(item.heads, parentsOf(all));
  const files = all.filter(({ name }) => before.has(name));
  if (files.length === 0) return false;
  try {
    for (const name of oldestFirst(parentsOf(files)))
      for (const { path } of files.filter((file) => file.name === name)) await unlink(join(records, path));
  } catch {
    // the rest goes another time
  }
  await watched.refresh(item.kind);
  return true;
}

function parentsOf(files: readonly RecordFile[]): Parents {
  return new Map(files.map((file) => [file.name, file.parents]));
}

/** Files of drives that no drive names, neither there nor in the bin. */
async function sweepDrives(folder: string, watched: WatchedRecords, nowMs: number): Promise<void> {
  const named = new Set<string>();
  for (const item of watched.items()) {
    if (!isOfKind(item, 'drive')) continue;
    for (const { body } of [...item.versions, ...(await watched.before(item))])
      if ('gpx' in body && typeof body.gpx === 'string') named.add(body.gpx);
  }
  const within = join(folder, 'gpx');
  for (const name of await readdir(within).catch(() => [])) {
    const sha256 = /^([0-9a-f]{64})\.gpx$/.exec(name)?.[1];
    if (sha256 === undefined || named.has(sha256)) continue;
    const path = join(within, name);
    const found = await stat(path).catch(() => undefined);
    // one added anew a moment ago is touched by it
    if (found && isDue(nowMs, found.mtimeMs)) await unlink(path).catch(() => {});
  }
}
