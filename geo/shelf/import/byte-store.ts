/** Reading looks a little beyond what stands there. */
const SPARE_BYTES = 16;

/**
 * Bytes written and read in the hot loops of an import. Unlike the codec's Writer and Reader its room is asked for once
 * a record and its place is free to move, so that a number costs a few nanoseconds.
 */
export class ByteStore {
  bytes: Uint8Array<ArrayBuffer>;
  view: DataView<ArrayBuffer>;
  at = 0;

  /** @param room bytes of its own, or some that are lent to it */
  constructor(room: number | Uint8Array<ArrayBuffer> = 4096) {
    this.bytes = typeof room === 'number' ? new Uint8Array(room) : room;
    this.view = new DataView(this.bytes.buffer, this.bytes.byteOffset, this.bytes.length);
  }

  /** Makes sure that so many bytes more can be written. */
  room(more: number): void {
    if (this.at + more <= this.bytes.length) return;
    const larger = new Uint8Array(Math.max(this.bytes.length * 2, this.at + more));
    larger.set(this.bytes.subarray(0, this.at));
    this.bytes = larger;
    this.view = new DataView(larger.buffer);
  }

  /** Stands at its start with room for so many bytes: what it held is gone. */
  empty(bytes: number): void {
    this.at = 0;
    if (this.bytes.length >= bytes) return;
    this.bytes = new Uint8Array(bytes + SPARE_BYTES);
    this.view = new DataView(this.bytes.buffer);
  }

  /** Unsigned varint up to 2^53; needs room for 8 bytes. */
  uint(value: number): void {
    const { bytes } = this;
    let { at } = this;
    let rest = value;
    while (rest >= 0x10000000) {
      bytes[at++] = (rest % 0x80) | 0x80;
      rest = Math.floor(rest / 0x80);
    }
    let low = rest | 0;
    while (low >= 0x80) {
      bytes[at++] = (low & 0x7f) | 0x80;
      low >>>= 7;
    }
    bytes[at++] = low;
    this.at = at;
  }

  /** Signed varint (zigzag) within ±2^52; needs room for 8 bytes. */
  int(value: number): void {
    if (value < 0x40000000 && value >= -0x40000000) {
      const { bytes } = this;
      let { at } = this;
      let low = (value << 1) ^ (value >> 31);
      while (low >>> 0 >= 0x80) {
        bytes[at++] = (low & 0x7f) | 0x80;
        low >>>= 7;
      }
      bytes[at++] = low;
      this.at = at;
    } else this.uint(value < 0 ? -2 * value - 1 : 2 * value);
  }

  readUint(): number {
    const { bytes } = this;
    let { at } = this;
    let byte = bytes[at++]!;
    let value = byte & 0x7f;
    let shift = 7;
    while (byte >= 0x80 && shift < 28) {
      byte = bytes[at++]!;
      value |= (byte & 0x7f) << shift;
      shift += 7;
    }
    for (let scale = 2 ** 28; byte >= 0x80; scale *= 0x80) {
      byte = bytes[at++]!;
      value += (byte & 0x7f) * scale;
    }
    this.at = at;
    return value;
  }

  readInt(): number {
    const value = this.readUint();
    if (value < 0x80000000) return (value >>> 1) ^ -(value & 1);
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  /** A double, little-endian; needs room for 8 bytes. */
  double(value: number): void {
    this.view.setFloat64(this.at, value, true);
    this.at += 8;
  }

  readDouble(): number {
    this.at += 8;
    return this.view.getFloat64(this.at - 8, true);
  }

  /** Copies bytes in; makes its own room. */
  append(from: Uint8Array, start = 0, end = from.length): void {
    this.room(end - start);
    const { bytes } = this;
    // a call of set costs more than a loop over a few bytes
    if (end - start > 128) bytes.set(from.subarray(start, end), this.at);
    else for (let i = start, to = this.at; i < end; i++) bytes[to++] = from[i]!;
    this.at += end - start;
  }
}
