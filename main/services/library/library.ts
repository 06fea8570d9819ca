import type { Item } from '../../../geo/library/item.ts';
import type { Body, Kind } from '../../../geo/library/record.ts';
import type { Result } from '../../../geo/result.ts';

/** A change of one item. */
export interface Put<K extends Kind> {
  readonly kind: K;
  readonly id: string;
  readonly body: Body<K>;
  /**
   * the versions that it takes the place of, as they were seen by whoever made the change: what else there is stays
   * beside it; without them all that is known now
   */
  readonly over?: readonly string[];
  /** ISO 8601; the clock's where left out */
  readonly made?: string;
}

/** A file kept beside the records under the hash of its bytes. */
export type KeptIn = 'gpx' | 'handed';

/**
 * The firm's library: drives, vehicles, loads, notes and what was handed out, in one folder that may lie on a shared
 * disk or be brought together by a service. Nothing in it ever changes; a change is a record more. Two computers at
 * once lose no edit: both are kept, and an item then has two versions until a person has chosen.
 */
export interface Library {
  /** where it lies */
  readonly folder: string;
  /** What is there, as last looked at; without what is deleted. Sorted by id. */
  list<K extends Kind>(kind: K): readonly Item<K>[];
  /** What is deleted and can be had back: of one kind, or all. */
  bin(kind?: Kind): readonly Item[];
  /** One item, deleted or not. */
  find<K extends Kind>(kind: K, id: string): Item<K> | undefined;
  /** Looks again at what lies there: everything, or the items of one kind. What goes wrong is told by `notices`. */
  refresh(kind?: Kind): Promise<void>;
  /** Keeps a change; when it returns, the change is on the disk. It deletes nothing, and brings back what is deleted. */
  put<K extends Kind>(change: Put<K>): Promise<Result<Item<K>>>;
  /** Deletes an item: into the bin, where it stays for 90 days. */
  remove(item: Pick<Item, 'kind' | 'id' | 'heads'>): Promise<Result<undefined>>;
  /** What a deleted item held; nothing where that has been thrown away. */
  before(item: Item): Promise<readonly unknown[]>;
  /** Brings back a deleted item as it was. */
  restore(id: string): Promise<Result<Item>>;
  /** Of an item with several versions keeps one. @param version its name */
  choose(id: string, version: string): Promise<Result<Item>>;
  /** Throws away what has lain in the bin for 90 days. */
  sweep(): Promise<void>;
  /** Keeps a file byte for byte. @returns its SHA-256, by which it is found again */
  keepBytes(where: KeptIn, bytes: Uint8Array): Promise<Result<string>>;
  /** Reads such a file, and holds it against its hash. */
  readBytes(where: KeptIn, sha256: string): Promise<Result<Uint8Array>>;
  /** Where such a file lies. */
  pathOf(where: KeptIn, sha256: string): string;
  /** What should be known of the folder and what lies there: a sentence each. */
  notices(): readonly string[];
}
