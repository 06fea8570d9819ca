/** Growing list of distinct ids with their places in it: open addressing over the list itself. */
export class IdTable {
  count = 0;
  ids: Float64Array<ArrayBuffer>;
  private slots: Int32Array<ArrayBuffer>;

  /** @param room how many ids it may hold before it has to grow */
  constructor(room = 1024) {
    this.ids = new Float64Array(room);
    // a power of two, at most half full
    this.slots = new Int32Array(2 ** Math.ceil(Math.log2(2 * room + 2))).fill(-1);
  }

  /** Place of an id, -1 when it is not there. */
  indexOf(id: number): number {
    const mask = this.slots.length - 1;
    for (let slot = hash(id) & mask; ; slot = (slot + 1) & mask) {
      const index = this.slots[slot]!;
      if (index < 0 || this.ids[index] === id) return index;
    }
  }

  /** Adds an id that may be there already; `count` tells whether it was new. */
  add(id: number): number {
    const known = this.indexOf(id);
    if (known >= 0) return known;
    if (this.count === this.ids.length) this.ids = grown(this.ids);
    if (this.count * 2 >= this.slots.length) this.rehash();
    this.ids[this.count] = id;
    this.place(this.count);
    return this.count++;
  }

  private place(index: number): void {
    const mask = this.slots.length - 1;
    let slot = hash(this.ids[index]!) & mask;
    while (this.slots[slot]! >= 0) slot = (slot + 1) & mask;
    this.slots[slot] = index;
  }

  private rehash(): void {
    this.slots = new Int32Array(this.slots.length * 2).fill(-1);
    for (let i = 0; i < this.count; i++) this.place(i);
  }
}

/** Mixes both halves of an id, as ids of one region run close together. */
function hash(id: number): number {
  const low = id | 0;
  const high = Math.floor(id / 4_294_967_296) | 0;
  const mixed = Math.imul(low ^ Math.imul(high, 0x9e3779b1), 0x85ebca6b);
  return mixed ^ (mixed >>> 15);
}

/** The same numbers with room for twice as many. */
export function grown(values: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(values.length * 2);
  larger.set(values);
  return larger;
}
