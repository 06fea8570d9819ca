/** Writes protocol-buffer messages: varints, zigzag, length-delimited fields. Numbers may exceed 32 bits. */
export class Message {
  private readonly bytes: number[] = [];

  /** A plain integer field; negative values are written in two's complement as the format asks. */
  integer(field: number, value: number): this {
    this.key(field, 0);
    if (value < 0) this.negative(value);
    else this.varint(value);
    return this;
  }

  /** A zigzag field (sint64). */
  zigzag(field: number, value: number): this {
    this.key(field, 0);
    this.varint(zigzagOf(value));
    return this;
  }

  text(field: number, value: string): this {
    return this.raw(field, new TextEncoder().encode(value));
  }

  raw(field: number, value: Uint8Array): this {
    this.key(field, 2);
    this.varint(value.length);
    for (const byte of value) this.bytes.push(byte);
    return this;
  }

  message(field: number, value: Message): this {
    return this.raw(field, value.finish());
  }

  /** Unsigned integers one after another in a packed field. */
  packed(field: number, values: readonly number[]): this {
    const inner = new Message();
    for (const value of values) inner.varint(value);
    return this.raw(field, inner.finish());
  }

  /** Differences from one value to the next, zigzag, packed. */
  deltas(field: number, values: readonly number[]): this {
    return this.packed(
      field,
      values.map((value, i) => zigzagOf(value - (i === 0 ? 0 : (values[i - 1] ?? 0)))),
    );
  }

  finish(): Uint8Array {
    return Uint8Array.from(this.bytes);
  }

  private key(field: number, wire: number): void {
    this.varint(field * 8 + wire);
  }

  private varint(value: number): void {
    let rest = value;
    while (rest >= 128) {
      this.bytes.push((rest % 128) | 128);
      rest = Math.floor(rest / 128);
    }
    this.bytes.push(rest);
  }

  private negative(value: number): void {
    let rest = BigInt.asUintN(64, BigInt(value));
    while (rest >= 128n) {
      this.bytes.push(Number(rest % 128n) | 128);
      rest /= 128n;
    }
    this.bytes.push(Number(rest));
  }
}

/** Exact for all safe integers, which shifting would not be. */
function zigzagOf(value: number): number {
  return value < 0 ? -2 * value - 1 : 2 * value;
}
