import { grown } from '../../roads/id-table.ts';
import { IdSorter } from './id-sorter.ts';

/** The nodes of one tile, each once, found by id; used for one tile after the other. */
export class TileNodes {
  count = 0;
  private id = new Float64Array(4096);
  private lat = new Float64Array(4096);
  private lon = new Float64Array(4096);
  private slots = new Int32Array(2048).fill(-1);
  /** slots looked into while the nodes are few: a small tile need not clear the room of a large one */
  private mask = 2047;
  private readonly sorter = new IdSorter();
  private rank = new Uint32Array(0);
  private sortedId = new Float64Array(0);
  private sortedLat = new Float64Array(0);
  private sortedLon = new Float64Array(0);

  clear(): void {
    this.mask = 2047;
    this.slots.fill(-1, 0, this.mask + 1);
    this.count = 0;
  }

  /** Place of a node in the list of those that came. */
  add(id: number, lat: number, lon: number): number {
    if (this.count * 2 > this.mask) this.rehash();
    const { slots, mask } = this;
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
   * All in order of id; good until the next call.
   * @returns rank: by the place that `add` gave, the place in order of id
   */
  inOrder(): { id: Float64Array; lat: Float64Array; lon: Float64Array; rank: Uint32Array } {
    const { count } = this;
    this.sorter.sort(this.id, count);
    const { order } = this.sorter;
    if (this.rank.length < count) {
      const room = this.id.length;
      this.rank = new Uint32Array(room);
      this.sortedId = new Float64Array(room);
      this.sortedLat = new Float64Array(room);
      this.sortedLon = new Float64Array(room);
    }
    const { rank, sortedId, sortedLat, sortedLon } = this;
    for (let place = 0; place < count; place++) {
      const came = order[place]!;
      rank[came] = place;
      sortedId[place] = this.id[came]!;
      sortedLat[place] = this.lat[came]!;
      sortedLon[place] = this.lon[came]!;
    }
    return {
      id: sortedId.subarray(0, count),
      lat: sortedLat.subarray(0, count),
      lon: sortedLon.subarray(0, count),
      rank,
    };
  }

  private rehash(): void {
    const mask = this.mask * 2 + 1;
    this.mask = mask;
    if (this.slots.length <= mask) this.slots = new Int32Array(mask + 1);
    this.slots.fill(-1, 0, mask + 1);
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
