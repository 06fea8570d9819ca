import { mercatorX, mercatorY } from '../earth/mercator.ts';
import type { Box } from '../roads/box.ts';

/** One tile of a zoom: x from 180° W, y from 85.05° N; what lies beyond is in the outermost row. */
export interface Tile {
  readonly x: number;
  readonly y: number;
}

function cell(share: number, across: number): number {
  return Math.min(across - 1, Math.max(0, Math.floor(share * across)));
}

/**
 * Place of a tile along the Hilbert curve through all tiles of its zoom: neighbours on the ground lie close together in
 * a file written in this order. Exact up to zoom 15.
 * Source of the curve: D. Hilbert, Mathematische Annalen 38 (1891), by quarter turns from the coarsest square down.
 */
export function tileNumber(x: number, y: number, zoom: number): number {
  let number = 0;
  let [a, b] = [x, y];
  for (let side = 1 << (zoom - 1); side > 0; side >>>= 1) {
    const right = (a & side) > 0 ? 1 : 0;
    const down = (b & side) > 0 ? 1 : 0;
    number = number * 4 + ((3 * right) ^ down);
    if (down === 0) {
      if (right === 1) {
        a = ~a;
        b = ~b;
      }
      [a, b] = [b, a];
    }
  }
  return number;
}

/** The tile of a number: the inverse of `tileNumber`. */
export function tileOf(number: number, zoom: number): Tile {
  let [x, y] = [0, 0];
  for (let level = 0, rest = number; level < zoom; level++, rest = Math.floor(rest / 4)) {
    const side = 1 << level;
    const quarter = rest % 4;
    const right = quarter >> 1;
    const down = (quarter ^ right) & 1;
    if (down === 0) {
      if (right === 1) {
        x = side - 1 - x;
        y = side - 1 - y;
      }
      [x, y] = [y, x];
    }
    x += right * side;
    y += down * side;
  }
  return { x, y };
}

/** Which columns and rows of a zoom a box (degrees) touches; `toX` may run beyond the last column, across 180°. */
export interface TileRange {
  readonly fromX: number;
  readonly toX: number;
  readonly fromY: number;
  readonly toY: number;
}

/** The tiles that a box touches, as a range. */
export function rangeOfBox({ south, west, north, east }: Box, zoom: number): TileRange {
  const across = 2 ** zoom;
  // 180° E, and what rounds to it, belongs to the last column, not to one beyond it
  const fromX = Math.min(Math.floor(mercatorX(west) * across), across - 1);
  const toX = Math.floor(mercatorX(east) * across);
  const whole = east === 180 && west < 180 ? across - 1 : toX;
  return {
    fromX,
    toX: Math.min(whole, fromX + across - 1),
    fromY: cell(mercatorY(north), across),
    toY: cell(mercatorY(south), across),
  };
}

/** Numbers of all tiles of a range, each once. */
export function numbersIn({ fromX, toX, fromY, toY }: TileRange, zoom: number): number[] {
  const across = 2 ** zoom;
  const numbers: number[] = [];
  for (let y = fromY; y <= toY; y++)
    for (let x = fromX; x <= toX; x++) numbers.push(tileNumber(((x % across) + across) % across, y, zoom));
  return numbers;
}

/** How many tiles a range has. */
export function countIn({ fromX, toX, fromY, toY }: TileRange): number {
  return (toX - fromX + 1) * (toY - fromY + 1);
}
