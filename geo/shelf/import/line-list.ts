import type { ByteStore } from './byte-store.ts';
import { newLocated } from './located.ts';
import { readPlaces, type WayRecord } from './way-record.ts';

/** Lines and their positions in arrays that are used over and over. */
export class LineList {
  count = 0;
  id = new Float64Array(1024);
  /** the same of lines that may be joined */
  alike = new Int32Array(1024);
  /** positions of line l are start[l] … start[l + 1] - 1 */
  start = new Uint32Array(1025);
  node = new Float64Array(8192);
  lat = new Float64Array(8192);
  lon = new Float64Array(8192);
  private refs = new Float64Array(4096);
  private readonly located = newLocated();

  clear(): void {
    this.count = 0;
  }

  /** Adds the line of a record whose store stands at the ids of its nodes, its places behind them. */
  add(record: WayRecord, store: ByteStore, alike: number): void {
    const { count } = this;
    const from = this.start[count]!;
    this.makeRoom(from + record.count);
    if (this.refs.length < record.count) this.refs = new Float64Array(record.count * 2);
    record.readRefs(store, this.refs);
    readPlaces(store, record.count, this.located);
    const { refs, located, node, lat, lon } = this;
    for (let i = 0; i < record.count; i++) {
      node[from + i] = refs[i]!;
      lat[from + i] = located.lat[i]!;
      lon[from + i] = located.lon[i]!;
    }
    this.id[count] = record.id;
    this.alike[count] = alike;
    this.start[count + 1] = from + record.count;
    this.count++;
  }

  countOf(line: number): number {
    return this.start[line + 1]! - this.start[line]!;
  }

  firstNode(line: number): number {
    return this.node[this.start[line]!]!;
  }

  lastNode(line: number): number {
    return this.node[this.start[line + 1]! - 1]!;
  }

  private makeRoom(positions: number): void {
    if (this.count + 1 >= this.id.length) {
      const room = this.id.length * 2;
      this.id = copied(this.id, new Float64Array(room));
      this.alike = copied(this.alike, new Int32Array(room));
      this.start = copied(this.start, new Uint32Array(room + 1));
    }
    if (positions <= this.node.length) return;
    const room = Math.max(positions, this.node.length * 2);
    this.node = copied(this.node, new Float64Array(room));
    this.lat = copied(this.lat, new Float64Array(room));
    this.lon = copied(this.lon, new Float64Array(room));
  }
}

function copied<T extends Float64Array | Int32Array | Uint32Array>(from: T, into: T): T {
  into.set(from);
  return into;
}
