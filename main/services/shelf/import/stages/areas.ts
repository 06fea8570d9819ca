import { join } from 'node:path';
import type { Box } from '../../../../../geo/roads/box.ts';
import { BoxMaker } from '../../../../../geo/roads/box.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { RELATION } from '../../../../../geo/shelf/import/choose.ts';
import { newLocated } from '../../../../../geo/shelf/import/located.ts';
import { isDrawnArea, type ThinnedLayer, ThinnedWay } from '../../../../../geo/shelf/import/thinned-way.ts';
import type { TilePlan } from '../../../../../geo/shelf/import/tile-plan.ts';
import { TILE_RECORD } from '../../../../../geo/shelf/import/tile-record.ts';
import { readPlaces, WayRecord } from '../../../../../geo/shelf/import/way-record.ts';
import { type CellRange, tilesOfCells, WayTiles } from '../../../../../geo/shelf/import/way-tiles.ts';
import { EDGE, LAYER_ZOOM } from '../../../../../geo/shelf/layers.ts';
import { SpillReader } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { TilesOut } from '../tiles-out.ts';

export const AREA_BUCKETS = 128;

/** The bucket of an area's edges. */
export function areaBucket(relation: number): number {
  return Math.floor(relation / 64) % AREA_BUCKETS;
}

export interface AreasSetup {
  readonly temp: string;
  readonly areas: readonly SpillIndex[];
  readonly plan: TilePlan;
}

/** Zones whole, and areas thinned, in all tiles that their box touches: their edges must be brought together first. */
export class AreaSpreader {
  private readonly reader: SpillReader;
  private readonly tiles: TilesOut;
  private readonly store = new ByteStore();
  private readonly record = new WayRecord();
  private readonly located = newLocated();
  private readonly finder = new WayTiles();
  private readonly thinned = new ThinnedWay();

  constructor(setup: AreasSetup, worker: number) {
    this.reader = new SpillReader(setup.areas);
    this.tiles = new TilesOut(join(setup.temp, `area-tiles-${worker}`), setup.plan);
  }

  run(bucket: number): void {
    const { store } = this;
    const length = this.reader.read(bucket, store);
    const byRelation = new Map<number, { readonly from: number; readonly to: number }[]>();
    while (store.at < length) {
      const relation = store.readDouble();
      const size = store.view.getUint32(store.at, true);
      const from = store.at + 4;
      store.at = from + size;
      const there = byRelation.get(relation);
      if (there) there.push({ from, to: store.at });
      else byRelation.set(relation, [{ from, to: store.at }]);
    }
    for (const [relation, edges] of byRelation) this.spread(relation, edges);
  }

  end(): { readonly tiles: SpillIndex } {
    this.reader.close();
    return { tiles: this.tiles.end() };
  }

  private spread(relation: number, edges: readonly { readonly from: number; readonly to: number }[]): void {
    const maker = new BoxMaker();
    let as = 0;
    for (const { from } of edges) {
      this.readEdge(from);
      const { located } = this;
      for (let i = 0; i < located.count; i++)
        if (!Number.isNaN(located.lat[i]!)) maker.add(located.lat[i]!, located.lon[i]!);
      as = this.record.memberships.find((one) => one.relation === relation)?.as ?? as;
    }
    const box = maker.box();
    if (box === undefined) return;
    const cells = this.finder.cellsOf(box);
    if ((as & RELATION.zone) !== 0) for (const edge of edges) this.putWhole(edge, cells);
    if ((as & RELATION.drawn8) !== 0 && isDrawnArea(box, 'draw8'))
      this.putThinned('draw8', relation, edges, { box, cells });
    if ((as & RELATION.drawn5) !== 0 && isDrawnArea(box, 'draw5'))
      this.putThinned('draw5', relation, edges, { box, cells });
  }

  private readEdge(from: number): void {
    const { store, record } = this;
    store.at = from;
    record.read(store);
    record.skipRefs(store);
    readPlaces(store, record.count, this.located);
  }

  private putWhole({ from, to }: { readonly from: number; readonly to: number }, cells: CellRange): void {
    const { tiles } = this;
    tiles.body.at = 0;
    tiles.body.append(this.store.bytes, from, to);
    for (const tile of tilesOfCells(cells, LAYER_ZOOM.far)) tiles.put('far', TILE_RECORD.way, tile);
  }

  private putThinned(
    layer: ThinnedLayer,
    relation: number,
    edges: readonly { readonly from: number }[],
    { box, cells }: { readonly box: Box; readonly cells: CellRange },
  ): void {
    const { store, record, thinned, tiles } = this;
    for (const { from } of edges) {
      this.readEdge(from);
      store.at = record.refsAt;
      record.readRefs(store, thinned.idsFor(record.count));
      thinned.take(this.located);
      if (!thinned.thin(layer, box, true)) continue;
      tiles.body.at = 0;
      const memberships = record.memberships.filter((one) => one.relation === relation);
      thinned.tags.at = 0;
      thinned.write({ id: record.id, kind: EDGE }, memberships, tiles.body);
      for (const tile of tilesOfCells(cells, LAYER_ZOOM[layer])) tiles.put(layer, TILE_RECORD.way, tile);
    }
  }
}
