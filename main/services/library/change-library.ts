import { join } from 'node:path';
import { sayFault } from '../../../geo/document/say-fault.ts';
import { isDeleted } from '../../../geo/library/bin.ts';
import { type Item, isOfKind } from '../../../geo/library/item.ts';
import { bodyFault, type Kind, type LibraryRecord } from '../../../geo/library/record.ts';
import { isItemId, PARENTS_MOST } from '../../../geo/library/record-name.ts';
import { writeRecord } from '../../../geo/library/write-record.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { sha256Of } from '../files/sha256.ts';
import { RECORD_MAX_BYTES } from './known-records.ts';
import type { Library, Put } from './library.ts';
import { sayUnwritten, sayVanished } from './say-library.ts';
import type { WatchedRecords } from './watched-records.ts';
import { writeOnce } from './write-once.ts';

/** A library that is open. */
export interface OpenedLibrary {
  readonly folder: string;
  /** where its records lie */
  readonly records: string;
  /** where they are written first */
  readonly passing: string;
  readonly watched: WatchedRecords;
  now(): Date;
}

/** The changes of a library; each is one record more. */
export function changesOf(opened: OpenedLibrary): Pick<Library, 'put' | 'remove' | 'restore' | 'choose'> {
  const { watched, now } = opened;

  async function put<K extends Kind>({ kind, id, body, over, made }: Put<K>): Promise<Result<Item<K>>> {
    const fault = bodyFault(kind, body);
    if (!isItemId(id) || fault) return refuseBody(kind, id, body, fault);
    const parents = over ?? watched.item(id)?.heads ?? [];
    const kept = await write(opened, { kind, id, parents, made: made ?? now().toISOString(), body });
    if (!kept.ok) return kept;
    if (isOfKind(kept.value, kind)) return ok(kept.value);
    throw new Error(`${id} is no ${kind}`);
  }

  return {
    put,
    async remove({ kind, id, heads }) {
      const done = await write(opened, { kind, id, parents: heads, made: now().toISOString() });
      return done.ok ? ok(undefined) : done;
    },
    async restore(id) {
      const item = watched.item(id);
      if (!item || !isDeleted(item))
        return fail('library.none', `Nothing called ${id} lies in the bin. Look at it again.`);
      let last: Result<Item> = fail(
        'library.thrown-away',
        `${id} has lain in the bin for so long that what it held is gone. Add it anew.`,
      );
      // as many versions as there were
      for (const { body } of await watched.before(item)) {
        last = await put({ kind: item.kind, id, body, over: item.heads });
        if (!last.ok) return last;
      }
      return last;
    },
    async choose(id, version) {
      const item = watched.item(id);
      const begun = item?.versions.filter(({ name }) => name.startsWith(version)) ?? [];
      const [chosen] = begun;
      if (!item || !chosen || version === '')
        return fail('library.none', `${id} has no version ${quote(version, 40)} now. Look at it again.`);
      if (begun.length > 1)
        return fail(
          'library.several',
          `${begun.length} versions of ${id} begin with ${quote(version, 40)}. Type more of the one you mean.`,
        );
      return put({ kind: item.kind, id, body: chosen.body, over: item.heads });
    },
  };
}

/** Writes a record; several where it joins more versions than the name of one can carry. */
async function write(
  { folder, records, passing, watched }: OpenedLibrary,
  item: LibraryRecord,
): Promise<Result<Item>> {
  if (watched.isGone()) return fail('library.gone', sayVanished(folder));
  try {
    let parents = item.parents;
    for (;;) {
      const part = parents.slice(0, PARENTS_MOST);
      const { name, file, text } = writeRecord({ ...item, parents: part }, sha256Of);
      if (Buffer.byteLength(text) > RECORD_MAX_BYTES) return refuseSize(item.id);
      const path = join(item.id, file);
      await writeOnce(join(records, path), text, passing);
      const kept = await watched.add(item.id, { path, name, parents: part }, text);
      parents = [name, ...parents.slice(PARENTS_MOST)];
      if (parents.length === 1) return ok(kept);
    }
  } catch (error) {
    return fail('not-saved', sayUnwritten(folder, error));
  }
}

function refuseBody(
  kind: Kind,
  id: string,
  body: unknown,
  fault: ReturnType<typeof bodyFault>,
): Result<never> {
  const why =
    fault === undefined ? `its id ${quote(id)} cannot be used` : sayFault(fault, body, { whole: 'it', kind });
  return fail('library.refused', `The ${kind} was not kept: ${why}. Correct it, and keep it again.`);
}

function refuseSize(id: string): Result<never> {
  return fail(
    'library.refused',
    `The change was not kept: ${id} would be larger than can be read again. Make it shorter.`,
  );
}
