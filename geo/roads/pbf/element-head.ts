import type { Tags } from '../roads.ts';
import type { PackedTags, TextTable } from '../sink.ts';
import { type Cursor, damaged } from './cursor.ts';
import { saysDeleted } from './info.ts';
import { newRoom, packedUints } from './packed.ts';
import type { StringTable } from './strings.ts';

/** One that is used over and over. */
export interface PackedList extends PackedTags {
  texts: TextTable;
  keys: Float64Array;
  values: Float64Array;
  count: number;
}

/**
 * Fields 1 to 4 of a message, which ways and relations have alike: id, keys, values, info. One is used over and over:
 * what it holds is good until the next `clear`.
 */
export class ElementHead {
  id = Number.NaN;
  deleted = false;
  private readonly keys = newRoom();
  private readonly values = newRoom();
  private keyCount = 0;
  private valueCount = 0;

  clear(): void {
    this.id = Number.NaN;
    this.deleted = false;
    this.keyCount = 0;
    this.valueCount = 0;
  }

  /** Reads the field the cursor stands at, if it is one of these. @returns whether it was */
  take(cursor: Cursor): boolean {
    const { field } = cursor;
    if (field === 1) this.id = cursor.signed();
    else if (field === 2) this.keyCount = packedUints(cursor, this.keys);
    else if (field === 3) this.valueCount = packedUints(cursor, this.values);
    else if (field === 4) this.deleted = saysDeleted(cursor.inside());
    else return false;
    return true;
  }

  /** Throws a Refusal where the element, now read to its end, has no id or a key too many. */
  check(kind: 'way' | 'relation'): void {
    if (Number.isNaN(this.id)) throw damaged(`a ${kind} without an id`);
    if (this.keyCount !== this.valueCount) throw damaged(`${kind} ${this.id} with a key and no value`);
  }

  hasKey(strings: StringTable, fits: (key: string) => boolean): boolean {
    for (let i = 0; i < this.keyCount; i++) if (fits(strings.get(this.keys.values[i]!))) return true;
    return false;
  }

  /** Says in `into` where the tags stand. */
  pack(texts: StringTable, into: PackedList): void {
    into.texts = texts;
    into.keys = this.keys.values;
    into.values = this.values.values;
    into.count = this.keyCount;
  }

  tags(strings: StringTable): Tags {
    return strings.tags(this.keys.values, this.values.values, this.keyCount);
  }
}
