import { given } from '../given.ts';
import { type LibraryRecord, RECORD_FORMAT, RECORD_VERSION } from './record.ts';
import { nameOfHash, recordFile, type Sha256 } from './record-name.ts';

/** A record ready to be written. */
export interface WrittenRecord {
  readonly name: string;
  /** what its file is called */
  readonly file: string;
  readonly text: string;
}

/** Puts a record into the bytes that are kept: the same record gives the same bytes, and so the same name. */
export function writeRecord(record: LibraryRecord, sha256: Sha256): WrittenRecord {
  const { kind, id, made, body } = record;
  const parents = [...record.parents].sort();
  const content = body === undefined ? { removed: true } : { body };
  const text = `${JSON.stringify(
    inOrder({ format: RECORD_FORMAT, version: RECORD_VERSION, kind, id, parents, made, ...content }),
  )}\n`;
  const name = nameOfHash(sha256(text));
  return { name, file: recordFile(parents, name), text };
}

/** Whether two bodies say the same, whatever the order of their members. */
export function sameContent(one: unknown, other: unknown): boolean {
  return orderedText(one) === orderedText(other);
}

/** JSON that is the same for the same content, in whatever order its members came. */
export function orderedText(value: unknown): string {
  return JSON.stringify(inOrder(value));
}

/** The same value with the members of every object in the order of their names. */
function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== 'object' || value === null) return value;
  const members = Object.entries(given(value)).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(members.map(([name, each]) => [name, inOrder(each)]));
}
