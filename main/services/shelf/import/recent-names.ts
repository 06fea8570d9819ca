import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';

const SLOTS = 1 << 14;
/** When the texts take more than this all are forgotten. */
const MOST_BYTES = 1 << 20;

/** Names of roads that were put into the index lately: a road comes in many pieces, and one in each cell is enough. */
export class RecentNames {
  private readonly texts = new ByteStore(64 * 1024);
  private readonly from = new Int32Array(SLOTS).fill(-1);
  private readonly length = new Int32Array(SLOTS);
  private readonly cell = new Int32Array(SLOTS);
  private readonly id = new Float64Array(SLOTS);

  /**
   * Notes a name, bytes[from … to), in a cell, for what bears it.
   * @returns whether the same is there of a lower id, so that this one adds nothing
   */
  has(bytes: Uint8Array, from: number, to: number, { cell, id }: { cell: number; id: number }): boolean {
    const slot = (hash(bytes, from, to) ^ Math.imul(cell, 0x9e3779b1)) & (SLOTS - 1);
    if (this.cell[slot] === cell && this.isSame(slot, bytes, from, to)) {
      if (this.id[slot]! <= id) return true;
    } else this.note(slot, bytes, from, to);
    this.cell[slot] = cell;
    this.id[slot] = id;
    return false;
  }

  private isSame(slot: number, bytes: Uint8Array, from: number, to: number): boolean {
    const start = this.from[slot]!;
    if (start < 0 || this.length[slot] !== to - from) return false;
    for (let i = 0; i < to - from; i++) if (this.texts.bytes[start + i] !== bytes[from + i]) return false;
    return true;
  }

  private note(slot: number, bytes: Uint8Array, from: number, to: number): void {
    const { texts } = this;
    if (texts.at + to - from > MOST_BYTES) {
      texts.at = 0;
      this.from.fill(-1);
    }
    this.from[slot] = texts.at;
    this.length[slot] = to - from;
    texts.append(bytes, from, to);
  }
}

function hash(bytes: Uint8Array, from: number, to: number): number {
  let mixed = to - from;
  for (let i = from; i < to; i++) mixed = Math.imul(mixed ^ bytes[i]!, 0x01000193);
  return mixed ^ (mixed >>> 15);
}
