import { join } from 'node:path';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { DRAWN } from '../../../../../geo/shelf/import/choose.ts';
import { CELL_ZOOM } from '../../../../../geo/shelf/import/grid.ts';
import { type JoinedLine, LineJoiner } from '../../../../../geo/shelf/import/line-joiner.ts';
import { boxOfLocated, newWayBox } from '../../../../../geo/shelf/import/located.ts';
import { type ThinnedLayer, ThinnedWay } from '../../../../../geo/shelf/import/thinned-way.ts';
import type { TilePlan } from '../../../../../geo/shelf/import/tile-plan.ts';
import { TILE_RECORD } from '../../../../../geo/shelf/import/tile-record.ts';
import { type CellRange, tilesOfCells, WayTiles } from '../../../../../geo/shelf/import/way-tiles.ts';
import { LAYER_ZOOM } from '../../../../../geo/shelf/layers.ts';
import { SpillReader } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { TilesOut } from '../tiles-out.ts';

export const LINE_BUCKETS = 256;

/** The bucket of a line: lines that begin in one tile of the finer thinned layer are in one. */
export function lineBucket({ fromX, fromY }: CellRange): number {
  const shift = CELL_ZOOM - LAYER_ZOOM.draw8;
  return ((fromX >> shift) * 7 + (fromY >> shift) * 31) % LINE_BUCKETS;
}

export interface LinesSetup {
  readonly temp: string;
  readonly lines: readonly SpillIndex[];
  readonly plan: TilePlan;
}

/** Joins what is drawn as lines when zoomed out, thins it, and hands it to the tiles of the thinned layers. */
export class LineSpreader {
  private readonly reader: SpillReader;
  private readonly tiles: TilesOut;
  private readonly store = new ByteStore();
  private readonly joiner = new LineJoiner();
  private readonly thinned = new ThinnedWay();
  private readonly finder = new WayTiles();
  private readonly box = newWayBox();

  constructor(setup: LinesSetup, worker: number) {
    this.reader = new SpillReader(setup.lines);
    this.tiles = new TilesOut(join(setup.temp, `line-tiles-${worker}`), setup.plan);
  }

  run(bucket: number): void {
    const length = this.reader.read(bucket, this.store);
    this.joiner.read(this.store, length);
    this.joiner.join((line) => this.hand(line));
  }

  end(): { readonly tiles: SpillIndex } {
    this.reader.close();
    return { tiles: this.tiles.end() };
  }

  private hand(line: JoinedLine): void {
    const { thinned, box } = this;
    if (!boxOfLocated(line.located, box)) return;
    thinned.idsFor(line.located.count).set(line.ids.subarray(0, line.located.count));
    thinned.take(line.located);
    thinned.tags.at = 0;
    thinned.tags.append(line.sets, line.setFrom, line.setTo);
    const cells = this.finder.cellsOf(box);
    this.thinFor('draw8', line, cells);
    if (line.drawn === DRAWN.at8and5) this.thinFor('draw5', line, cells);
  }

  private thinFor(layer: ThinnedLayer, line: JoinedLine, cells: CellRange): void {
    const { tiles, thinned } = this;
    if (!thinned.thin(layer, this.box)) return;
    tiles.body.at = 0;
    thinned.write(line, [], tiles.body);
    for (const tile of tilesOfCells(cells, LAYER_ZOOM[layer])) tiles.put(layer, TILE_RECORD.way, tile);
  }
}
