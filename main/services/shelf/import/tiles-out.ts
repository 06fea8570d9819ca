import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { bucketOfTile, type TilePlan } from '../../../../geo/shelf/import/tile-plan.ts';
import {
  TILE_HEAD_BYTES,
  type TileRecordKind,
  writeTileHead,
} from '../../../../geo/shelf/import/tile-record.ts';
import { LAYER, type TiledLayer } from '../../../../geo/shelf/layers.ts';
import { Spill } from './spill.ts';
import type { SpillIndex } from './spill-index.ts';

/** Hands records on to the tiles they belong to. */
export class TilesOut {
  /** the record to be put; written anew for each */
  readonly body = new ByteStore(64 * 1024);
  private readonly plan: TilePlan;
  private readonly spill: Spill;
  private readonly large = new ByteStore(64 * 1024);
  private readonly last: { layer: TiledLayer; tile: number; bucket: number } = {
    layer: 'wide',
    tile: -1,
    bucket: 0,
  };

  constructor(path: string, plan: TilePlan) {
    this.plan = plan;
    this.spill = new Spill(path, plan.buckets);
  }

  /** Puts what stands in `body` into a tile. */
  put(layer: TiledLayer, kind: TileRecordKind, tile: number): void {
    const { body, last } = this;
    if (tile !== last.tile || layer !== last.layer) {
      last.layer = layer;
      last.tile = tile;
      last.bucket = bucketOfTile(this.plan, layer, tile);
    }
    const { bucket } = last;
    const head = { layer: LAYER[layer], kind, tile, length: body.at };
    const out = this.spill.place(bucket, TILE_HEAD_BYTES + body.at);
    if (out) {
      writeTileHead(out, head);
      out.append(body.bytes, 0, body.at);
      return;
    }
    const { large } = this;
    large.at = 0;
    large.room(TILE_HEAD_BYTES + body.at);
    writeTileHead(large, head);
    large.append(body.bytes, 0, body.at);
    this.spill.add(bucket, large.bytes, 0, large.at);
  }

  end(): SpillIndex {
    return this.spill.end();
  }
}
