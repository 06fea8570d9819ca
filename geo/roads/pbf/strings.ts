import type { Tags } from '../roads.ts';
import { setTag } from '../set-tag.ts';
import { type Cursor, damaged } from './cursor.ts';
import type { Unpack } from './unpack.ts';

/** A block's strings, decoded when first asked for. */
export class StringTable {
  private readonly bytes: Uint8Array;
  private readonly from: number[] = [];
  private readonly to: number[] = [];
  private readonly texts: (string | undefined)[] = [];
  private readonly unpack: Unpack;

  constructor(cursor: Cursor, unpack: Unpack) {
    this.bytes = cursor.bytes;
    this.unpack = unpack;
    while (cursor.next()) {
      if (cursor.field !== 1) {
        cursor.skip();
        continue;
      }
      const length = cursor.length();
      this.from.push(cursor.pos);
      cursor.pos += length;
      this.to.push(cursor.pos);
      this.texts.push(undefined);
    }
  }

  get(index: number): string {
    const known = this.texts[index];
    if (known !== undefined) return known;
    const from = this.from[index];
    if (from === undefined) throw damaged('a text number outside its table');
    const text = this.unpack.text(this.bytes.subarray(from, this.to[index]));
    this.texts[index] = text;
    return text;
  }

  tags(keys: ArrayLike<number>, values: ArrayLike<number>, count: number): Tags {
    const tags: Record<string, string> = {};
    for (let i = 0; i < count; i++) setTag(tags, this.get(keys[i]!), this.get(values[i]!));
    return tags;
  }
}
