import { grown } from '../../roads/id-table.ts';
import { type FinePlace, isWhole, LACKING, PER_DEGREE } from '../encode-block.ts';
import { IdSorter } from './id-sorter.ts';

/** The nodes of one tile, each once, found by id; used for one tile after the other. */
export class TileNodes {
  count = 0;
  private id = new Float64Array(4096);
  private lat7 = new Int32Array(4096);
  private lon7 = new Int32Array(4096);
  private readonly fine = new Map<number, FinePlace>();
  private slots = new Int32Array(2048).fill(-1);
  /** slots looked into while the nodes are few: a small tile need not clear the room of a large one */
  private mask = 2047;
  private readonly sorter = new IdSorter();
  private rank = new Uint32Array(0);
  private sortedId = new Float64Array(0);
  private sortedLat7 = new Int32Array(0);
  private sortedLon7 = new Int32Array(0);

  clear(): void {
    this.mask = 2047;
    this.slots.fill(-1, 0, this.mask + 1);
    this.fine.clear();
    this.count = 0;
  }

  /** Adds a node of any place, NaN where it is lacking. */
  addFine(id: number, lat: number, lon: number): number {
    const before = this.count;
    const lat7 = Number.isNaN(lat) ? LACKING : Math.round(lat * PER_DEGREE);
    const place = this.add(id, lat7, Math.round(lon * PER_DEGREE));
    if (this.count > before && lat7 !== LACKING && !isWhole(lat, lon)) this.fine.set(place, { lat, lon });
    return place;
  }

  /** Place of a node in the list of those that came; its place on Earth in ten-millionths of a degree. */
  add(id: number, lat7: number, lon7: number): number {
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
      this.lat7 = grownWhole(this.lat7);
      this.lon7 = grownWhole(this.lon7);
    }
    this.id[this.count] = id;
    this.lat7[this.count] = lat7;
    this.lon7[this.count] = lon7;
    return this.count++;
  }

  /**
   * All in order of id; good until the next call.
   * @returns rank: by the place that `add` gave, the place in order of id
   */
  inOrder() {
    const { count } = this;
    this.sorter.sort(this.id, count);
    const { order } = this.sorter;
    if (this.rank.length < count) {
      const room = this.id.length;
      this.rank = new Uint32Array(room);
      this.sortedId = new Float64Array(room);
      this.sortedLat7 = new Int32Array(room);
      this.sortedLon7 = new Int32Array(room);
    }
    const { rank, sortedId, sortedLat7, sortedLon7 } = this;
    for (let place = 0; place < count; place++) {
      const came = order[place]!;
      rank[came] = place;
      sortedId[place] = this.id[came]!;
      sortedLat7[place] = this.lat7[came]!;
      sortedLon7[place] = this.lon7[came]!;
    }
    const fine = new Map<number, FinePlace>();
    for (const [came, there] of this.fine) fine.set(rank[came]!, there);
    return { id: sortedId, lat7: sortedLat7, lon7: sortedLon7, fine, rank };
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

function grownWhole(values: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(values.length * 2);
  larger.set(values);
  return larger;
}
