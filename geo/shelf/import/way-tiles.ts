import { mix } from '../../earth/between.ts';
import type { Box } from '../../roads/box.ts';
import { LAYER_ZOOM } from '../layers.ts';
import { countIn, numbersIn, rangeOfBox, type TileRange, tileAt, tileNumber } from '../tiles.ts';
import { CELL_ZOOM, CELLS_ACROSS, columnAt, type RoadCells, RowFinder } from './grid.ts';
import type { Located } from './located.ts';

/** Of a segment that touches more tiles than this only those of its ends are meant. */
const MOST_PER_SEGMENT = 64;

/** Columns and rows of cells (CELL_ZOOM) that a box touches; columns may run beyond the last one, across 180°. */
export type CellRange = TileRange;

/** Finds which tiles a way is to stand in. */
export class WayTiles {
  readonly rows = new RowFinder();

  /** The cells that a box touches. */
  cellsOf({ south, north, west, east }: Box): CellRange {
    const fromY = this.rows.rowAt(north);
    const toY = this.rows.rowAt(south);
    const fromX = columnAt(west);
    const toX = east > 180 ? columnAt(east - 360) + CELLS_ACROSS : columnAt(east);
    return { fromX, toX, fromY, toY };
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
  // most ways lie in one
  if (fromX >> shift === toX >> shift && fromY >> shift === toY >> shift)
    return [tileNumber((fromX >> shift) & ((1 << zoom) - 1), fromY >> shift, zoom)];
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

/** Number of the tile of a zoom in which a place lies. */
export function tileNumberAt(lat: number, lon: number, zoom: number): number {
  const { x, y } = tileAt(lat, lon, zoom);
  return tileNumber(x, y, zoom);
}
