import { mercatorLat, mercatorX, mercatorY } from '../../earth/mercator.ts';

/** Zoom of the finest cells an import works with; coarser tiles follow from them by shifting. */
export const CELL_ZOOM = 14;
export const CELLS_ACROSS = 1 << CELL_ZOOM;
/** Below what a place is measured to; rounding at a cell's edge is left to the formula. */
const EDGE_DEG = 1e-9;

/** Column of a longitude, degrees, from 180° W. */
export function columnAt(lon: number): number {
  return within(Math.floor(mercatorX(lon) * CELLS_ACROSS));
}

function within(cell: number): number {
  return cell < 0 ? 0 : cell >= CELLS_ACROSS ? CELLS_ACROSS - 1 : cell;
}

/** Latitude of the northern edge of each row, worked out when first needed. */
const NORTH = new Float64Array(CELLS_ACROSS + 1).fill(Number.NaN);

function northOf(row: number): number {
  let north = NORTH[row]!;
  if (Number.isNaN(north)) {
    north = mercatorLat(row / CELLS_ACROSS);
    NORTH[row] = north;
  }
  return north;
}

/** Rows of latitudes, from 85.05° N: the last row's edges are remembered, since one place lies near the next. */
export class RowFinder {
  private row = -1;
  private north = Number.NEGATIVE_INFINITY;
  private south = Number.POSITIVE_INFINITY;

  rowAt(lat: number): number {
    if (lat > this.south && lat < this.north) return this.row;
    const row = within(Math.floor(mercatorY(lat) * CELLS_ACROSS));
    this.row = row;
    this.north = northOf(row) - EDGE_DEG;
    this.south = northOf(row + 1) + EDGE_DEG;
    return row;
  }
}

/** Bytes of the raster below: one bit a cell of the whole Earth. Untouched parts of it take no memory. */
export const RASTER_BYTES = (CELLS_ACROSS * CELLS_ACROSS) / 8;

/** Cells that hold a road; several threads mark the same ones. */
export class RoadCells {
  private readonly words: Int32Array;

  constructor(buffer: SharedArrayBuffer) {
    this.words = new Int32Array(buffer);
  }

  mark(x: number, y: number): void {
    const at = (y << (CELL_ZOOM - 5)) | (x >>> 5);
    const bit = 1 << (x & 31);
    if ((this.words[at]! & bit) === 0) Atomics.or(this.words, at, bit);
  }

  /** Whether a road lies in one of the cells or beside them; columns run on across 180°. */
  near(fromX: number, toX: number, fromY: number, toY: number): boolean {
    for (let y = Math.max(0, fromY - 1); y <= Math.min(CELLS_ACROSS - 1, toY + 1); y++)
      for (let x = fromX - 1; x <= toX + 1; x++) {
        const column = x & (CELLS_ACROSS - 1);
        if ((this.words[(y << (CELL_ZOOM - 5)) | (column >>> 5)]! & (1 << (column & 31))) !== 0) return true;
      }
    return false;
  }
}
