import type { Body, Kind, LibraryRecord } from './record.ts';
import { sameContent } from './write-record.ts';

/** One of the newest versions of an item. */
export interface Version<K extends Kind> {
  /** the record's name; of several that say the same, the first */
  readonly name: string;
  /** as the computer it was made on had it; '' where nobody tells */
  readonly made: string;
  readonly body: Body<K>;
}

/** One thing of the library as it stands now. */
export interface Item<K extends Kind = Kind> {
  readonly id: string;
  readonly kind: K;
  /** one; more where it was changed in two places at once: both are kept, and a person chooses. None: deleted */
  readonly versions: readonly Version<K>[];
  /** all that a change made now takes the place of */
  readonly heads: readonly string[];
  /** where it was deleted (in one of the places): when */
  readonly deleted?: string;
  /** there is a version of it that this program does not understand */
  readonly newer: boolean;
}

/** A record with its name. */
export interface Head {
  readonly name: string;
  readonly record: LibraryRecord;
}

/**
 * An item from its newest usable versions.
 * @param heads sorted by name; at least one
 * @param newer whether others were left out that this program does not understand
 */
export function itemOf(heads: readonly [Head, ...Head[]], newer: boolean): Item {
  const [{ record: first }] = heads;
  const versions: Version<Kind>[] = [];
  for (const { name, record } of heads)
    if (record.body !== undefined && !versions.some(({ body }) => sameContent(body, record.body)))
      versions.push({ name, made: record.made, body: record.body });
  const deletions = heads.flatMap(({ record }) => (record.body === undefined ? [record.made] : []));
  return {
    id: first.id,
    kind: first.kind,
    versions,
    heads: heads.map(({ name }) => name),
    ...(deletions.length === 0 ? {} : { deleted: deletions.sort().at(-1) ?? '' }),
    newer,
  };
}

/** Whether an item is of a kind. */
export function isOfKind<K extends Kind>(item: Item, kind: K): item is Item<K> {
  return item.kind === kind;
}
