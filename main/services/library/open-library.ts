import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { isDeleted } from '../../../geo/library/bin.ts';
import { type Item, isOfKind } from '../../../geo/library/item.ts';
import { bodyFault, type Kind } from '../../../geo/library/record.ts';
import { isItemId, PARENTS_MOST } from '../../../geo/library/record-name.ts';
import { writeRecord } from '../../../geo/library/write-record.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { sweepPassing } from '../files/passing-files.ts';
import { keptBytes } from './kept-bytes.ts';
import { RECORD_MAX_BYTES, sha256Of } from './known-records.ts';
import type { Library, Put } from './library.ts';
import { sayUnwritten, sayVanished } from './say-library.ts';
import { sweepBin } from './sweep-bin.ts';
import { watchRecords } from './watched-records.ts';
import { writeOnce } from './write-once.ts';

export interface LibraryOptions {
  /** where the library lies */
  readonly folder: string;
  /** where this computer keeps its index */
  readonly dataFolder: string;
  now(): Date;
  /** for so long a disk is waited for; then what was last seen is shown, and the rest comes later */
  readonly waitMs?: number;
}

/** Opens a library; a folder that is not there yet is made by the first change. */
export async function openLibrary(options: LibraryOptions): Promise<Library> {
  const { folder, now } = options;
  const records = join(folder, 'records');
  const passing = join(folder, 'passing');
  const watched = await watchRecords({ ...options, records });
  void sweepPassing(passing, now().getTime());

  async function write(item: Parameters<typeof writeRecord>[0]): Promise<Result<Item>> {
    if (watched.isGone() && !existsSync(folder)) return fail('library.gone', sayVanished(folder));
    try {
      let parents = item.parents;
      for (;;) {
        const part = parents.slice(0, PARENTS_MOST);
        const written = writeRecord({ ...item, parents: part }, sha256Of);
        if (Buffer.byteLength(written.text) > RECORD_MAX_BYTES)
          return fail(
            'library.refused',
            `The change was not kept: ${item.id} would be larger than can be read again. Make it shorter.`,
          );
        await writeOnce(join(records, item.id, written.file), written.text, passing);
        const path = join(item.id, written.file);
        const kept = await watched.add(item.id, { path, name: written.name, parents: part }, written.text);
        // more versions than one name can carry are joined in steps
        parents = [written.name, ...parents.slice(PARENTS_MOST)];
        if (parents.length === 1) return ok(kept);
      }
    } catch (error) {
      return fail('not-saved', sayUnwritten(folder, error));
    }
  }

  async function put<K extends Kind>({ kind, id, body, over, made }: Put<K>): Promise<Result<Item<K>>> {
    const fault = bodyFault(kind, body);
    if (!isItemId(id) || fault)
      return fail(
        'library.refused',
        `The ${kind} was not kept: ${fault?.path.join('.') ?? 'its id'} cannot be used (${fault?.message ?? id}).`,
      );
    const parents = over ?? watched.item(id)?.heads ?? [];
    const kept = await write({ kind, id, parents, made: made ?? now().toISOString(), body });
    if (!kept.ok) return kept;
    if (isOfKind(kept.value, kind)) return ok(kept.value);
    throw new Error(`${id} is no ${kind}`);
  }

  async function remove({
    kind,
    id,
    heads,
  }: Pick<Item, 'kind' | 'id' | 'heads'>): Promise<Result<undefined>> {
    const done = await write({ kind, id, parents: heads, made: now().toISOString() });
    return done.ok ? ok(undefined) : done;
  }

  async function restore(id: string): Promise<Result<Item>> {
    const item = watched.item(id);
    if (!item || !isDeleted(item)) return fail('library.none', `Nothing called ${id} lies in the bin.`);
    const before = await watched.before(item);
    let last: Result<Item> = fail(
      'library.thrown-away',
      `${id} has lain in the bin for so long that what it held is gone. Add it anew.`,
    );
    // as many versions as there were
    for (const { body } of before) {
      last = await put({ kind: item.kind, id, body, over: item.heads });
      if (!last.ok) return last;
    }
    return last;
  }

  async function choose(id: string, version: string): Promise<Result<Item>> {
    const item = watched.item(id);
    const chosen = item?.versions.find(({ name }) => name === version);
    if (!item || !chosen)
      return fail('library.none', `${id} has no version ${version} now. Look at it again.`);
    return put({ kind: item.kind, id, body: chosen.body, over: item.heads });
  }

  return {
    folder,
    list: (kind) =>
      watched
        .items(kind)
        .filter((item) => isOfKind(item, kind))
        .filter((item) => !isDeleted(item)),
    bin: (kind) => watched.items(kind).filter(isDeleted),
    find(kind, id) {
      const item = watched.item(id);
      return item && isOfKind(item, kind) ? item : undefined;
    },
    before: async (item) => (await watched.before(item)).map(({ body }) => body),
    refresh: watched.refresh,
    put,
    remove,
    restore,
    choose,
    sweep: () => sweepBin({ folder, records, watched }, now().getTime()),
    ...keptBytes(folder, passing),
    notices: watched.notices,
  };
}
