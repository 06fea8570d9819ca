import { toRad } from '../../earth/angles.ts';
import { mercatorY } from '../../earth/mercator.ts';
import type { Box } from '../../roads/box.ts';
import { PER_DEGREE } from '../encode-block.ts';
import { EDGE } from '../layers.ts';
import { ByteStore } from './byte-store.ts';
import { PLAIN_EDGE, type WayChoice } from './choose.ts';
import { type Located, newLocated, sizeLocated, type WholePlaces } from './located.ts';
import { LineThinner } from './thin-line.ts';
import { type Membership, writeFinePlaces, writeWay, writeWholePlaces } from './way-record.ts';

export type ThinnedLayer = 'draw8' | 'draw5';

/** The largest zoom of 256-pixel tiles that is drawn from a layer. */
const DRAWN_AT: Readonly<Record<ThinnedLayer, number>> = { draw8: 11, draw5: 8 };
const TILE_PX = 256;
/** What a line may be missed by, what it must measure, and what an area must. */
const TOLERANCE_PX = 0.5;
const LINE_PX = 1;
const AREA_PX = 2.5;

/** Pixels across the whole map of a layer's largest zoom. */
const ACROSS_PX: Readonly<Record<ThinnedLayer, number>> = {
  draw8: TILE_PX * 2 ** DRAWN_AT.draw8,
  draw5: TILE_PX * 2 ** DRAWN_AT.draw5,
};

/** Whether an area of this box is large enough to be drawn in a layer. */
export function isDrawnArea(box: Box, layer: ThinnedLayer): boolean {
  return measures(box, layer, AREA_PX);
}

function measures({ south, north, west, east }: Box, layer: ThinnedLayer, px: number): boolean {
  const width = (east - west) / 360;
  const height = mercatorY(south) - mercatorY(north);
  return Math.max(width, height) * ACROSS_PX[layer] >= px;
}

/** By kind, EDGE the last: nothing is asked of what is drawn but its kind. */
const CHOICES: readonly WayChoice[] = Array.from({ length: EDGE + 1 }, (_, kind) => ({
  ...PLAIN_EDGE,
  kind,
}));

/** A line thinned for the map zoomed out; used for one way after the other. */
export class ThinnedWay {
  private readonly thinner = new LineThinner();
  /** what is there of the way: ids, places, and places on the unit square */
  private readonly all = newLocated();
  private ids = new Float64Array(4096);
  private x = new Float64Array(4096);
  private y = new Float64Array(4096);
  private closed = false;
  /** what stays, and whether it is all whole ten-millionths */
  private readonly kept = newLocated();
  private keptIds = new Float64Array(4096);
  private readonly whole = { lat7: new Int32Array(4096), lon7: new Int32Array(4096) };
  private readonly texts = { tags: new ByteStore(256), drawn: new ByteStore(8), name: new ByteStore(8) };
  /** tag set of what is written next */
  readonly tags = this.texts.tags;

  /** Room for the ids of so many nodes: to be filled before `take`. */
  idsFor(count: number): Float64Array {
    sizeLocated(this.all, count);
    sizeLocated(this.kept, count);
    if (this.ids.length < count) this.grow(count * 2);
    return this.ids;
  }

  /** Takes in a way whose ids were filled in. */
  take({ count, lat, lon }: Located): void {
    const { all, ids, x, y } = this;
    this.closed = count > 3 && ids[0] === ids[count - 1];
    let there = 0;
    for (let i = 0; i < count; i++) {
      if (Number.isNaN(lat[i]!)) continue;
      all.lat[there] = lat[i]!;
      all.lon[there] = lon[i]!;
      ids[there] = ids[i]!;
      there++;
    }
    all.count = there;
    // over a way's few kilometres the projection stretches both directions alike
    const stretch = 1 / Math.max(0.01, Math.cos(toRad(all.lat[0] ?? 0)));
    for (let i = 0; i < there; i++) {
      x[i] = all.lon[i]! / 360;
      y[i] = (all.lat[i]! * stretch) / 360;
    }
  }

  /** Thins it for a layer. @returns whether anything is left to be drawn */
  thin(layer: ThinnedLayer, box: Box, asArea = this.closed): boolean {
    if (!measures(box, layer, asArea ? AREA_PX : LINE_PX)) return false;
    const { all, kept, keptIds, thinner } = this;
    if (all.count < 2) return false;
    thinner.thin(this.x, this.y, all.count, TOLERANCE_PX / ACROSS_PX[layer]);
    let count = 0;
    for (let i = 0; i < all.count; i++) {
      if (thinner.keep[i] === 0) continue;
      kept.lat[count] = all.lat[i]!;
      kept.lon[count] = all.lon[i]!;
      keptIds[count] = this.ids[i]!;
      count++;
    }
    kept.count = count;
    return count > (this.closed ? 3 : 1);
  }

  private grow(count: number): void {
    this.ids = new Float64Array(count);
    this.x = new Float64Array(count);
    this.y = new Float64Array(count);
    this.keptIds = new Float64Array(count);
    this.whole.lat7 = new Int32Array(count);
    this.whole.lon7 = new Int32Array(count);
  }

  private wholePlaces(): WholePlaces | undefined {
    const { kept, whole } = this;
    for (let i = 0; i < kept.count; i++) {
      whole.lat7[i] = Math.round(kept.lat[i]! * PER_DEGREE);
      whole.lon7[i] = Math.round(kept.lon[i]! * PER_DEGREE);
      if (!Object.is(whole.lat7[i]! / PER_DEGREE, kept.lat[i])) return undefined;
      if (!Object.is(whole.lon7[i]! / PER_DEGREE, kept.lon[i])) return undefined;
    }
    return whole;
  }

  /** Writes what is left as a way's record with its places; its tag set stands in `tags`. */
  write(
    { id, kind }: { readonly id: number; readonly kind: number },
    memberships: readonly Membership[],
    out: ByteStore,
  ): void {
    const { kept, keptIds, texts } = this;
    const choice = CHOICES[kind]!;
    writeWay({ id, choice, memberships, texts, refs: keptIds, count: kept.count }, out);
    const whole = this.wholePlaces();
    if (whole) writeWholePlaces(whole, 0, kept.count, out);
    else writeFinePlaces(kept, out);
  }
}
