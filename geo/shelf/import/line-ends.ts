/** Which lines end at a node, told apart by what they are like. */
export class LineEnds {
  private node = new Float64Array(4096);
  private alike = new Int32Array(4096);
  /** the note made last of a node and likeness; -1 in a free slot */
  private newest = new Int32Array(4096);
  private mask = 4095;
  private line = new Int32Array(2048);
  private older = new Int32Array(2048);
  private count = 0;

  /** Forgets all, and makes room for the ends of so many lines. */
  clear(lines: number): void {
    let slots = 4096;
    while (slots < lines * 4) slots *= 2;
    if (this.newest.length < slots) {
      this.node = new Float64Array(slots);
      this.alike = new Int32Array(slots);
      this.newest = new Int32Array(slots);
    }
    if (this.line.length < lines * 2) {
      this.line = new Int32Array(slots);
      this.older = new Int32Array(slots);
    }
    this.mask = slots - 1;
    this.newest.fill(-1, 0, slots);
    this.count = 0;
  }

  note(node: number, alike: number, line: number): void {
    const slot = this.slotOf(node, alike);
    this.node[slot] = node;
    this.alike[slot] = alike;
    this.line[this.count] = line;
    this.older[this.count] = this.newest[slot]!;
    this.newest[slot] = this.count++;
  }

  /** The newest note of a node and likeness; -1 without. */
  first(node: number, alike: number): number {
    return this.newest[this.slotOf(node, alike)]!;
  }

  /** The note made before another; -1 without. */
  next(note: number): number {
    return this.older[note]!;
  }

  lineAt(note: number): number {
    return this.line[note]!;
  }

  private slotOf(node: number, alike: number): number {
    const { mask } = this;
    for (let slot = hash(node, alike) & mask; ; slot = (slot + 1) & mask)
      if (this.newest[slot]! < 0 || (this.node[slot] === node && this.alike[slot] === alike)) return slot;
  }
}

function hash(node: number, alike: number): number {
  const high = Math.imul(Math.floor(node / 4_294_967_296), 0x9e3779b1);
  const mixed = Math.imul((node | 0) ^ high ^ Math.imul(alike, 0xc2b2ae35), 0x85ebca6b);
  return mixed ^ (mixed >>> 15);
}
