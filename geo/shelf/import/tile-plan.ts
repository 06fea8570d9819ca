import { LAYER_ZOOM, type TiledLayer } from '../layers.ts';
import { tileNumber } from '../tiles.ts';

/** Zoom at which it is counted how much lies where. */
export const WEIGHT_ZOOM = 11;
const ACROSS = 1 << WEIGHT_ZOOM;
const WEIGHT_CELLS = ACROSS * ACROSS;
/** Counts by cell, row by row, and behind them by row, so that empty rows need not be looked at. */
const WEIGHT_COUNTS = WEIGHT_CELLS + ACROSS;

/** Counts for several threads, all 0. */
export function newWeights(): Int32Array {
  return new Int32Array(new SharedArrayBuffer(WEIGHT_COUNTS * 4));
}

/** Adds nodes to a cell: row * 2^WEIGHT_ZOOM + column. */
export function addWeight(weights: Int32Array, cell: number, nodes: number): void {
  Atomics.add(weights, cell, nodes);
  Atomics.add(weights, WEIGHT_CELLS + (cell >>> WEIGHT_ZOOM), 1);
}

/** Buckets for the coarse layers, whose tiles are large and few. */
const COARSE_BUCKETS = 192;
const MOST_BUCKETS = 1024;

/** How tiles are gathered into buckets: runs along the curve with about as many nodes each. */
export interface TilePlan {
  /** number (WEIGHT_ZOOM) of the first tile of each run */
  readonly first: Float64Array;
  readonly buckets: number;
}

/**
 * @param weights as `newWeights` made them
 * @param nodesPerBucket what is aimed at; a single tile may hold more
 */
export function planTiles(weights: Int32Array, nodesPerBucket: number): TilePlan {
  const numbers: number[] = [];
  let sum = 0;
  for (let y = 0; y < ACROSS; y++) {
    if (weights[WEIGHT_CELLS + y] === 0) continue;
    for (let x = 0; x < ACROSS; x++) {
      const cell = y * ACROSS + x;
      if (weights[cell] === 0) continue;
      sum += weights[cell]!;
      numbers.push(tileNumber(x, y, WEIGHT_ZOOM) * WEIGHT_CELLS + cell);
    }
  }
  const order = Float64Array.from(numbers).sort();
  const most = Math.max(nodesPerBucket, sum / (MOST_BUCKETS - COARSE_BUCKETS));
  const first = [0];
  let filled = 0;
  for (const key of order) {
    const weight = weights[key % WEIGHT_CELLS]!;
    if (filled > 0 && filled + weight > most) {
      first.push(Math.floor(key / WEIGHT_CELLS));
      filled = 0;
    }
    filled += weight;
  }
  return { first: Float64Array.from(first), buckets: first.length + COARSE_BUCKETS };
}

/** The bucket of a tile of a layer. */
export function bucketOfTile({ first }: TilePlan, layer: TiledLayer, tile: number): number {
  const zoom = LAYER_ZOOM[layer];
  if (zoom < WEIGHT_ZOOM) return first.length + ((tile * 7 + zoom) % COARSE_BUCKETS);
  const number = tile >>> (2 * (zoom - WEIGHT_ZOOM));
  let low = 0;
  let high = first.length;
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    if (first[middle]! <= number) low = middle;
    else high = middle;
  }
  return low;
}
