import { weighLine } from '../../basemap/weigh-line.ts';
import { mercatorX, mercatorY } from '../../earth/mercator.ts';
import type { Box } from '../../roads/box.ts';
import type { ByteStore } from './byte-store.ts';
import { DRAWN, ROAD_CLASS } from './choose.ts';
import { type Located, newLocated, sizeLocated } from './located.ts';
import { type Membership, type WayRecord, writePlaces, writeWay } from './way-record.ts';

export type ThinnedLayer = 'draw8' | 'draw5';

/** The largest zoom of 256-pixel tiles that is drawn from a layer. */
const DRAWN_AT: Readonly<Record<ThinnedLayer, number>> = { draw8: 11, draw5: 8 };
const TILE_PX = 256;
/** What a line may be missed by, and what an area must measure. */
const TOLERANCE_PX = 0.5;
const AREA_PX = 2.5;

/** Pixels across the whole map of a layer's largest zoom. */
function across(layer: ThinnedLayer): number {
  return TILE_PX * 2 ** DRAWN_AT[layer];
}

/** Whether an area of this box is large enough to be drawn in a layer. */
export function isDrawnArea({ south, north, west, east }: Box, layer: ThinnedLayer): boolean {
  const width = (east - west) / 360;
  const height = mercatorY(south) - mercatorY(north);
  return Math.max(width, height) * across(layer) >= AREA_PX;
}

/** A line thinned for the map zoomed out; used for one way after the other. */
export class ThinnedWay {
  private readonly all = newLocated();
  private allIds = new Float64Array(4096);
  private weight: Float32Array = new Float32Array(0);
  private closed = false;
  private readonly kept = newLocated();
  private ids = new Float64Array(4096);

  /** Takes in the way of a record whose store stands at the ids of its nodes. */
  take(record: WayRecord, store: ByteStore, { lat, lon }: Located): void {
    const { count } = record;
    const { all } = this;
    sizeLocated(all, count);
    if (this.allIds.length < count) {
      this.allIds = new Float64Array(count * 2);
      this.ids = new Float64Array(count * 2);
    }
    record.readRefs(store, this.allIds);
    this.closed = count > 3 && this.allIds[0] === this.allIds[count - 1];
    let there = 0;
    for (let i = 0; i < count; i++) {
      if (Number.isNaN(lat[i]!)) continue;
      all.lat[there] = lat[i]!;
      all.lon[there] = lon[i]!;
      this.allIds[there] = this.allIds[i]!;
      there++;
    }
    all.count = there;
    const x = Float64Array.from(all.lon.subarray(0, there), mercatorX);
    const y = Float64Array.from(all.lat.subarray(0, there), mercatorY);
    this.weight = weighLine(
      Uint32Array.from({ length: there }, (_, i) => i),
      x,
      y,
    );
  }

  /** Thins it for a layer. @returns whether anything is left to be drawn */
  thin(layer: ThinnedLayer, box: Box, asArea = this.closed): boolean {
    if (asArea && !isDrawnArea(box, layer)) return false;
    const { all, kept, weight } = this;
    const least = (TOLERANCE_PX / across(layer)) ** 2;
    sizeLocated(kept, all.count);
    let count = 0;
    for (let i = 0; i < all.count; i++) {
      if (weight[i]! < least) continue;
      kept.lat[count] = all.lat[i]!;
      kept.lon[count] = all.lon[i]!;
      this.ids[count] = this.allIds[i]!;
      count++;
    }
    kept.count = count;
    return count > (this.closed ? 3 : 1);
  }

  /** Writes what is left as a way's record with its places. */
  write(
    {
      id,
      kind,
      tags,
      memberships,
    }: {
      readonly id: number;
      readonly kind: number;
      readonly tags: Uint8Array;
      readonly memberships: readonly Membership[];
    },
    out: ByteStore,
  ): void {
    const choice = {
      kind,
      nearOnly: false,
      zone: false,
      drawn: DRAWN.no,
      roadClass: ROAD_CLASS.none,
      service: false,
      name: undefined,
    };
    const { kept, ids } = this;
    writeWay(
      {
        id,
        choice,
        memberships,
        tags,
        drawnTags: undefined,
        nameText: undefined,
        refs: ids,
        count: kept.count,
      },
      out,
    );
    writePlaces(kept, undefined, 0, out);
  }
}
