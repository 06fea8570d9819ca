import { existsSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import type { Item } from '../../../geo/library/item.ts';
import type { Kind, LibraryRecord } from '../../../geo/library/record.ts';
import { readIndex, writeIndex } from './index-file.ts';
import { knownRecords, type Looked } from './known-records.ts';
import { type Listing, listRecords, type RecordFile } from './list-records.ts';
import { saySlow, sayUnread, sayUnusable, sayVanished, type Unusable } from './say-library.ts';

/** The records of a library as they were last seen. */
export interface WatchedRecords {
  /** those of a kind, or all; sorted by id, deleted ones among them */
  items(kind?: Kind): readonly Item[];
  item(id: string): Item | undefined;
  refresh(kind?: Kind): Promise<void>;
  /** Takes in a record that this program has just written. */
  add(id: string, file: RecordFile, text: string): Promise<Item>;
  /** every version of an item that lies there, by its file's name */
  filesOf(id: string): readonly RecordFile[];
  /** The versions that a deleted item had. */
  before(item: Item): Promise<readonly (LibraryRecord & { readonly body: object })[]>;
  /** whether there was something, and now the folder is not there */
  isGone(): boolean;
  notices(): readonly string[];
}

interface Options {
  readonly folder: string;
  readonly records: string;
  readonly dataFolder: string;
  readonly waitMs?: number;
}

const WAIT_MS = 4000;

/** Reads the index, then looks at the folder itself. */
export async function watchRecords(options: Options): Promise<WatchedRecords> {
  const { folder, records, dataFolder, waitMs = WAIT_MS } = options;
  const known = knownRecords(records);
  const files = new Map<string, readonly RecordFile[]>();
  const looked = new Map<string, Looked>();
  /** known by the index alone, and looked at once somebody asks */
  const waiting = new Set<string>();
  /** written by this program: a shared disk may list them late */
  const ours = new Map<string, readonly RecordFile[]>();
  let strays: readonly Unusable[] = [];
  let place: readonly string[] = [];
  let changed = false;
  let scanning: Promise<void> = Promise.resolve();

  async function settle(id: string, found: readonly RecordFile[]): Promise<Looked> {
    files.set(id, found);
    waiting.delete(id);
    changed = true;
    const seen = await known.look(found);
    // while it was looked at another change may have come
    if (files.get(id) === found) looked.set(id, seen);
    return seen;
  }

  function lookedAt(id: string): Looked | undefined {
    if (waiting.delete(id)) {
      const seen = known.lookNow(files.get(id) ?? []);
      // one of which something must be read first comes with the next listing
      if (seen) looked.set(id, seen);
    }
    return looked.get(id);
  }

  /** Items from what was listed; what has not changed is not looked at again. */
  async function take(listing: Listing, beginning: string): Promise<void> {
    const found = new Map(listing.items);
    const unusable: Unusable[] = [];
    for (const path of listing.strays) {
      const read = await known.read(path);
      if (read.is !== 'record') unusable.push({ path, found: read });
      // of another kind it would stand there alone, without the rest of its item
      else if (read.record.id.startsWith(beginning))
        addTo(found, read.record.id, { name: read.name, parents: read.record.parents, path });
    }
    for (const [id, own] of ours) {
      if (!id.startsWith(beginning)) continue;
      const listed = new Set(found.get(id)?.map(({ path }) => path));
      const late = own.filter(({ path }) => !listed.has(path));
      for (const file of late) addTo(found, id, file);
      if (late.length === 0) ours.delete(id);
      else ours.set(id, late);
    }
    for (const id of files.keys())
      if (id.startsWith(beginning) && !found.has(id)) {
        files.delete(id);
        looked.delete(id);
        waiting.delete(id);
        changed = true;
      }
    for (const id of found.keys()) {
      // what this program has written since the folder was listed
      for (const file of ours.get(id) ?? []) addTo(found, id, file);
      const list = found.get(id) ?? [];
      const isSettled = waiting.has(id) || looked.get(id)?.unusable.length === 0;
      if (!isSettled || !isSame(files.get(id), list)) await settle(id, list);
    }
    if (beginning === '') strays = unusable;
  }

  async function scan(kind: Kind | undefined): Promise<void> {
    const beginning = kind === undefined ? '' : `${kind}-`;
    try {
      const listing = await listRecords(records, beginning);
      place = [];
      if (listing === undefined && isGone()) place = [sayVanished(folder)];
      else await take(listing ?? { items: new Map(), strays: [] }, beginning);
    } catch (error) {
      place = [sayUnread(folder, error)];
    }
    if (kind !== undefined || !changed || place.length > 0) return;
    changed = false;
    await writeIndex(dataFolder, folder, { items: files, texts: textsOfHeads() });
  }

  function textsOfHeads(): Map<string, string> {
    const texts = new Map<string, string>();
    for (const [id, list] of files) {
      const heads = looked.get(id)?.item?.heads;
      for (const { name, path } of list) {
        const text = heads === undefined || heads.includes(name) ? known.textOf(name) : undefined;
        if (text !== undefined) texts.set(path, text);
      }
    }
    return texts;
  }

  function isGone(): boolean {
    return files.size > 0 && !existsSync(folder);
  }

  async function refresh(kind?: Kind): Promise<void> {
    const done = scanning.then(() => scan(kind));
    scanning = done;
    const late = new AbortController();
    const slow = wait(waitMs, true, { signal: late.signal, ref: false }).catch(() => false);
    if (await Promise.race([done.then(() => false), slow])) place = [saySlow(folder)];
    late.abort();
  }

  async function before(item: Item): Promise<(LibraryRecord & { body: object })[]> {
    const found: (LibraryRecord & { body: object })[] = [];
    const seen = new Set<string>();
    const waiting = [...item.heads];
    for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
      if (seen.has(name)) continue;
      seen.add(name);
      const file = files.get(item.id)?.find((each) => each.name === name);
      if (file && known.record(name) === undefined) await known.read(file.path);
      const record = known.record(name);
      if (record?.body !== undefined) found.push({ ...record, body: record.body });
      else for (const parent of record?.parents ?? []) waiting.push(parent);
    }
    return found;
  }

  const index = await readIndex(dataFolder, folder);
  for (const [id, list] of index?.items ?? []) {
    const texts = list.flatMap(({ name, path }) => {
      const text = index?.texts.get(path);
      return text === undefined ? [] : [{ name, path, text }];
    });
    for (const { name, path, text } of texts) known.hold(name, path, text);
    const before = new Set(list.flatMap(({ parents }) => parents));
    const isWhole = list.every(({ name }) => before.has(name) || known.textOf(name) !== undefined);
    if (isWhole) files.set(id, list);
    if (isWhole) waiting.add(id);
    // what follows could not be used: what came before it is shown, until the folder has been listed
    else if (texts.length > 0) await settle(id, list);
  }
  changed = false;
  await refresh();
  return {
    items: (kind) =>
      [...files.keys()]
        .filter((id) => kind === undefined || id.startsWith(`${kind}-`))
        .sort()
        .flatMap((id) => lookedAt(id)?.item ?? []),
    item: (id) => lookedAt(id)?.item,
    refresh,
    async add(id, file, text) {
      known.take(file.path, text);
      ours.set(id, [...(ours.get(id) ?? []), file]);
      const found = new Map([[id, files.get(id) ?? []]]);
      addTo(found, id, file);
      const { item } = await settle(id, found.get(id) ?? []);
      if (!item) throw new Error(`${file.path} was written and cannot be read`);
      return item;
    },
    filesOf: (id) => files.get(id) ?? [],
    before,
    isGone,
    notices: () => [
      ...place,
      ...sayUnusable(folder, [...[...looked.values()].flatMap(({ unusable }) => unusable), ...strays]),
    ],
  };
}

function addTo(found: Map<string, readonly RecordFile[]>, id: string, file: RecordFile): void {
  const list = found.get(id) ?? [];
  if (!list.some(({ name, path }) => name === file.name && path === file.path))
    found.set(id, [...list, file]);
}

/** Whether the same files were listed, in whatever order. */
function isSame(one: readonly RecordFile[] | undefined, other: readonly RecordFile[]): boolean {
  if (one?.length !== other.length) return false;
  if (one.every(({ path }, i) => path === other[i]?.path)) return true;
  const paths = new Set(one.map(({ path }) => path));
  return other.every(({ path }) => paths.has(path));
}
