import { closeSync, openSync } from 'node:fs';
import { join } from 'node:path';
import type { RawWay } from '../../../../../geo/roads/sink.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { RELATION } from '../../../../../geo/shelf/import/choose.ts';
import { chooseByTags, WAY_AS, WAY_RULE } from '../../../../../geo/shelf/import/choose-by-tags.ts';
import { newTexts } from '../../../../../geo/shelf/import/chosen-texts.ts';
import { bucketCount, IdBuckets, type IdPlan } from '../../../../../geo/shelf/import/id-buckets.ts';
import { PackedChooser } from '../../../../../geo/shelf/import/packed-choice.ts';
import { type Membership, writeWay } from '../../../../../geo/shelf/import/way-record.ts';
import { Spill, SpillReader, writeWhole } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { cannotWrite, Stopped } from '../stopped.ts';
import { PAIR_BYTES } from './take-relations.ts';

/** So many nodes of ways are brought together at a time; more than one way can have (MOST_PARTS). */
export const CHUNK_BITS = 19;
const CHUNK_SLOTS = 1 << CHUNK_BITS;
/** A chunk and a place within it make one number of 32 bits. */
const MOST_CHUNKS = 1 << (32 - CHUNK_BITS);

/** Ways that wait for the places of their nodes. */
export interface WayChunk {
  readonly path: string;
  readonly offset: number;
  readonly length: number;
  readonly ways: number;
  readonly slots: number;
}

export interface TakeWaysSetup {
  readonly temp: string;
  readonly nodes: IdPlan;
  /** whether ids within a bucket of nodes fit 32 bits */
  readonly compact: boolean;
  /** counts the chunks of all workers */
  readonly chunkCounter: Int32Array;
  readonly pairs: readonly SpillIndex[];
}

export interface TakenWays {
  /** node id and slot by bucket of the node */
  readonly refs: SpillIndex;
  /** by chunk number; those of other workers are missing */
  readonly chunks: readonly (readonly [chunk: number, WayChunk])[];
}

/** Keeps the ways that are wanted, and asks for the places of their nodes. */
export class WayTaker {
  private readonly setup: TakeWaysSetup;
  private readonly refs: Spill;
  private readonly nodeBuckets: IdBuckets;
  private readonly first: Float64Array | undefined;
  private readonly pairReader: SpillReader;
  private readonly pairStore = new ByteStore();
  private readonly path: string;
  private readonly fd: number;
  private written = 0;
  private readonly chunks: (readonly [number, WayChunk])[] = [];
  private readonly store = new ByteStore(64 * 1024);
  private chunk = -1;
  private slots = 0;
  private ways = 0;
  private readonly chooser = new PackedChooser(WAY_RULE);
  private readonly texts = newTexts();
  /** memberships of this range's ways, by way id */
  private members = new Map<number, Membership[]>();

  constructor(setup: TakeWaysSetup, worker: number) {
    this.setup = setup;
    this.refs = new Spill(join(setup.temp, `refs-${worker}`), bucketCount(setup.nodes));
    this.nodeBuckets = new IdBuckets(setup.nodes);
    this.first = setup.compact && setup.nodes.kind === 'ranges' ? setup.nodes.first : undefined;
    this.pairReader = new SpillReader(setup.pairs);
    this.path = join(setup.temp, `ways-${worker}`);
    try {
      this.fd = openSync(this.path, 'w');
    } catch (error) {
      throw cannotWrite(error);
    }
  }

  /** To be called before the ways of each bucket. */
  startBucket(bucket: number): void {
    this.members = new Map();
    const { pairStore: store } = this;
    const length = this.pairReader.read(bucket, store);
    for (let at = 0; at < length; at += PAIR_BYTES) {
      store.at = at;
      const way = store.readDouble();
      const relation = store.readDouble();
      const member = store.view.getUint32(at + 16, true);
      const as = store.view.getUint32(at + 20, true);
      const there = this.members.get(way);
      if (there) there.push({ relation, member, as });
      else this.members.set(way, [{ relation, member, as }]);
    }
    // whoever wrote them first
    for (const list of this.members.values())
      list.sort((a, b) => a.relation - b.relation || a.member - b.member);
  }

  take(way: RawWay): void {
    const { refs, count } = way;
    if (count === 0) return;
    const memberships = (this.members.size > 0 ? this.members.get(way.id) : undefined) ?? NONE;
    const isEdge = memberships !== NONE && memberships.some((one) => (one.as & RELATION.area) !== 0);
    const as = (isEdge ? WAY_AS.edge : 0) + (count > 3 && refs[0] === refs[count - 1] ? WAY_AS.closed : 0);
    const { texts } = this;
    const choice = way.packed
      ? this.chooser.choose(way.packed, as, texts)
      : chooseByTags(way.tags(), as, WAY_RULE, texts);
    if (choice === undefined) return;
    this.makeRoom(count);
    writeWay({ id: way.id, choice, memberships, texts, refs, count }, this.store);
    this.ways++;
    this.askPlaces(refs, count);
  }

  end(): TakenWays {
    this.closeChunk();
    closeSync(this.fd);
    this.pairReader.close();
    return { refs: this.refs.end(), chunks: this.chunks };
  }

  private askPlaces(refs: Float64Array, count: number): void {
    const { first, nodeBuckets, refs: out } = this;
    let slot = this.chunk * CHUNK_SLOTS + this.slots;
    this.slots += count;
    if (first === undefined) {
      for (let i = 0; i < count; i++, slot++) {
        const store = out.place(nodeBuckets.bucketOf(refs[i]!), 12)!;
        store.double(refs[i]!);
        store.view.setUint32(store.at, slot, true);
        store.at += 4;
      }
      return;
    }
    for (let i = 0; i < count; i++, slot++) {
      const bucket = nodeBuckets.bucketOf(refs[i]!);
      const step = refs[i]! - first[bucket]!;
      // of such a node the source knows nothing
      if (step < 0 || step >= 2 ** 32) continue;
      const store = out.place(bucket, 8)!;
      store.view.setUint32(store.at, step, true);
      store.view.setUint32(store.at + 4, slot, true);
      store.at += 8;
    }
  }

  private makeRoom(count: number): void {
    if (this.chunk >= 0 && this.slots + count <= CHUNK_SLOTS) return;
    this.closeChunk();
    this.chunk = Atomics.add(this.setup.chunkCounter, 0, 1);
    if (this.chunk >= MOST_CHUNKS) throw new Stopped(TOO_LARGE);
  }

  private closeChunk(): void {
    if (this.chunk < 0) return;
    const { store, path } = this;
    writeWhole(this.fd, store.bytes.subarray(0, store.at), this.written);
    this.chunks.push([
      this.chunk,
      { path, offset: this.written, length: store.at, ways: this.ways, slots: this.slots },
    ]);
    this.written += store.at;
    store.at = 0;
    this.slots = 0;
    this.ways = 0;
    this.chunk = -1;
  }
}

const NONE: readonly Membership[] = [];

const TOO_LARGE = {
  code: 'too-large',
  message:
    'The map is too large to be put on the shelf in one piece: its ways have over 4,000 million nodes. Import extracts of its parts instead.',
};
