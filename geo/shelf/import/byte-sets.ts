import { ByteStore } from './byte-store.ts';

/** Distinct runs of bytes in the order in which they first came: the tag sets of one tile. */
export class ByteSets {
  count = 0;
  /** all of them, one behind the other; set s is bytes[start[s] .. start[s + 1]) */
  readonly store = new ByteStore(16 * 1024);
  start = new Uint32Array(1024);
  private slots = new Int32Array(2048).fill(-1);
  private mask = 2047;

  clear(): void {
    this.count = 0;
    this.store.at = 0;
    // a small tile need not clear the room of a large one
    this.mask = 2047;
    this.slots.fill(-1, 0, this.mask + 1);
  }

  /** Place of bytes[from .. to) among them; copied where they are new. */
  add(bytes: Uint8Array, from: number, to: number): number {
    if (this.count * 2 > this.mask) this.rehash();
    const { slots, mask } = this;
    for (let slot = hash(bytes, from, to) & mask; ; slot = (slot + 1) & mask) {
      const known = slots[slot]!;
      if (known < 0) {
        slots[slot] = this.count;
        return this.append(bytes, from, to);
      }
      if (this.isSame(known, bytes, from, to)) return known;
    }
  }

  private append(bytes: Uint8Array, from: number, to: number): number {
    if (this.count + 1 === this.start.length) {
      const larger = new Uint32Array(this.start.length * 2);
      larger.set(this.start);
      this.start = larger;
    }
    this.store.append(bytes, from, to);
    this.start[this.count + 1] = this.store.at;
    return this.count++;
  }

  private isSame(known: number, bytes: Uint8Array, from: number, to: number): boolean {
    const begin = this.start[known]!;
    const length = to - from;
    if (this.start[known + 1]! - begin !== length) return false;
    const own = this.store.bytes;
    for (let i = 0; i < length; i++) if (own[begin + i] !== bytes[from + i]) return false;
    return true;
  }

  private rehash(): void {
    const mask = this.mask * 2 + 1;
    this.mask = mask;
    if (this.slots.length <= mask) this.slots = new Int32Array(mask + 1);
    this.slots.fill(-1, 0, mask + 1);
    for (let i = 0; i < this.count; i++) {
      let slot = hash(this.store.bytes, this.start[i]!, this.start[i + 1]!) & mask;
      while (this.slots[slot]! >= 0) slot = (slot + 1) & mask;
      this.slots[slot] = i;
    }
  }
}

/** G. Fowler, L. C. Noll, K.-P. Vo: FNV-1a, 32 bits (from memory); any mixing does. */
function hash(bytes: Uint8Array, from: number, to: number): number {
  let mixed = 0x811c9dc5;
  for (let i = from; i < to; i++) mixed = Math.imul(mixed ^ bytes[i]!, 0x01000193);
  return mixed ^ (mixed >>> 15);
}
