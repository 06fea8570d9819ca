import { existsSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import type { Item } from '../../../geo/library/item.ts';
import type { Kind } from '../../../geo/library/record.ts';
import { readIndex, writeIndex } from './index-file.ts';
import { knownRecords } from './known-records.ts';
import { type Listing, listRecords, type RecordFile } from './list-records.ts';
import {
  type Filled,
  lookedAt,
  noRecords,
  takeIndex,
  takeListing,
  takeOwn,
  textsOfHeads,
  versionsBefore,
} from './record-state.ts';
import { sayEmptied, saySlow, sayUnread, sayUnusable, sayVanished } from './say-library.ts';

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
  before(item: Item): Promise<readonly Filled[]>;
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

/** Where one kind alone was listed, others may be there. */
function holdsNothing(listing: Listing | undefined, kind: Kind | undefined): boolean {
  return listing === undefined || (kind === undefined && listing.items.size + listing.strays.length === 0);
}

/** Reads the index, then looks at the folder itself. */
export async function watchRecords(options: Options): Promise<WatchedRecords> {
  const { folder, records, dataFolder, waitMs = WAIT_MS } = options;
  const state = noRecords(knownRecords(records));
  const { files, looked } = state;
  let place: readonly string[] = [];
  /** there was something, and now there is nothing */
  let isEmptied = false;
  let scanning: Promise<void> = Promise.resolve();
  /** looks at the folder that have not come to their end in time, and still go on */
  let waitedFor = 0;
  const isGone = () => files.size > 0 && !existsSync(folder);

  async function scan(kind: Kind | undefined): Promise<void> {
    const beginning = kind === undefined ? '' : `${kind}-`;
    try {
      const listing = await listRecords(records, beginning);
      place = [];
      if (listing === undefined && isGone()) place = [sayVanished(folder)];
      else {
        isEmptied = holdsNothing(listing, kind) ? isEmptied || files.size > 0 : false;
        if (isEmptied) place = [sayEmptied(folder)];
        await takeListing(state, listing ?? { items: new Map(), strays: [] }, beginning);
      }
    } catch (error) {
      place = [sayUnread(folder, error)];
    }
    if (kind !== undefined || !state.changed || place.length > 0) return;
    state.changed = false;
    await writeIndex(dataFolder, folder, { items: files, texts: textsOfHeads(state) });
  }

  async function refresh(kind?: Kind): Promise<void> {
    const done = scanning.then(() => scan(kind));
    scanning = done;
    const late = new AbortController();
    const slow = wait(waitMs, true, { signal: late.signal, ref: false }).catch(() => false);
    if (await Promise.race([done.then(() => false), slow])) {
      waitedFor++;
      const came = () => {
        waitedFor--;
      };
      done.then(came, came);
    }
    late.abort();
  }

  const index = await readIndex(dataFolder, folder);
  if (index) await takeIndex(state, index);
  await refresh();
  return {
    items: (kind) =>
      [...files.keys()]
        .filter((id) => kind === undefined || id.startsWith(`${kind}-`))
        .sort()
        .flatMap((id) => lookedAt(state, id)?.item ?? []),
    item: (id) => lookedAt(state, id)?.item,
    refresh,
    add: (id, file, text) => takeOwn(state, id, { file, text }),
    filesOf: (id) => files.get(id) ?? [],
    before: (item) => versionsBefore(state, item),
    isGone,
    notices: () => [
      ...(waitedFor > 0 ? [saySlow(folder)] : []),
      ...place,
      ...sayUnusable(folder, [...[...looked.values()].flatMap(({ unusable }) => unusable), ...state.strays]),
    ],
  };
}
