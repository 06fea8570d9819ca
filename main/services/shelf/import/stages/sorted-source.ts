import type { IdPlan } from '../../../../../geo/shelf/import/id-buckets.ts';
import type { BlobTable } from '../blob-table.ts';
import { SourceBlobs } from '../source-blobs.ts';
import { NotSorted } from '../stopped.ts';
import { NodePlacer, type PlacedNodes, type PlaceNodesSetup } from './place-nodes.ts';
import { RelationTaker, type TakenRelations } from './take-relations.ts';
import { type TakenWays, type TakeWaysSetup, WayTaker } from './take-ways.ts';

/** A sorted PBF file. */
export interface SortedSource {
  readonly path: string;
  readonly table: BlobTable;
}

/** The first blobs with ways and with relations in them; a blob of two kinds is read for both. */
export interface KindMarks {
  readonly firstWay: number;
  readonly firstRelation: number;
}

/** Consecutive blobs, and the bucket of ids they make. */
export interface BlobRange {
  readonly bucket: number;
  readonly from: number;
  readonly to: number;
}

/** First and last id of a range, so that neighbours can be told to follow each other; undefined where it is empty. */
export interface IdSpan {
  readonly first: number | undefined;
  readonly last: number | undefined;
}

export class SortedRelations {
  private readonly blobs: SourceBlobs;
  private readonly taker: RelationTaker;
  private readonly marks: KindMarks;

  constructor(
    setup: {
      readonly source: SortedSource;
      readonly marks: KindMarks;
      readonly temp: string;
      readonly ways: IdPlan;
    },
    worker: number,
  ) {
    this.marks = setup.marks;
    this.blobs = new SourceBlobs(setup.source.path, setup.source.table);
    this.taker = new RelationTaker(setup, worker);
  }

  run({ from, to }: BlobRange): IdSpan {
    const order = new Order();
    for (let blob = from; blob < to; blob++) {
      const kinds = this.blobs.give(blob, {
        relation: (relation) => {
          order.next(relation.id);
          this.taker.take(relation);
        },
      });
      if ((kinds.nodes || kinds.ways) && blob > this.marks.firstRelation) throw new NotSorted();
    }
    return order.span();
  }

  end(): TakenRelations {
    this.blobs.close();
    return this.taker.end();
  }
}

export class SortedWays {
  private readonly blobs: SourceBlobs;
  private readonly taker: WayTaker;
  private readonly marks: KindMarks;

  constructor(
    setup: TakeWaysSetup & { readonly source: SortedSource; readonly marks: KindMarks },
    worker: number,
  ) {
    this.blobs = new SourceBlobs(setup.source.path, setup.source.table);
    this.taker = new WayTaker(setup, worker);
    this.marks = setup.marks;
  }

  run({ bucket, from, to }: BlobRange): IdSpan {
    const order = new Order();
    this.taker.startBucket(bucket);
    for (let blob = from; blob < to; blob++) {
      const kinds = this.blobs.give(blob, {
        way: (way) => {
          // places that come with ways stand for nodes that may not be listed
          if (way.lat) throw new NotSorted();
          order.next(way.id);
          this.taker.take(way);
        },
      });
      const { firstWay, firstRelation } = this.marks;
      if ((kinds.relations && blob < firstRelation) || (kinds.nodes && blob > firstWay))
        throw new NotSorted();
    }
    return order.span();
  }

  end(): TakenWays {
    this.blobs.close();
    return this.taker.end();
  }
}

export class SortedNodes {
  private readonly blobs: SourceBlobs;
  private readonly placer: NodePlacer;
  private readonly setup: PlaceNodesSetup & { readonly marks: KindMarks };

  constructor(
    setup: PlaceNodesSetup & { readonly source: SortedSource; readonly marks: KindMarks },
    worker: number,
  ) {
    this.blobs = new SourceBlobs(setup.source.path, setup.source.table);
    this.placer = new NodePlacer(setup, worker);
    this.setup = setup;
  }

  run({ bucket, from, to }: BlobRange): IdSpan {
    const { placer } = this;
    const { lookup } = placer;
    for (let blob = from; blob < to; blob++) {
      const kinds = this.blobs.give(blob, { nodes: (batch) => placer.take(batch) });
      if ((kinds.ways || kinds.relations) && blob < this.setup.marks.firstWay) throw new NotSorted();
    }
    const { count } = lookup;
    const first = count > 0 ? lookup.id[0] : undefined;
    const last = count > 0 ? lookup.id[count - 1] : undefined;
    if (!lookup.ascending) throw new NotSorted();
    const base = this.setup.first?.[bucket];
    if (base !== undefined && last !== undefined && last - base >= 2 ** 32) throw new NotSorted();
    placer.finishBucket(bucket);
    return { first, last };
  }

  end(): PlacedNodes {
    this.blobs.close();
    return this.placer.end();
  }
}

/** Holds ids to their order. */
class Order {
  private first: number | undefined;
  private last: number | undefined;

  next(id: number): void {
    if (this.last !== undefined && id <= this.last) throw new NotSorted();
    this.first ??= id;
    this.last = id;
  }

  span(): IdSpan {
    return { first: this.first, last: this.last };
  }
}
