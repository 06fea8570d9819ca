import { grown } from '../../roads/id-table.ts';

/** The nodes of one tile, each once, found by id; used for one tile after the other. */
export class TileNodes {
  count = 0;
  private id = new Float64Array(4096);
  private lat = new Float64Array(4096);
  private lon = new Float64Array(4096);
  private slots = new Int32Array(16384).fill(-1);
  private sorted = new Float64Array(4096);
  private rank = new Uint32Array(4096);

  clear(): void {
    this.slots.fill(-1);
    this.count = 0;
  }

  /** Place of a node in the list of those that came. */
  add(id: number, lat: number, lon: number): number {
    if (this.count * 2 >= this.slots.length) this.rehash();
    const { slots } = this;
    const mask = slots.length - 1;
    for (let slot = hash(id) & mask; ; slot = (slot + 1) & mask) {
      const known = slots[slot]!;
      if (known < 0) {
        slots[slot] = this.count;
        break;
      }
      if (this.id[known] === id) return known;
    }
    if (this.count === this.id.length) {
      this.id = grown(this.id);
      this.lat = grown(this.lat);
      this.lon = grown(this.lon);
    }
    this.id[this.count] = id;
    this.lat[this.count] = lat;
    this.lon[this.count] = lon;
    return this.count++;
  }

  /**
   * All in order of id. The arrays are new, `rank` is good until the next call.
   * @returns rank: by the place that `add` gave, the place in order of id
   */
  inOrder(): { id: Float64Array; lat: Float64Array; lon: Float64Array; rank: Uint32Array } {
    const { count } = this;
    if (this.sorted.length < count) this.sorted = new Float64Array(this.id.length);
    if (this.rank.length < count) this.rank = new Uint32Array(this.id.length);
    const id = this.sorted.subarray(0, count);
    id.set(this.id.subarray(0, count));
    id.sort();
    const lat = new Float64Array(count);
    const lon = new Float64Array(count);
    const mask = this.slots.length - 1;
    for (let place = 0; place < count; place++) {
      let slot = hash(id[place]!) & mask;
      while (this.id[this.slots[slot]!] !== id[place]) slot = (slot + 1) & mask;
      const came = this.slots[slot]!;
      this.rank[came] = place;
      lat[place] = this.lat[came]!;
      lon[place] = this.lon[came]!;
    }
    return { id, lat, lon, rank: this.rank };
  }

  private rehash(): void {
    this.slots = new Int32Array(this.slots.length * 2).fill(-1);
    const mask = this.slots.length - 1;
    for (let i = 0; i < this.count; i++) {
      let slot = hash(this.id[i]!) & mask;
      while (this.slots[slot]! >= 0) slot = (slot + 1) & mask;
      this.slots[slot] = i;
    }
  }
}

function hash(id: number): number {
  const mixed = Math.imul((id | 0) ^ Math.imul(Math.floor(id / 4_294_967_296), 0x9e3779b1), 0x85ebca6b);
  return mixed ^ (mixed >>> 15);
}
