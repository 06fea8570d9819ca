import type { Tags } from '../../../../geo/roads/roads.ts';
import type { MapSink, NodeBatch } from '../../../../geo/roads/sink.ts';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { decodeTags } from '../../../../geo/shelf/tag-bytes.ts';
import { SpillReader } from './spill.ts';
import type { SpillIndex } from './spill-index.ts';
import { Stopped } from './stopped.ts';

/** Places of one node may differ by rounding, in degrees: as far as the ordinary reader takes them for the same. */
const SAME_DEG = 1e-5;

/** Gives the elements that were put into buckets back in order of id, each once. */
export class GeneralBuckets {
  private readonly name: string;
  private readonly reader: SpillReader;
  private readonly store = new ByteStore();
  /** where the record at a place ends */
  private readonly ends = new Map<number, number>();

  constructor(name: string, index: readonly SpillIndex[]) {
    this.name = name;
    this.reader = new SpillReader(index);
  }

  /** Nodes of a bucket; of one that is listed and also comes with ways, the listed one. */
  giveNodes(bucket: number, give: NonNullable<MapSink['nodes']>): void {
    const { store } = this;
    const offsets = this.offsetsOf(bucket, () => {
      store.at += 25;
      const size = store.readUint();
      store.at += size;
    });
    const { view, bytes } = store;
    offsets.sort((a, b) => this.idAt(a) - this.idAt(b) || bytes[b + 24]! - bytes[a + 24]! || a - b);
    const kept: number[] = [];
    for (const at of offsets) {
      const before = kept.at(-1);
      if (before === undefined || this.idAt(before) !== this.idAt(at)) kept.push(at);
      else if (bytes[at + 24] === 1 && !this.isSameNode(before, at))
        throw this.severalVersions('node', this.idAt(at));
    }
    if (kept.length === 0) return;
    const batch: NodeBatch = {
      count: kept.length,
      id: Float64Array.from(kept, (at) => view.getFloat64(at, true)),
      lat: Float64Array.from(kept, (at) => view.getFloat64(at + 8, true)),
      lon: Float64Array.from(kept, (at) => view.getFloat64(at + 16, true)),
      tags: (index) => this.nodeTags(kept[index]!),
    };
    give(batch);
  }

  /** Ways of a bucket. */
  giveWays(bucket: number, give: NonNullable<MapSink['way']>): void {
    const { store } = this;
    const offsets = this.offsetsOf(bucket, () => {
      store.at += 8;
      const count = store.readUint();
      store.at += count * 8;
      const size = store.readUint();
      store.at += size;
    });
    offsets.sort((a, b) => this.idAt(a) - this.idAt(b) || a - b);
    let before = -1;
    for (const at of offsets) {
      if (before >= 0 && this.idAt(before) === this.idAt(at)) {
        if (!this.isSameBytes(before, at)) throw this.severalVersions('way', this.idAt(at));
        continue;
      }
      before = at;
      store.at = at + 8;
      const count = store.readUint();
      const refs = new Float64Array(count);
      for (let i = 0; i < count; i++) refs[i] = store.readDouble();
      const tags = this.tagsHere();
      give({
        id: this.idAt(at),
        refs,
        count,
        hasKey: (fits) => Object.keys(tags).some(fits),
        tags: () => tags,
      });
    }
  }

  close(): void {
    this.reader.close();
  }

  private offsetsOf(bucket: number, pass: () => void): number[] {
    const { store } = this;
    const length = this.reader.read(bucket, store);
    const offsets: number[] = [];
    while (store.at < length) {
      offsets.push(store.at);
      pass();
    }
    this.ends.clear();
    for (const [i, at] of offsets.entries()) this.ends.set(at, offsets[i + 1] ?? length);
    return offsets;
  }

  private idAt(at: number): number {
    return this.store.view.getFloat64(at, true);
  }

  private nodeTags(at: number): Tags | undefined {
    this.store.at = at + 25;
    const tags = this.tagsHere();
    return Object.keys(tags).length > 0 ? tags : undefined;
  }

  private tagsHere(): Tags {
    const { store } = this;
    const size = store.readUint();
    store.at += size;
    return decodeTags(store.bytes, store.at - size, store.at);
  }

  private isSameNode(a: number, b: number): boolean {
    const { view } = this.store;
    for (const at of [8, 16])
      if (Math.abs(view.getFloat64(a + at, true) - view.getFloat64(b + at, true)) > SAME_DEG) return false;
    const tags = this.nodeTags(b);
    return tags === undefined || JSON.stringify(tags) === JSON.stringify(this.nodeTags(a));
  }

  private isSameBytes(a: number, b: number): boolean {
    const { bytes } = this.store;
    const length = this.ends.get(a)! - a;
    if (this.ends.get(b)! - b !== length) return false;
    for (let i = 0; i < length; i++) if (bytes[a + i] !== bytes[b + i]) return false;
    return true;
  }

  private severalVersions(kind: string, id: number): Stopped {
    return new Stopped({
      code: 'map.history',
      message: `${this.name} holds ${kind} ${id} in several versions: it is a history file, or several files in one. Use an ordinary extract, or import the files one by one.`,
    });
  }
}
