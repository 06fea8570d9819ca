import { basename, join } from 'node:path';
import { headsOf } from '../../../geo/library/heads.ts';
import { type Head, type Item, itemOf } from '../../../geo/library/item.ts';
import { type RecordRead, readRecord } from '../../../geo/library/read-record.ts';
import type { LibraryRecord } from '../../../geo/library/record.ts';
import { readBytes } from '../files/read-bytes.ts';
import { sha256Of } from '../files/sha256.ts';
import type { RecordFile } from './list-records.ts';

/** No record of ours is larger. */
export const RECORD_MAX_BYTES = 8 * 1024 * 1024;

/** What a file was found to be; `unreadable` with what the system said. */
export type Found = RecordRead | { readonly is: 'unreadable'; readonly say: string };

/** The newest versions of one item, and what of its files could not be used. */
export interface Looked {
  readonly item: Item | undefined;
  readonly unusable: readonly { readonly path: string; readonly found: Found }[];
}

/** Contents of records, each read once: a record never changes. */
export interface KnownRecords {
  /** Takes in a record's text. */
  take(path: string, text: string): RecordRead;
  /** Reads a file, unless it is known. */
  read(path: string): Promise<Found>;
  /** Keeps a text that is taken in once somebody wants the record: a library has many, and a start needs few. */
  hold(name: string, path: string, text: string): void;
  /** The newest versions among these files of one item; undefined where something must be read for that. */
  lookNow(files: readonly RecordFile[]): Looked | undefined;
  /** The same; reads what that needs. */
  look(files: readonly RecordFile[]): Promise<Looked>;
  /** A record that was taken in. */
  record(name: string): LibraryRecord | undefined;
  /** the text of a record that was taken in whole */
  textOf(name: string): string | undefined;
}

type Failed = Map<string, { readonly path: string; readonly found: Found }>;

/** @param folder of the records */
export function knownRecords(folder: string): KnownRecords {
  const whole = new Map<string, { readonly found: RecordRead; readonly text: string }>();
  const held = new Map<string, { readonly path: string; readonly text: string }>();

  function take(path: string, text: string): RecordRead {
    const found = readRecord(basename(path), text, sha256Of);
    if (found.is === 'record' || found.is === 'newer')
      if (found.name !== undefined) whole.set(found.name, { found, text });
    return found;
  }

  function foundAs(name: string): RecordRead | undefined {
    const waiting = held.get(name);
    if (waiting) {
      held.delete(name);
      take(waiting.path, waiting.text);
    }
    return whole.get(name)?.found;
  }

  async function read(path: string): Promise<Found> {
    const bytes = await readBytes(join(folder, path), 'record', RECORD_MAX_BYTES);
    if (bytes.ok) return take(path, Buffer.from(bytes.value).toString('utf8'));
    return bytes.error.code === 'too-large'
      ? { is: 'foreign' }
      : { is: 'unreadable', say: bytes.error.message };
  }

  function settle(
    files: readonly RecordFile[],
    failed: Failed,
  ): { looked: Looked } | { unread: readonly string[] } {
    const [only] = files;
    const sound = only && files.length === 1 ? record(only.name) : undefined;
    if (only && sound)
      return { looked: { item: itemOf([{ name: only.name, record: sound }], false), unusable: [] } };
    const parents = new Map(files.map((file) => [file.name, file.parents]));
    const { heads, unread } = headsOf(parents, (name) => {
      const found = foundAs(name);
      if (found?.is === 'record') return 'sound';
      return found || failed.has(name) ? 'unsound' : 'unread';
    });
    if (unread.length > 0) return { unread };
    for (const { name, path } of files) {
      const newer = whole.get(name)?.found;
      if (newer?.is === 'newer') failed.set(name, { path, found: newer });
    }
    const unusable = [...failed.values()];
    return { looked: { item: itemFrom(heads, unusable), unusable } };
  }

  function lookNow(files: readonly RecordFile[]): Looked | undefined {
    const settled = settle(files, new Map());
    return 'looked' in settled ? settled.looked : undefined;
  }

  async function look(files: readonly RecordFile[]): Promise<Looked> {
    const failed: Failed = new Map();
    for (;;) {
      const settled = settle(files, failed);
      if ('looked' in settled) return settled.looked;
      for (const name of settled.unread) await readAny(name, files, failed);
    }
  }

  /** The same record may lie there twice, as its copies do: one that is whole does. */
  async function readAny(name: string, files: readonly RecordFile[], failed: Failed): Promise<void> {
    for (const { path } of files.filter((file) => file.name === name)) {
      const found = await read(path);
      if (whole.has(name)) return;
      failed.set(name, { path, found });
    }
  }

  function record(name: string): LibraryRecord | undefined {
    const found = foundAs(name);
    return found?.is === 'record' ? found.record : undefined;
  }

  function itemFrom(names: readonly string[], unusable: Looked['unusable']): Item | undefined {
    const heads = names.flatMap((name): Head[] => {
      const found = record(name);
      return found ? [{ name, record: found }] : [];
    });
    const [first, ...others] = heads;
    if (first === undefined) return undefined;
    return itemOf(
      [first, ...others],
      unusable.some(({ found }) => found.is === 'newer'),
    );
  }

  return {
    take,
    hold: (name, path, text) => void held.set(name, { path, text }),
    read,
    lookNow,
    look,
    record,
    textOf: (name) => held.get(name)?.text ?? whole.get(name)?.text,
  };
}
