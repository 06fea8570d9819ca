import { mix } from '../../earth/between.ts';
import type { Box } from '../../roads/box.ts';
import { LAYER_ZOOM } from '../layers.ts';
import { countIn, numbersIn, rangeOfBox, type TileRange, tileNumber } from '../tiles.ts';
import { CELL_ZOOM, CELLS_ACROSS, columnAt, type RoadCells, RowFinder } from './grid.ts';
import type { Located } from './located.ts';

/** Of a segment that touches more tiles than this only those of its ends are meant. */
const MOST_PER_SEGMENT = 64;

/** Columns and rows of cells (CELL_ZOOM) that a box touches; columns may run beyond the last one, across 180°. */
export type CellRange = TileRange;

/** So many numbers of tiles are remembered. */
const KNOWN_TILES = 1024;

/** Finds which tiles a way is to stand in. */
export class WayTiles {
  readonly rows = new RowFinder();
  private readonly cells = { fromX: 0, toX: 0, fromY: 0, toY: 0 };
  private readonly known = { key: new Int32Array(KNOWN_TILES).fill(-1), number: new Int32Array(KNOWN_TILES) };

  /** The cells that a box touches; good until the next call. */
  cellsOf({ south, north, west, east }: Box): CellRange {
    const { cells } = this;
    cells.fromY = this.rows.rowAt(north);
    cells.toY = this.rows.rowAt(south);
    cells.fromX = columnAt(west);
    cells.toX = east > 180 ? columnAt(east - 360) + CELLS_ACROSS : columnAt(east);
    return cells;
  }

  /** The cell of a place, as a range; good until the next call. */
  cellAt(lat: number, lon: number): CellRange {
    const { cells } = this;
    cells.fromX = columnAt(lon);
    cells.toX = cells.fromX;
    cells.fromY = this.rows.rowAt(lat);
    cells.toY = cells.fromY;
    return cells;
  }

  /** Number of the one tile of a zoom in which a range of cells lies. */
  oneTile({ fromX, fromY }: CellRange, zoom: number): number {
    const shift = CELL_ZOOM - zoom;
    const x = (fromX >> shift) & ((1 << zoom) - 1);
    const y = fromY >> shift;
    // 4 + 14 + 14 bits; -1 would be the last tile of zoom 15, and there is none so fine
    const key = (zoom << 28) | (x << CELL_ZOOM) | y;
    const slot = (x ^ (y << 5) ^ (zoom << 3)) & (KNOWN_TILES - 1);
    const { known } = this;
    if (known.key[slot] !== key) {
      known.key[slot] = key;
      known.number[slot] = tileNumber(x, y, zoom);
    }
    return known.number[slot]!;
  }

  /** Numbers of the tiles in which a node of the way lies or that the box of a segment touches, each once. */
  alongLine(located: Located, zoom: number): number[] {
    const numbers = new Set<number>();
    const give: Give = (tx, ty) => numbers.add(tileNumber(tx, ty, zoom));
    this.walk(located, zoom, give, (segment) => {
      const range = rangeOfBox(segment, zoom);
      if (countIn(range) <= MOST_PER_SEGMENT) giveRange(range, zoom, give);
    });
    return [...numbers];
  }

  /** Marks the cells with a road of this way in them. */
  markRoad(located: Located, road: RoadCells): void {
    const give: Give = (x, y) => road.mark(x, y);
    this.walk(located, CELL_ZOOM, give, (segment, falls) => {
      const range = rangeOfBox(segment, CELL_ZOOM);
      if (countIn(range) <= MOST_PER_SEGMENT) giveRange(range, CELL_ZOOM, give);
      else this.giveAlong(segment, falls, give);
    });
  }

  /** The cells of a long segment by steps along it. @param falls whether it runs from north-west to south-east */
  private giveAlong(segment: Box, falls: boolean, give: Give): void {
    const steps = Math.ceil(
      ((segment.east - segment.west + segment.north - segment.south) / 360) * CELLS_ACROSS * 8,
    );
    for (let step = 1; step < steps; step++) {
      const share = step / steps;
      const lon = mix(segment.west, segment.east, share);
      const lat = falls ? mix(segment.north, segment.south, share) : mix(segment.south, segment.north, share);
      give(columnAt(lon > 180 ? lon - 360 : lon), this.rows.rowAt(lat));
    }
  }

  /** Every node's tile, some more than once, and every segment's box that lies in more tiles than its ends. */
  private walk(
    { count, lat, lon }: Located,
    zoom: number,
    give: Give,
    between: (segment: Box, falls: boolean) => void,
  ): void {
    const shift = CELL_ZOOM - zoom;
    let [beforeX, beforeY, before] = [-1, -1, -1];
    for (let i = 0; i < count; i++) {
      if (Number.isNaN(lat[i]!)) {
        before = -1;
        continue;
      }
      const x = columnAt(lon[i]!) >> shift;
      const y = this.rows.rowAt(lat[i]!) >> shift;
      if (before < 0 || x !== beforeX || y !== beforeY) {
        give(x, y);
        if (before >= 0 && Math.abs(x - beforeX) + Math.abs(y - beforeY) > 1) {
          const falls = lat[before]! > lat[i]! === lon[before]! < lon[i]!;
          between(segmentBox(lat[before]!, lon[before]!, lat[i]!, lon[i]!), falls);
        }
      }
      [beforeX, beforeY, before] = [x, y, i];
    }
  }
}

type Give = (x: number, y: number) => void;

function giveRange({ fromX, toX, fromY, toY }: CellRange, zoom: number, give: Give): void {
  const last = (1 << zoom) - 1;
  for (let y = fromY; y <= toY; y++) for (let x = fromX; x <= toX; x++) give(x & last, y);
}

/** The shorter way round the Earth. */
function segmentBox(latA: number, lonA: number, latB: number, lonB: number): Box {
  const south = Math.min(latA, latB);
  const north = Math.max(latA, latB);
  const west = Math.min(lonA, lonB);
  const east = Math.max(lonA, lonB);
  return east - west <= 180 ? { south, north, west, east } : { south, north, west: east, east: west + 360 };
}

/** Whether a range of cells lies in one tile of a zoom. */
export function isOneTile({ fromX, toX, fromY, toY }: CellRange, zoom: number): boolean {
  const shift = CELL_ZOOM - zoom;
  return fromX >> shift === toX >> shift && fromY >> shift === toY >> shift;
}

/** Numbers of the tiles of a zoom that a range of cells touches. */
export function tilesOfCells({ fromX, toX, fromY, toY }: CellRange, zoom: number): number[] {
  const shift = CELL_ZOOM - zoom;
  return numbersIn(
    { fromX: fromX >> shift, toX: toX >> shift, fromY: fromY >> shift, toY: toY >> shift },
    zoom,
  );
}

/** Whether a range of cells touches more than two by two tiles of the near layer. */
export function isLarge({ fromX, toX, fromY, toY }: CellRange): boolean {
  const shift = CELL_ZOOM - LAYER_ZOOM.near;
  return (toX >> shift) - (fromX >> shift) > 1 || (toY >> shift) - (fromY >> shift) > 1;
}
