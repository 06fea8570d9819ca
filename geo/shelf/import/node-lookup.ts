import { grown } from '../../roads/id-table.ts';
import type { NodeBatch } from '../../roads/sink.ts';
import { isWhole, PER_DEGREE } from '../encode-block.ts';

/** Of a place that is no whole number of ten-millionths of a degree. */
export const FINE = -0x80000000;

/** At most so many shortcuts into the list, four bytes each. */
const MOST_STEPS = 1 << 20;

/**
 * The nodes of one range of ids, found by id in a step or two: a table of shortcuts by the id's upper bits leads into
 * the ascending list.
 */
export class NodeLookup {
  count = 0;
  id = new Float64Array(8192);
  lat = new Float64Array(8192);
  lon = new Float64Array(8192);
  /** places in ten-millionths of a degree; the latitude is FINE where the degrees must be taken */
  lat7 = new Int32Array(0);
  lon7 = new Int32Array(0);
  /** whether the ids came in ascending order, each once */
  ascending = true;
  private base = 0;
  /** a step holds 2^shift ids */
  private shift = 0;
  /** whether all ids lie within 32 bits of the first */
  private near = true;
  private steps = new Int32Array(0);

  clear(): void {
    this.count = 0;
    this.ascending = true;
  }

  /** Adds a batch of nodes behind those that are there. */
  add({ count, id, lat, lon }: Pick<NodeBatch, 'count' | 'id' | 'lat' | 'lon'>): void {
    while (this.count + count > this.id.length) {
      this.id = grown(this.id);
      this.lat = grown(this.lat);
      this.lon = grown(this.lon);
    }
    let before = this.count > 0 ? this.id[this.count - 1]! : Number.NEGATIVE_INFINITY;
    for (let i = 0, at = this.count; i < count; i++, at++) {
      const one = id[i]!;
      if (one <= before) this.ascending = false;
      before = one;
      this.id[at] = one;
      this.lat[at] = lat[i]!;
      this.lon[at] = lon[i]!;
    }
    this.count += count;
  }

  /** To be called when all were added, in ascending order. */
  build(): void {
    const { count, id } = this;
    if (this.lat7.length < count) {
      this.lat7 = new Int32Array(this.id.length);
      this.lon7 = new Int32Array(this.id.length);
    }
    for (let i = 0; i < count; i++) this.wholePlace(i);
    this.base = count > 0 ? id[0]! : 0;
    const span = count > 0 ? id[count - 1]! - this.base : 0;
    this.shift = 0;
    const most = Math.min(MOST_STEPS, Math.max(1024, count * 4));
    while (span / 2 ** this.shift >= most) this.shift++;
    this.near = span < 2 ** 32;
    const steps = this.stepOf(this.base + span) + 2;
    if (this.steps.length < steps) this.steps = new Int32Array(Math.max(steps, 4096));
    this.fillSteps(steps);
  }

  /** Place of an id in the list; -1 where it is not there. */
  indexOf(id: number): number {
    const { base, count } = this;
    if (id < base || count === 0 || id > this.id[count - 1]!) return -1;
    const step = this.stepOf(id);
    let low = this.steps[step]!;
    let high = this.steps[step + 1]!;
    while (high - low > 8) {
      const middle = (low + high) >>> 1;
      if (this.id[middle]! <= id) low = middle;
      else high = middle;
    }
    for (; low < high; low++) if (this.id[low] === id) return low;
    return -1;
  }

  private stepOf(id: number): number {
    const beyond = id - this.base;
    return this.near ? beyond >>> this.shift : Math.floor(beyond / 2 ** this.shift);
  }

  private wholePlace(i: number): void {
    const lat = this.lat[i]!;
    const lon = this.lon[i]!;
    this.lat7[i] = isWhole(lat, lon) ? Math.round(lat * PER_DEGREE) : FINE;
    this.lon7[i] = Math.round(lon * PER_DEGREE);
  }

  /** steps[s] is the first place whose id lies in step s or beyond. */
  private fillSteps(steps: number): void {
    let at = 0;
    for (let i = 0; i < this.count; i++) {
      const step = this.stepOf(this.id[i]!);
      while (at <= step) this.steps[at++] = i;
    }
    while (at < steps) this.steps[at++] = this.count;
  }
}
