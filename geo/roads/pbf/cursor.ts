import { Refusal } from '../refusal.ts';

const TWO_32 = 4_294_967_296;

/** The refusal of a file whose bytes cannot be what the format says. @param what the fault, after "damaged:" */
export function damaged(what: string): Refusal {
  return new Refusal('map.damaged', what);
}

/** Reads protocol buffer fields from a stretch of bytes; every read stays inside it or refuses. */
export class Cursor {
  readonly bytes: Uint8Array;
  pos: number;
  readonly end: number;
  /** of the field last entered by `next` */
  field = 0;
  wire = 0;

  constructor(bytes: Uint8Array, pos = 0, end = bytes.length) {
    this.bytes = bytes;
    this.pos = pos;
    this.end = end;
  }

  /** Enters the next field; false at the end. */
  next(): boolean {
    if (this.pos >= this.end) return false;
    const key = this.uint();
    this.field = key >>> 3;
    this.wire = key & 7;
    if (this.field === 0) throw damaged('a field number of 0');
    return true;
  }

  /** Unsigned varint, exact up to 2^53. */
  uint(): number {
    const { bytes } = this;
    let byte = this.byte();
    if (byte < 0x80) return byte;
    let low = byte & 0x7f;
    for (let shift = 7; shift < 28; shift += 7) {
      byte = bytes[this.pos++]!;
      low |= (byte & 0x7f) << shift;
      if (byte < 0x80) return this.pos <= this.end ? low : this.cut();
    }
    let value = low;
    for (let scale = 2 ** 28; scale <= 2 ** 63; scale *= 128) {
      byte = this.byte();
      value += (byte & 0x7f) * scale;
      if (byte < 0x80) {
        if (value > Number.MAX_SAFE_INTEGER) throw damaged('a number beyond 2^53');
        return value;
      }
    }
    throw damaged('a number of more than ten bytes');
  }

  /** Two's complement varint (`int64`, `int32`), exact within ±2^53. */
  int(): number {
    let low = 0;
    let high = 0;
    for (let shift = 0; shift < 70; shift += 7) {
      const byte = this.byte();
      const bits = byte & 0x7f;
      if (shift < 28) low |= bits << shift;
      else if (shift === 28) {
        low |= bits << 28;
        high = bits >> 4;
      } else high |= bits << (shift - 32);
      if (byte < 0x80) {
        const value = (high | 0) * TWO_32 + (low >>> 0);
        if (!Number.isSafeInteger(value)) throw damaged('an id beyond 2^53');
        return value;
      }
    }
    throw damaged('a number of more than ten bytes');
  }

  /** Length of a length-delimited field, checked to lie inside. */
  length(): number {
    if (this.wire !== 2) throw damaged(`field ${this.field} of the wrong type`);
    const length = this.uint();
    if (length > this.end - this.pos) throw damaged(`field ${this.field} longer than what holds it`);
    return length;
  }

  /** Enters a length-delimited field as a cursor of its own and steps over it. */
  inside(): Cursor {
    const length = this.length();
    const start = this.pos;
    this.pos += length;
    return new Cursor(this.bytes, start, this.pos);
  }

  /** A length-delimited field's bytes, not copied. */
  view(): Uint8Array {
    const length = this.length();
    this.pos += length;
    return this.bytes.subarray(this.pos - length, this.pos);
  }

  /** The varint of a field that must be one. */
  number(): number {
    if (this.wire !== 0) throw damaged(`field ${this.field} of the wrong type`);
    return this.uint();
  }

  /** The same of an `int64` or `int32` field. */
  signed(): number {
    if (this.wire !== 0) throw damaged(`field ${this.field} of the wrong type`);
    return this.int();
  }

  /** The same of a `sint64` field; exact within ±2^52. */
  zigzag(): number {
    if (this.wire !== 0) throw damaged(`field ${this.field} of the wrong type`);
    const value = this.uint();
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  skip(): void {
    if (this.wire === 0) {
      while (this.byte() >= 0x80);
      return;
    }
    if (this.wire === 1) this.pos += 8;
    else if (this.wire === 2) this.view();
    else if (this.wire === 5) this.pos += 4;
    else throw damaged(`field ${this.field} of an unknown type`);
    if (this.pos > this.end) this.cut();
  }

  private byte(): number {
    if (this.pos >= this.end) this.cut();
    return this.bytes[this.pos++]!;
  }

  private cut(): never {
    throw damaged('a number cut off');
  }
}
