const DIGIT_BITS = 11;
const DIGITS = 1 << DIGIT_BITS;
const ROUNDS = 3;

/** Puts ids in order, one list after the other: by their digits, which takes a few steps for each. */
export class IdSorter {
  /** places of the ids in ascending order of id, as many as were sorted last */
  order = new Uint32Array(4096);
  private orderBefore = new Uint32Array(4096);
  private key = new Uint32Array(4096);
  private keyBefore = new Uint32Array(4096);
  private readonly counts = new Uint32Array(DIGITS);

  /** The first `count` ids, each different. */
  sort(ids: Float64Array, count: number): void {
    if (this.order.length < count) this.grow(count * 2);
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      const id = ids[i]!;
      if (id < least) least = id;
      if (id > most) most = id;
    }
    if (most - least >= 2 ** 32) this.sortFar(ids, count);
    else this.sortNear(ids, count, { least, span: most - least });
  }

  private sortNear(
    ids: Float64Array,
    count: number,
    { least, span }: { readonly least: number; readonly span: number },
  ): void {
    for (let i = 0; i < count; i++) {
      this.key[i] = ids[i]! - least;
      this.order[i] = i;
    }
    for (let round = 0, shift = 0; round < ROUNDS && span / 2 ** shift >= 1; round++, shift += DIGIT_BITS)
      this.sortDigit(count, shift);
  }

  private sortDigit(count: number, shift: number): void {
    const { counts, key: from, keyBefore: to, order, orderBefore: orderTo } = this;
    counts.fill(0);
    for (let i = 0; i < count; i++) counts[(from[i]! >>> shift) & (DIGITS - 1)]!++;
    let sum = 0;
    for (let digit = 0; digit < DIGITS; digit++) {
      const here = counts[digit]!;
      counts[digit] = sum;
      sum += here;
    }
    for (let i = 0; i < count; i++) {
      const at = counts[(from[i]! >>> shift) & (DIGITS - 1)]!++;
      to[at] = from[i]!;
      orderTo[at] = order[i]!;
    }
    this.key = to;
    this.keyBefore = from;
    this.order = orderTo;
    this.orderBefore = order;
  }

  /** Ids too far apart for 32 bits. */
  private sortFar(ids: Float64Array, count: number): void {
    for (let i = 0; i < count; i++) this.order[i] = i;
    this.order.subarray(0, count).sort((a, b) => ids[a]! - ids[b]!);
  }

  private grow(room: number): void {
    this.order = new Uint32Array(room);
    this.orderBefore = new Uint32Array(room);
    this.key = new Uint32Array(room);
    this.keyBefore = new Uint32Array(room);
  }
}
