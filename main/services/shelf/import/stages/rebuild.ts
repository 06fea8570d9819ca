import { closeSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { largest } from '../../../../../geo/lists.ts';
import type { Box } from '../../../../../geo/roads/box.ts';
import { BoxMaker } from '../../../../../geo/roads/box.ts';
import { WAY_KIND } from '../../../../../geo/roads/roads.ts';
import { LACKING, PER_DEGREE } from '../../../../../geo/shelf/encode-block.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { DRAWN, RELATION, ROAD_CLASS } from '../../../../../geo/shelf/import/choose.ts';
import { CELL_ZOOM, CELLS_ACROSS, RoadCells } from '../../../../../geo/shelf/import/grid.ts';
import {
  boxOfLocated,
  boxOfWhole,
  type Located,
  newLocated,
  newWayBox,
  sizeLocated,
} from '../../../../../geo/shelf/import/located.ts';
import { type ThinnedLayer, ThinnedWay } from '../../../../../geo/shelf/import/thinned-way.ts';
import type { TilePlan } from '../../../../../geo/shelf/import/tile-plan.ts';
import { TILE_RECORD } from '../../../../../geo/shelf/import/tile-record.ts';
import {
  type Membership,
  WayRecord,
  writeFinePlaces,
  writeWholePlaces,
} from '../../../../../geo/shelf/import/way-record.ts';
import {
  type CellRange,
  isLarge,
  isOneTile,
  tilesOfCells,
  WayTiles,
} from '../../../../../geo/shelf/import/way-tiles.ts';
import { LAYER_ZOOM, type TiledLayer } from '../../../../../geo/shelf/layers.ts';
import { NamesOut } from '../names-out.ts';
import { readWhole, Spill, SpillReader } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { TilesOut } from '../tiles-out.ts';
import { AREA_BUCKETS, areaBucket } from './areas.ts';
import { LINE_BUCKETS, lineBucket } from './join-lines.ts';
import { FINE_PLACE_BYTES, PLACE_BYTES } from './place-nodes.ts';
import { TaggedSpreader } from './tagged-nodes.ts';
import { CHUNK_BITS, type WayChunk } from './take-ways.ts';

export interface RebuildSetup {
  readonly temp: string;
  readonly chunks: readonly WayChunk[];
  readonly places: readonly SpillIndex[];
  readonly fine: readonly SpillIndex[];
  readonly tagged: readonly SpillIndex[];
  readonly plan: TilePlan;
  /** RASTER_BYTES, shared */
  readonly roads: SharedArrayBuffer;
}

export type RebuildTask =
  | { readonly kind: 'chunk'; readonly chunk: number }
  | { readonly kind: 'tagged'; readonly bucket: number };

export interface Rebuilt {
  readonly tiles: SpillIndex;
  readonly names: SpillIndex;
  /** edges of areas that are kept whole or thinned */
  readonly areas: SpillIndex;
  /** what is drawn thinned as a line */
  readonly lines: SpillIndex;
  readonly roads: number;
  readonly mainRoads: number;
  readonly minorRoads: number;
  readonly box: Box | undefined;
}

const SLOT_MASK = (1 << CHUNK_BITS) - 1;

/** Gives ways their places back and hands them on to their tiles. */
export class WayRebuilder {
  private readonly setup: RebuildSetup;
  private readonly tiles: TilesOut;
  private readonly names: NamesOut;
  private readonly nodes: TaggedSpreader;
  private readonly areas: Spill;
  private readonly lines: Spill;
  private readonly line = new ByteStore();
  private readonly placeReader: SpillReader;
  private readonly fineReader: SpillReader;
  private readonly taggedReader: SpillReader;
  private readonly roadCells: RoadCells;
  private readonly finder = new WayTiles();
  private readonly record = new WayRecord();
  private readonly located = newLocated();
  private readonly thinned = new ThinnedWay();
  readonly lat7: Int32Array;
  readonly lon7: Int32Array;
  private readonly finePlaces = new Map<number, readonly [lat: number, lon: number]>();
  private readonly store = new ByteStore();
  /** of the way at hand */
  private readonly box = newWayBox();
  private readonly around = new BoxMaker();
  private roads = 0;
  private readonly byClass = [0, 0, 0];
  private fds = new Map<string, number>();

  constructor(setup: RebuildSetup, worker: number) {
    this.setup = setup;
    this.tiles = new TilesOut(join(setup.temp, `tiles-${worker}`), setup.plan);
    this.names = new NamesOut(join(setup.temp, `names-${worker}`));
    this.nodes = new TaggedSpreader(this.tiles, this.names);
    this.areas = new Spill(join(setup.temp, `areas-${worker}`), AREA_BUCKETS);
    this.lines = new Spill(join(setup.temp, `lines-${worker}`), LINE_BUCKETS);
    this.placeReader = new SpillReader(setup.places);
    this.fineReader = new SpillReader(setup.fine);
    this.taggedReader = new SpillReader(setup.tagged);
    this.roadCells = new RoadCells(setup.roads);
    const slots = Math.max(0, largest(setup.chunks.map((chunk) => chunk.slots)));
    this.lat7 = new Int32Array(slots);
    this.lon7 = new Int32Array(slots);
  }

  run(task: RebuildTask): void {
    const { store } = this;
    if (task.kind === 'tagged') {
      const length = this.taggedReader.read(task.bucket, store);
      this.nodes.spread(store, length);
      return;
    }
    this.readPlaces(task.chunk);
    const { path, offset, length } = this.setup.chunks[task.chunk]!;
    store.empty(length);
    readWhole(this.open(path), store.bytes, 0, length, offset);
    let slot = 0;
    while (store.at < length) {
      const from = store.at;
      this.record.read(store);
      this.record.skipRefs(store);
      const to = store.at;
      this.record.readTail(store);
      const next = store.at;
      this.hand(from, to, slot);
      store.at = next;
      slot += this.record.count;
    }
  }

  end(): Rebuilt {
    for (const fd of this.fds.values()) closeSync(fd);
    for (const reader of [this.placeReader, this.fineReader, this.taggedReader]) reader.close();
    return {
      tiles: this.tiles.end(),
      names: this.names.end(),
      areas: this.areas.end(),
      lines: this.lines.end(),
      roads: this.roads,
      mainRoads: this.byClass[ROAD_CLASS.main]!,
      minorRoads: this.byClass[ROAD_CLASS.minor]!,
      box: this.around.box(),
    };
  }

  private open(path: string): number {
    const known = this.fds.get(path);
    if (known !== undefined) return known;
    const fd = openSync(path, 'r');
    this.fds.set(path, fd);
    return fd;
  }

  private readPlaces(chunk: number): void {
    const { store, lat7, lon7 } = this;
    lat7.fill(LACKING, 0, this.setup.chunks[chunk]!.slots);
    const length = this.placeReader.read(chunk, store);
    const { view } = store;
    for (let at = 0; at < length; at += PLACE_BYTES) {
      const slot = view.getUint32(at, true) & SLOT_MASK;
      lat7[slot] = view.getInt32(at + 4, true);
      lon7[slot] = view.getInt32(at + 8, true);
    }
    this.finePlaces.clear();
    const fineLength = this.fineReader.read(chunk, store);
    for (let at = 0; at < fineLength; at += FINE_PLACE_BYTES)
      this.finePlaces.set(store.view.getUint32(at, true) & SLOT_MASK, [
        store.view.getFloat64(at + 4, true),
        store.view.getFloat64(at + 12, true),
      ]);
  }

  /** Hands the way of the record just read, the store's bytes from … to, to its tiles. */
  private hand(from: number, to: number, slot: number): void {
    const { record, box } = this;
    const { count } = record;
    this.located.count = -1;
    const whole = boxOfWhole(this, slot, count, box);
    if (!whole && !boxOfLocated(this.locate(slot), box)) return;
    const cells = this.finder.cellsOf(box);
    const { body } = this.tiles;
    body.at = 0;
    body.append(this.store.bytes, from, to);
    if (whole) writeWholePlaces(this, slot, count, body);
    else writeFinePlaces(this.located, body);
    if (isNear(record, cells)) this.putInBox('near', cells);
    else this.putAlong('wide', cells, slot);
    if (record.kind === WAY_KIND.ferry) this.putAlong('far', cells, slot);
    if (record.isZone) this.putInBox('far', cells);
    if (record.service) this.putInBox('service', cells);
    if (record.memberships.length > 0) this.handAreas();
    if (record.kind === WAY_KIND.road || record.kind === WAY_KIND.ferry) this.countRoad(cells, slot);
    if (record.nameTo > 0) this.handName(slot);
    if (record.drawn === DRAWN.no) return;
    if (record.line) this.handLine(from, to);
    else this.handThinned(cells, slot);
  }

  /** Puts what stands in the body of `tiles` into every tile that the way's box touches. */
  private putInBox(layer: TiledLayer, cells: CellRange): void {
    const { tiles, finder } = this;
    const zoom = LAYER_ZOOM[layer];
    // most ways lie in one
    if (isOneTile(cells, zoom)) tiles.put(layer, TILE_RECORD.way, finder.oneTile(cells, zoom));
    else for (const tile of tilesOfCells(cells, zoom)) tiles.put(layer, TILE_RECORD.way, tile);
  }

  /** The same into every tile that its line touches. */
  private putAlong(layer: TiledLayer, cells: CellRange, slot: number): void {
    const { tiles, finder } = this;
    const zoom = LAYER_ZOOM[layer];
    if (isOneTile(cells, zoom)) tiles.put(layer, TILE_RECORD.way, finder.oneTile(cells, zoom));
    else
      for (const tile of finder.alongLine(this.locate(slot), zoom)) tiles.put(layer, TILE_RECORD.way, tile);
  }

  /** The places of the way at hand as degrees, worked out when first needed. */
  private locate(slot: number): Located {
    const { located, lat7, lon7, finePlaces } = this;
    const { count } = this.record;
    if (located.count === count) return located;
    sizeLocated(located, count);
    const { lat, lon } = located;
    for (let i = 0; i < count; i++) {
      const place = lat7[slot + i]!;
      if (place !== LACKING) {
        lat[i] = place / PER_DEGREE;
        lon[i] = lon7[slot + i]! / PER_DEGREE;
        continue;
      }
      const fine = finePlaces.size > 0 ? finePlaces.get(slot + i) : undefined;
      lat[i] = fine ? fine[0] : Number.NaN;
      lon[i] = fine ? fine[1] : Number.NaN;
    }
    return located;
  }

  private countRoad(cells: CellRange, slot: number): void {
    const { box } = this;
    this.roads++;
    this.byClass[this.record.roadClass]!++;
    this.around.add(box.south, box.west);
    this.around.add(box.north, box.east > 180 ? box.east - 360 : box.east);
    if (isOneTile(cells, CELL_ZOOM)) this.roadCells.mark(cells.fromX & (CELLS_ACROSS - 1), cells.fromY);
    else this.finder.markRoad(this.locate(slot), this.roadCells);
  }

  /** The edges of a zone or of an area that is drawn thinned wait for the others of it. */
  private handAreas(): void {
    const wanted = RELATION.zone + RELATION.drawn8;
    for (const { relation, as } of this.record.memberships) {
      if ((as & RELATION.area) === 0 || (as & wanted) === 0) continue;
      const { body } = this.tiles;
      const bytes = new ByteStore(12 + body.at);
      bytes.double(relation);
      bytes.view.setUint32(bytes.at, body.at, true);
      bytes.at += 4;
      bytes.append(body.bytes, 0, body.at);
      this.areas.add(areaBucket(relation), bytes.bytes, 0, bytes.at);
    }
  }

  private handName(slot: number): void {
    const { record } = this;
    const located = this.locate(slot);
    let middle = located.count >> 1;
    // one that is there
    if (Number.isNaN(located.lat[middle]!)) middle = located.lat.findIndex((lat) => !Number.isNaN(lat));
    this.names.begin(this.store.bytes, record.nameFrom, record.nameTo);
    const lat = located.lat[middle]!;
    const lon = located.lon[middle]!;
    if (record.kind === WAY_KIND.road) this.names.putRoad(record.id, lat, lon);
    else this.names.put(record.id, lat, lon);
  }

  /** A line waits for those that lie about where it does, to be joined with them. */
  private handLine(from: number, to: number): void {
    const { line, store, box, finder } = this;
    const { body } = this.tiles;
    line.at = 0;
    this.record.writeDrawn(store, to, line);
    // the places stand behind the record
    line.append(body.bytes, to - from, body.at);
    const cell = finder.cellAt(box.north, box.west);
    this.lines.add(lineBucket(cell), line.bytes, 0, line.at);
  }

  private handThinned(cells: CellRange, slot: number): void {
    const { record, store, thinned } = this;
    const located = this.locate(slot);
    store.at = record.refsAt;
    record.readRefs(store, thinned.idsFor(record.count));
    thinned.take(located);
    thinned.tags.at = 0;
    thinned.tags.append(store.bytes, record.drawnFrom, record.drawnTo);
    this.thinFor('draw8', cells);
    if (record.drawn === DRAWN.at8and5) this.thinFor('draw5', cells);
  }

  private thinFor(layer: ThinnedLayer, cells: CellRange): void {
    const { record, tiles, thinned } = this;
    if (!thinned.thin(layer, this.box)) return;
    tiles.body.at = 0;
    thinned.write(record, NO_MEMBERSHIPS, tiles.body);
    this.putInBox(layer, cells);
  }
}

const NO_MEMBERSHIPS: readonly Membership[] = [];

/** Small surroundings lie in the near layer unless they are the edge of an area. */
function isNear(record: WayRecord, cells: CellRange): boolean {
  if (!record.nearOnly || isLarge(cells)) return false;
  return record.memberships.length === 0 || !record.memberships.some((one) => (one.as & RELATION.area) !== 0);
}
