import { hash } from 'node:crypto';
import { basename, join } from 'node:path';
import { headsOf } from '../../../geo/library/heads.ts';
import { type Head, type Item, itemOf } from '../../../geo/library/item.ts';
import { type RecordRead, readRecord } from '../../../geo/library/read-record.ts';
import type { LibraryRecord } from '../../../geo/library/record.ts';
import { readBytes } from '../files/read-bytes.ts';
import type { RecordFile } from './list-records.ts';

/** No record of ours is larger. */
export const RECORD_MAX_BYTES = 8 * 1024 * 1024;

export function sha256Of(content: string | Uint8Array): string {
  return hash('sha256', content);
}

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
  /** The newest versions among these files of one item; reads what that needs. */
  look(files: readonly RecordFile[]): Promise<Looked>;
  /** A record that was taken in. */
  record(name: string): LibraryRecord | undefined;
  /** the text of a record that was taken in whole */
  textOf(name: string): string | undefined;
}

/** @param folder of the records */
export function knownRecords(folder: string): KnownRecords {
  const whole = new Map<string, { readonly found: RecordRead; readonly text: string }>();

  function take(path: string, text: string): RecordRead {
    const found = readRecord(basename(path), text, sha256Of);
    if (found.is === 'record' || found.is === 'newer')
      if (found.name !== undefined) whole.set(found.name, { found, text });
    return found;
  }

  async function read(path: string): Promise<Found> {
    const bytes = await readBytes(join(folder, path), 'record', RECORD_MAX_BYTES);
    if (bytes.ok) return take(path, Buffer.from(bytes.value).toString('utf8'));
    return bytes.error.code === 'too-large'
      ? { is: 'foreign' }
      : { is: 'unreadable', say: bytes.error.message };
  }

  async function look(files: readonly RecordFile[]): Promise<Looked> {
    const [only] = files;
    const sound = only && files.length === 1 ? record(only.name) : undefined;
    if (only && sound) return { item: itemOf([{ name: only.name, record: sound }], false), unusable: [] };
    const parents = new Map(files.map((file) => [file.name, file.parents]));
    const failed = new Map<string, { path: string; found: Found }>();
    const soundness = (name: string) =>
      whole.get(name)?.found.is === 'record' ? 'sound' : isKnownBad(name) ? 'unsound' : 'unread';
    const isKnownBad = (name: string) => failed.has(name) || whole.has(name);
    for (;;) {
      const { heads, unread } = headsOf(parents, soundness);
      const [first] = unread;
      if (first === undefined) {
        for (const { name, path } of files) {
          const newer = whole.get(name)?.found;
          if (newer?.is === 'newer') failed.set(name, { path, found: newer });
        }
        return { item: itemFrom(heads, [...failed.values()]), unusable: [...failed.values()] };
      }
      for (const name of unread) await readAny(name, files, failed);
    }
  }

  /** The same record may lie there twice, as its copies do: one that is whole does. */
  async function readAny(
    name: string,
    files: readonly RecordFile[],
    failed: Map<string, { path: string; found: Found }>,
  ): Promise<void> {
    for (const { path } of files.filter((file) => file.name === name)) {
      const found = await read(path);
      if (whole.has(name)) return;
      failed.set(name, { path, found });
    }
  }

  function record(name: string): LibraryRecord | undefined {
    const found = whole.get(name)?.found;
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

  return { take, read, look, record, textOf: (name) => whole.get(name)?.text };
}
