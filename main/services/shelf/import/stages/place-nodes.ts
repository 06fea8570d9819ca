import { join } from 'node:path';
import type { NodeBatch } from '../../../../../geo/roads/sink.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import type { NodeChoice } from '../../../../../geo/shelf/import/choose.ts';
import { chooseByTags, NODE_RULE } from '../../../../../geo/shelf/import/choose-by-tags.ts';
import { newTexts } from '../../../../../geo/shelf/import/chosen-texts.ts';
import { CELL_ZOOM, columnAt, RowFinder } from '../../../../../geo/shelf/import/grid.ts';
import { FINE, NodeLookup } from '../../../../../geo/shelf/import/node-lookup.ts';
import { PackedChooser } from '../../../../../geo/shelf/import/packed-choice.ts';
import { addWeight, WEIGHT_ZOOM } from '../../../../../geo/shelf/import/tile-plan.ts';
import { Spill, SpillReader } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { writeTagged } from './tagged-nodes.ts';
import { CHUNK_BITS } from './take-ways.ts';

/** slot 4, latitude 4, longitude 4, ten-millionths of a degree */
export const PLACE_BYTES = 12;
/** slot 4, latitude 8, longitude 8, degrees */
export const FINE_PLACE_BYTES = 20;

export interface PlaceNodesSetup {
  readonly temp: string;
  readonly refs: readonly SpillIndex[];
  /** of each bucket of nodes, where ids are written as steps from it */
  readonly first: Float64Array | undefined;
  readonly chunks: number;
  /** into how many parts the nodes with tags are divided */
  readonly taggedBuckets: number;
  /** nodes by cell, of all workers together (tile-plan.ts) */
  readonly weights: Int32Array;
}

export interface PlacedNodes {
  /** by chunk of ways */
  readonly places: SpillIndex;
  /** the same of nodes placed more finely than to ten-millionths of a degree */
  readonly fine: SpillIndex;
  readonly tagged: SpillIndex;
  /** how many nodes ways use or that stand for themselves */
  readonly nodes: number;
}

/** Brings the nodes of one bucket at a time to the ways that use them. */
export class NodePlacer {
  readonly lookup = new NodeLookup();
  private readonly setup: PlaceNodesSetup;
  private readonly refReader: SpillReader;
  private readonly refStore = new ByteStore();
  private readonly places: Spill;
  private readonly fine: Spill;
  private readonly tagged: Spill;
  private readonly rows = new RowFinder();
  private readonly chooser = new PackedChooser(NODE_RULE);
  private readonly texts = newTexts();
  private used = new Uint8Array(0);
  private nodes = 0;
  /** nodes with tags of this bucket, waiting to be known as used */
  private readonly waiting = new ByteStore();
  private readonly waitingAt: number[] = [];

  constructor(setup: PlaceNodesSetup, worker: number) {
    this.setup = setup;
    this.refReader = new SpillReader(setup.refs);
    this.places = new Spill(join(setup.temp, `places-${worker}`), setup.chunks);
    this.fine = new Spill(join(setup.temp, `fine-${worker}`), setup.chunks);
    this.tagged = new Spill(join(setup.temp, `tagged-${worker}`), setup.taggedBuckets);
  }

  /** Takes in nodes of the bucket, in order of id. */
  take(batch: NodeBatch): void {
    const { lookup } = this;
    const { count, id, lat, lon } = batch;
    const before = lookup.count;
    lookup.add(batch);
    for (let i = 0; i < count; i++) {
      const choice = this.choose(batch, i);
      if (choice === undefined) continue;
      this.waitingAt.push(before + i, this.waiting.at);
      writeTagged({ id: id[i]!, lat: lat[i]!, lon: lon[i]!, choice, texts: this.texts }, this.waiting);
    }
  }

  private choose(batch: NodeBatch, i: number): NodeChoice | undefined {
    if (batch.packed) {
      const packed = batch.packed(i);
      return packed && this.chooser.choose(packed, 0, this.texts);
    }
    const tags = batch.tags(i);
    return tags && chooseByTags(tags, 0, NODE_RULE, this.texts);
  }

  /** All nodes of the bucket are there: hands their places on. */
  finishBucket(bucket: number): void {
    const { lookup, refStore } = this;
    lookup.build();
    if (this.used.length < lookup.count) this.used = new Uint8Array(lookup.id.length);
    this.used.fill(0, 0, lookup.count);
    const length = this.refReader.read(bucket, refStore);
    if (this.setup.first) this.placeCompact(this.setup.first[bucket]!, length);
    else this.placeWide(length);
    this.keepTagged(bucket);
    this.weigh();
    lookup.clear();
  }

  end(): PlacedNodes {
    this.refReader.close();
    return {
      places: this.places.end(),
      fine: this.fine.end(),
      tagged: this.tagged.end(),
      nodes: this.nodes,
    };
  }

  private placeCompact(first: number, length: number): void {
    const { view } = this.refStore;
    for (let at = 0; at < length; at += 8)
      this.place(first + view.getUint32(at, true), view.getUint32(at + 4, true));
  }

  private placeWide(length: number): void {
    const { view } = this.refStore;
    for (let at = 0; at < length; at += 12)
      this.place(view.getFloat64(at, true), view.getUint32(at + 8, true));
  }

  private place(id: number, slot: number): void {
    const { lookup } = this;
    const node = lookup.indexOf(id);
    if (node < 0) return;
    this.used[node] = 1;
    const lat7 = lookup.lat7[node]!;
    if (lat7 === FINE) {
      const out = this.fine.place(slot >>> CHUNK_BITS, FINE_PLACE_BYTES)!;
      out.view.setUint32(out.at, slot, true);
      out.view.setFloat64(out.at + 4, lookup.lat[node]!, true);
      out.view.setFloat64(out.at + 12, lookup.lon[node]!, true);
      out.at += FINE_PLACE_BYTES;
      return;
    }
    const out = this.places.place(slot >>> CHUNK_BITS, PLACE_BYTES)!;
    const { view, at } = out;
    view.setUint32(at, slot, true);
    view.setInt32(at + 4, lat7, true);
    view.setInt32(at + 8, lookup.lon7[node]!, true);
    out.at = at + PLACE_BYTES;
  }

  /** Of the nodes with tags those that a way uses or that stand for themselves. */
  private keepTagged(bucket: number): void {
    const { waiting, waitingAt } = this;
    for (let i = 0; i < waitingAt.length; i += 2) {
      const node = waitingAt[i]!;
      const from = waitingAt[i + 1]!;
      const to = waitingAt[i + 3] ?? waiting.at;
      const stands = waiting.bytes[from] === 1;
      if (this.used[node] === 0 && !stands) continue;
      this.used[node] = 1;
      this.tagged.add(bucket % this.setup.taggedBuckets, waiting.bytes, from, to);
    }
    waitingAt.length = 0;
    waiting.at = 0;
  }

  private weigh(): void {
    const { lookup, rows, used } = this;
    const { weights } = this.setup;
    const shift = CELL_ZOOM - WEIGHT_ZOOM;
    let cell = -1;
    let weight = 0;
    for (let node = 0; node < lookup.count; node++) {
      if (used[node] === 0) continue;
      this.nodes++;
      const here =
        ((rows.rowAt(lookup.lat[node]!) >> shift) << WEIGHT_ZOOM) | (columnAt(lookup.lon[node]!) >> shift);
      if (here !== cell) {
        if (weight > 0) addWeight(weights, cell, weight);
        cell = here;
        weight = 0;
      }
      weight++;
    }
    if (weight > 0) addWeight(weights, cell, weight);
  }
}
