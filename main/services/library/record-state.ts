import type { Item } from '../../../geo/library/item.ts';
import type { LibraryRecord } from '../../../geo/library/record.ts';
import type { LibraryIndex } from './index-file.ts';
import type { KnownRecords, Looked } from './known-records.ts';
import type { Listing, RecordFile } from './list-records.ts';
import type { Unusable } from './say-library.ts';

/** What a program knows of a library's records. */
export interface RecordState {
  readonly known: KnownRecords;
  /** by the item's id */
  readonly files: Map<string, readonly RecordFile[]>;
  readonly looked: Map<string, Looked>;
  /** items known by the index alone, looked at once somebody asks */
  readonly waiting: Set<string>;
  /** written by this program: a shared disk may list them late */
  readonly ours: Map<string, readonly RecordFile[]>;
  /** files that are in no item */
  strays: readonly Unusable[];
  /** since the index was written */
  changed: boolean;
}

/** Nothing is known yet. */
export function noRecords(known: KnownRecords): RecordState {
  return {
    known,
    files: new Map(),
    looked: new Map(),
    waiting: new Set(),
    ours: new Map(),
    strays: [],
    changed: false,
  };
}

/** Takes in what this computer last saw. */
export async function takeIndex(state: RecordState, index: LibraryIndex): Promise<void> {
  const { known, files, waiting } = state;
  for (const [id, list] of index.items) {
    const texts = list.flatMap(({ name, path }) => {
      const text = index.texts.get(path);
      return text === undefined ? [] : [{ name, path, text }];
    });
    for (const { name, path, text } of texts) known.hold(name, path, text);
    const before = new Set(list.flatMap(({ parents }) => parents));
    const isWhole = list.every(({ name }) => before.has(name) || known.textOf(name) !== undefined);
    if (isWhole) files.set(id, list);
    if (isWhole) waiting.add(id);
    // what follows could not be used: what came before it is shown, until the folder has been listed
    else if (texts.length > 0) await settle(state, id, list);
  }
  state.changed = false;
}

/**
 * Items from what was listed; what has not changed is not looked at again.
 * @param beginning what the ids begin with that were listed
 */
export async function takeListing(state: RecordState, listing: Listing, beginning: string): Promise<void> {
  const { files, looked, waiting, ours } = state;
  const found = new Map(listing.items);
  const unusable = await takeStrays(state, listing.strays, { found, beginning });
  forgetListed(ours, found, beginning);
  for (const id of files.keys())
    if (id.startsWith(beginning) && !found.has(id) && !ours.has(id)) {
      for (const kept of [files, looked, waiting]) kept.delete(id);
      state.changed = true;
    }
  for (const id of new Set([...found.keys(), ...ours.keys()])) {
    if (!id.startsWith(beginning)) continue;
    // what this program has written since the folder was listed, or what a shared disk does not list yet
    for (const file of ours.get(id) ?? []) addTo(found, id, file);
    const list = found.get(id) ?? [];
    const isSettled = waiting.has(id) || looked.get(id)?.unusable.length === 0;
    if (!isSettled || !isSame(files.get(id), list)) await settle(state, id, list);
  }
  if (beginning === '') state.strays = unusable;
}

/** Files under other names than ours are told by their content. */
async function takeStrays(
  { known }: RecordState,
  paths: readonly string[],
  into: { readonly found: Map<string, readonly RecordFile[]>; readonly beginning: string },
): Promise<Unusable[]> {
  const unusable: Unusable[] = [];
  for (const path of paths) {
    const read = await known.read(path);
    if (read.is !== 'record') unusable.push({ path, found: read });
    // of another kind it would stand there alone, without the rest of its item
    else if (read.record.id.startsWith(into.beginning))
      addTo(into.found, read.record.id, { name: read.name, parents: read.record.parents, path });
  }
  return unusable;
}

function forgetListed(ours: RecordState['ours'], found: Listing['items'], beginning: string): void {
  for (const [id, own] of ours) {
    if (!id.startsWith(beginning)) continue;
    const listed = new Set(found.get(id)?.map(({ path }) => path));
    const late = own.filter(({ path }) => !listed.has(path));
    if (late.length === 0) ours.delete(id);
    else ours.set(id, late);
  }
}

/** Takes in a record that this program has just written. */
export async function takeOwn(
  state: RecordState,
  id: string,
  { file, text }: { readonly file: RecordFile; readonly text: string },
): Promise<Item> {
  state.known.take(file.path, text);
  state.ours.set(id, [...(state.ours.get(id) ?? []), file]);
  const found = new Map([[id, state.files.get(id) ?? []]]);
  addTo(found, id, file);
  const { item } = await settle(state, id, found.get(id) ?? []);
  if (!item) throw new Error(`${file.path} was written and cannot be read`);
  return item;
}

async function settle(state: RecordState, id: string, found: readonly RecordFile[]): Promise<Looked> {
  // until it has been looked at anew, what was known of it is shown
  lookedAt(state, id);
  state.files.set(id, found);
  state.waiting.delete(id);
  state.changed = true;
  const seen = await state.known.look(found);
  // while it was looked at another change may have come
  if (state.files.get(id) === found) state.looked.set(id, seen);
  return seen;
}

/** An item as it is known; undefined for one of which nothing can be used. */
export function lookedAt({ known, files, looked, waiting }: RecordState, id: string): Looked | undefined {
  if (waiting.delete(id)) {
    const seen = known.lookNow(files.get(id) ?? []);
    // one of which something must be read first comes with the next listing
    if (seen) looked.set(id, seen);
  }
  return looked.get(id);
}

/** For the index: the texts of the newest versions, by path; of an item of which nothing can be used, none. */
export function textsOfHeads({ known, files, looked, waiting }: RecordState): Map<string, string> {
  const texts = new Map<string, string>();
  for (const [id, list] of files) {
    const heads = looked.get(id)?.item?.heads;
    if (heads === undefined && !waiting.has(id)) continue;
    for (const { name, path } of list) {
      const text = heads === undefined || heads.includes(name) ? known.textOf(name) : undefined;
      if (text !== undefined) texts.set(path, text);
    }
  }
  return texts;
}

/** A version that holds something. */
export type Filled = LibraryRecord & { readonly body: object };

/** The versions that a deleted item had; reads them where they are not known. */
export async function versionsBefore({ known, files }: RecordState, item: Item): Promise<Filled[]> {
  const found: Filled[] = [];
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
