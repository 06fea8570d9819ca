import { join } from 'node:path';
import type { Tags } from '../../../../../geo/roads/roads.ts';
import type { FileFacts, MapSink, NodeBatch, RawWay } from '../../../../../geo/roads/sink.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { IdBuckets, type IdPlan } from '../../../../../geo/shelf/import/id-buckets.ts';
import { encodeTags } from '../../../../../geo/shelf/tag-bytes.ts';
import { openOrdinary } from '../../../files/read-bytes.ts';
import { Spill } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { Stopped, sourceLost } from '../stopped.ts';
import { RelationTaker, type TakenRelations } from './take-relations.ts';

export interface ReadGeneralSetup {
  readonly path: string;
  readonly temp: string;
  readonly nodes: IdPlan & { readonly kind: 'mixed' };
  readonly ways: IdPlan & { readonly kind: 'mixed' };
  /** bytes of the file done so far, shared, in units of 64 kB */
  readonly done: Int32Array;
}

/** What the general way of reading puts aside, sorted into buckets by id. */
export interface ReadGeneral extends TakenRelations {
  readonly nodes: SpillIndex;
  readonly ways: SpillIndex;
  readonly facts: FileFacts;
}

/** Reads a source of any format and order once, and puts its elements into buckets by id. */
export class GeneralReader {
  private readonly setup: ReadGeneralSetup;
  private readonly nodes: Spill;
  private readonly ways: Spill;
  private readonly nodeBuckets: IdBuckets;
  private readonly wayBuckets: IdBuckets;
  private readonly relations: RelationTaker;
  private readonly record = new ByteStore();
  private facts: FileFacts = { notes: [] };

  constructor(setup: ReadGeneralSetup, worker: number) {
    this.setup = setup;
    this.nodes = new Spill(join(setup.temp, `all-nodes-${worker}`), setup.nodes.count);
    this.ways = new Spill(join(setup.temp, `all-ways-${worker}`), setup.ways.count);
    this.nodeBuckets = new IdBuckets(setup.nodes);
    this.wayBuckets = new IdBuckets(setup.ways);
    this.relations = new RelationTaker(setup, worker);
  }

  async run(): Promise<void> {
    const { path, done } = this.setup;
    const opened = await openOrdinary(path, 'map file');
    if (!opened.ok) throw new Stopped(opened.error);
    const { handle, size } = opened.value;
    const sink: MapSink = {
      nodes: (batch) => this.takeNodes(batch),
      way: (way) => this.takeWay(way),
      relation: (relation) => this.relations.take(relation),
    };
    try {
      // its readers take time to load, and most maps need none of them here
      const { readerFor } = await import('../../../map/tell-format.ts');
      const reader = await readerFor(handle, path);
      if (!reader.ok) throw new Stopped(reader.error);
      const pause = async (bytes: number) => {
        Atomics.store(done, 0, Math.floor(bytes / 65536));
      };
      const read = await reader.value({ handle, size, name: path, sink, withHash: false, pause });
      if (!read.ok) throw new Stopped(read.error);
      this.facts = read.value;
    } catch (error) {
      if (error instanceof Error && 'syscall' in error) throw sourceLost(path, error);
      throw error;
    } finally {
      await handle.close();
    }
  }

  end(): ReadGeneral {
    const { dataDate, notes, incomplete = [] } = this.facts;
    return {
      ...this.relations.end(),
      nodes: this.nodes.end(),
      ways: this.ways.end(),
      facts: dataDate === undefined ? { notes, incomplete } : { notes, incomplete, dataDate },
    };
  }

  private takeNodes(batch: NodeBatch): void {
    for (let i = 0; i < batch.count; i++)
      this.putNode(batch.id[i]!, batch.lat[i]!, batch.lon[i]!, { tags: batch.tags(i), listed: true });
  }

  private putNode(
    id: number,
    lat: number,
    lon: number,
    { tags, listed }: { readonly tags: Tags | undefined; readonly listed: boolean },
  ): void {
    const { record } = this;
    const bytes = tags ? encodeTags(tags) : NO_TAGS;
    record.at = 0;
    record.room(40);
    record.double(id);
    record.double(lat);
    record.double(lon);
    record.bytes[record.at++] = listed ? 1 : 0;
    record.uint(bytes.length);
    record.append(bytes);
    this.nodes.add(this.nodeBuckets.bucketOf(id), record.bytes, 0, record.at);
  }

  private takeWay(way: RawWay): void {
    const { record } = this;
    const { id, refs, count, lat, lon } = way;
    const tags = encodeTags(way.tags());
    record.at = 0;
    record.room(40 + count * 8);
    record.double(id);
    record.uint(count);
    for (let i = 0; i < count; i++) record.double(refs[i]!);
    record.uint(tags.length);
    record.append(tags);
    this.ways.add(this.wayBuckets.bucketOf(id), record.bytes, 0, record.at);
    if (!lat || !lon) return;
    for (let i = 0; i < count; i++)
      if (Math.abs(lat[i]!) <= 90 && Math.abs(lon[i]!) <= 180)
        this.putNode(refs[i]!, lat[i]!, lon[i]!, { tags: undefined, listed: false });
  }
}

const NO_TAGS = new Uint8Array(0);
