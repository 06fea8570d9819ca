/** Distinct runs of bytes in the order in which they first came: the tag sets of one tile. */
export class ByteSets {
  readonly sets: Uint8Array[] = [];
  private slots = new Int32Array(256).fill(-1);

  clear(): void {
    this.sets.length = 0;
    this.slots.fill(-1);
  }

  /** Place of bytes[from .. to) in `sets`; they are not copied. */
  add(bytes: Uint8Array, from: number, to: number): number {
    const { sets } = this;
    if (sets.length * 2 >= this.slots.length) this.grow();
    const { slots } = this;
    const mask = slots.length - 1;
    for (let slot = hash(bytes, from, to) & mask; ; slot = (slot + 1) & mask) {
      const known = slots[slot]!;
      if (known < 0) {
        slots[slot] = sets.length;
        return sets.push(bytes.subarray(from, to)) - 1;
      }
      if (isSame(sets[known]!, bytes, from, to)) return known;
    }
  }

  private grow(): void {
    this.slots = new Int32Array(this.slots.length * 4).fill(-1);
    const mask = this.slots.length - 1;
    for (const [i, set] of this.sets.entries()) {
      let slot = hash(set, 0, set.length) & mask;
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

function isSame(set: Uint8Array, bytes: Uint8Array, from: number, to: number): boolean {
  if (set.length !== to - from) return false;
  for (let i = 0; i < set.length; i++) if (set[i] !== bytes[from + i]) return false;
  return true;
}
