import type { Tags } from '../roads.ts';
import { setTag } from '../set-tag.ts';
import type { TextTable } from '../sink.ts';
import { isSoundText } from '../sound-text.ts';
import { Cursor, damaged } from './cursor.ts';
import type { Unpack } from './unpack.ts';

/**
 * A block's strings, decoded when first asked for: until then each costs four bytes, however many a damaged or
 * hostile block holds. Only what is used must be sound, since names of mappers stand in the table too.
 */
export class StringTable implements TextTable {
  private readonly bytes: Uint8Array;
  private readonly end: number;
  private readonly unpack: Unpack;
  /** where each string's length stands */
  private at = new Uint32Array(1024);
  count = 0;
  private readonly texts: (string | undefined)[];

  constructor(cursor: Cursor, unpack: Unpack) {
    this.bytes = cursor.bytes;
    this.end = cursor.end;
    this.unpack = unpack;
    while (cursor.next()) {
      if (cursor.field === 1) this.note(cursor.pos);
      cursor.skip();
    }
    // beyond these, places are made only for what is used
    this.texts = new Array<undefined>(Math.min(this.count, 100_000));
  }

  /** Throws a Refusal for a number outside the table and for what is no text. */
  get(index: number): string {
    const known = this.texts[index];
    if (known !== undefined) return known;
    const text = this.unpack.text(this.bytesOf(index));
    if (text === undefined) throw damaged(`text ${index} of its table is not sound UTF-8`);
    if (!isSoundText(text)) throw damaged(`text ${index} of its table holds control characters`);
    this.texts[index] = text;
    return text;
  }

  /** UTF-8 as it stands in the file. */
  bytesOf(index: number): Uint8Array {
    if (!(index < this.count)) throw damaged('a text number outside its table');
    const cursor = new Cursor(this.bytes, this.at[index], this.end);
    cursor.wire = 2;
    return cursor.view();
  }

  tags(keys: ArrayLike<number>, values: ArrayLike<number>, count: number): Tags {
    const tags: Record<string, string> = {};
    for (let i = 0; i < count; i++) setTag(tags, this.get(keys[i]!), this.get(values[i]!));
    return tags;
  }

  private note(pos: number): void {
    if (this.count === this.at.length) {
      const larger = new Uint32Array(this.count * 2);
      larger.set(this.at);
      this.at = larger;
    }
    this.at[this.count++] = pos;
  }
}

/** A table of no texts. */
export function emptyTable(): StringTable {
  return new StringTable(new Cursor(new Uint8Array(0)), {
    inflate: (bytes) => bytes,
    text: () => undefined,
  });
}
