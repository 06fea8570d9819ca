/** Numbers written one after another into bytes that grow as needed. */
export class Writer {
  private bytes: Uint8Array<ArrayBuffer>;
  private view: DataView;
  length = 0;

  constructor(roomBytes = 4096) {
    this.bytes = new Uint8Array(roomBytes);
    this.view = new DataView(this.bytes.buffer);
  }

  /** Unsigned varint, seven bits a byte, lowest first; exact up to 2^53. */
  uint(value: number): void {
    this.room(8);
    const { bytes } = this;
    let at = this.length;
    let rest = value;
    while (rest >= 0x10000000) {
      bytes[at++] = (rest % 0x80) | 0x80;
      rest = Math.floor(rest / 0x80);
    }
    // whole numbers of 32 bits from here on: most are, and these are quick
    let low = rest | 0;
    while (low >= 0x80) {
      bytes[at++] = (low & 0x7f) | 0x80;
      low >>>= 7;
    }
    bytes[at++] = low;
    this.length = at;
  }

  /** Signed varint, zigzag; exact within ±2^52. */
  int(value: number): void {
    this.uint(value < 0 ? -2 * value - 1 : 2 * value);
  }

  /** A double, little-endian. */
  double(value: number): void {
    this.room(8);
    this.view.setFloat64(this.length, value, true);
    this.length += 8;
  }

  /** As `int` writes them, the steps from each to the next of values[from … to), the first from `before`. */
  steps(values: Float64Array | Int32Array | Uint32Array, from: number, to: number, before: number): void {
    this.room((to - from) * 8);
    const { bytes } = this;
    let at = this.length;
    let last = before;
    for (let i = from; i < to; i++) {
      const value = values[i]!;
      const step = value - last;
      last = value;
      if (step < 0x40000000 && step >= -0x40000000) {
        let low = (step << 1) ^ (step >> 31);
        while (low >>> 0 >= 0x80) {
          bytes[at++] = (low & 0x7f) | 0x80;
          low >>>= 7;
        }
        bytes[at++] = low;
      } else {
        this.length = at;
        this.int(step);
        at = this.length;
      }
    }
    this.length = at;
  }

  append(bytes: Uint8Array): void {
    this.room(bytes.length);
    this.bytes.set(bytes, this.length);
    this.length += bytes.length;
  }

  /** bytes[from .. to), quick for a few. */
  appendPart(bytes: Uint8Array, from: number, to: number): void {
    this.room(to - from);
    const { bytes: own } = this;
    let at = this.length;
    for (let i = from; i < to; i++) own[at++] = bytes[i]!;
    this.length = at;
  }

  /** What was written from a place on, not copied: good until more is written. */
  since(from: number): Uint8Array {
    return this.bytes.subarray(from, this.length);
  }

  /** A copy of what was written. */
  done(): Uint8Array<ArrayBuffer> {
    return this.bytes.slice(0, this.length);
  }

  private room(more: number): void {
    if (this.length + more <= this.bytes.length) return;
    const larger = new Uint8Array(Math.max(this.bytes.length * 2, this.length + more));
    larger.set(this.bytes);
    this.bytes = larger;
    this.view = new DataView(larger.buffer);
  }
}

/** Reads what a Writer wrote; every read stays inside the bytes or throws. */
export class Reader {
  readonly bytes: Uint8Array;
  pos: number;
  readonly end: number;

  constructor(bytes: Uint8Array, from = 0, to = bytes.length) {
    this.bytes = bytes;
    this.pos = from;
    this.end = to;
  }

  uint(): number {
    const { bytes, end } = this;
    let at = this.pos;
    if (at >= end) throw new ShortBytes();
    let byte = bytes[at++]!;
    let value = byte & 0x7f;
    for (let scale = 0x80; byte >= 0x80; scale *= 0x80) {
      if (at >= end || scale > 2 ** 49) throw new ShortBytes();
      byte = bytes[at++]!;
      value += (byte & 0x7f) * scale;
    }
    this.pos = at;
    return value;
  }

  int(): number {
    const value = this.uint();
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  /**
   * A number of things: more than the bytes left can hold are not meant, and no room is made for them.
   * @param bytesEach what each takes at least
   */
  count(bytesEach = 1): number {
    const count = this.uint();
    if (count * bytesEach > this.end - this.pos) throw new ShortBytes();
    return count;
  }

  double(): number {
    const { bytes, pos } = this;
    if (pos + 8 > this.end) throw new ShortBytes();
    this.pos += 8;
    return new DataView(bytes.buffer, bytes.byteOffset + pos, 8).getFloat64(0, true);
  }

  take(length: number): Uint8Array {
    if (length > this.end - this.pos) throw new ShortBytes();
    this.pos += length;
    return this.bytes.subarray(this.pos - length, this.pos);
  }
}

/** Bytes that end too soon, or hold a number that cannot be. */
export class ShortBytes extends Error {}
