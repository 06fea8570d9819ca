import { GeneralBuckets } from '../general-buckets.ts';
import type { SpillIndex } from '../spill-index.ts';
import { NodePlacer, type PlacedNodes, type PlaceNodesSetup } from './place-nodes.ts';
import { type TakenWays, type TakeWaysSetup, WayTaker } from './take-ways.ts';

/** Elements of a source of any order, sorted into buckets by id. */
interface GeneralSource {
  /** for sentences */
  readonly name: string;
  readonly elements: readonly SpillIndex[];
}

export class GeneralWays {
  private readonly buckets: GeneralBuckets;
  private readonly taker: WayTaker;

  constructor(setup: TakeWaysSetup & GeneralSource, worker: number) {
    this.buckets = new GeneralBuckets(setup.name, setup.elements);
    this.taker = new WayTaker(setup, worker);
  }

  run(bucket: number): void {
    this.taker.startBucket(bucket);
    this.buckets.giveWays(bucket, (way) => this.taker.take(way));
  }

  end(): TakenWays {
    this.buckets.close();
    return this.taker.end();
  }
}

export class GeneralNodes {
  private readonly buckets: GeneralBuckets;
  private readonly placer: NodePlacer;

  constructor(setup: PlaceNodesSetup & GeneralSource, worker: number) {
    this.buckets = new GeneralBuckets(setup.name, setup.elements);
    this.placer = new NodePlacer(setup, worker);
  }

  run(bucket: number): void {
    this.buckets.giveNodes(bucket, (batch) => this.placer.take(batch));
    this.placer.finishBucket(bucket);
  }

  end(): PlacedNodes {
    this.buckets.close();
    return this.placer.end();
  }
}
