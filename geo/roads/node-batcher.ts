import type { Tags } from './roads.ts';
import type { MapSink } from './sink.ts';

const BATCH = 4096;

/** Collects nodes that come one by one into batches. */
export class NodeBatcher {
  private readonly give: MapSink['nodes'];
  private readonly id = new Float64Array(BATCH);
  private readonly lat = new Float64Array(BATCH);
  private readonly lon = new Float64Array(BATCH);
  private tags: (Tags | undefined)[] = [];

  constructor(sink: MapSink) {
    this.give = sink.nodes;
  }

  add(id: number, lat: number, lon: number, tags: Tags | undefined): void {
    const index = this.tags.length;
    this.id[index] = id;
    this.lat[index] = lat;
    this.lon[index] = lon;
    this.tags.push(tags);
    if (index + 1 === BATCH) this.flush();
  }

  /** Hands over what waits; needed before any way, so that the file's order is kept. */
  flush(): void {
    const { id, lat, lon, tags } = this;
    if (tags.length === 0) return;
    this.tags = [];
    this.give?.({ count: tags.length, id, lat, lon, tags: (index) => tags[index] });
  }
}
