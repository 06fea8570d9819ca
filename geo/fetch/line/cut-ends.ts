import { toRad } from '../../earth/angles.ts';
import { METRES_PER_DEGREE } from '../../earth/sphere.ts';
import { itemAt, smallest } from '../../lists.ts';
import type { Box } from '../../roads/box.ts';
import { grow } from './box-along.ts';
import { type Vertex, vertexBetween } from './lay-lines.ts';
import type { Piece, Span } from './piece.ts';
import { radiusOf } from './radius.ts';

/** Side of the cells of a fixed grid over the Earth: the same home gives the same square, whatever drive begins there. */
const CELL_M = 2_000;
/** What is asked for beyond the cell, so that an end at its edge has its surroundings: squares of 3 km in all. */
const MARGIN_M = 500;

/**
 * Takes both ends off a drive, as far as its line runs unbroken in the cell where it begins or ends. What is asked in
 * their stead, the square about the cell, tells where the drive begins to within 2 km and no better.
 */
export function cutEnds(lines: readonly Vertex[][]): {
  readonly lines: Vertex[][];
  readonly squares: Piece[];
} {
  const [first] = lines;
  if (first === undefined) return { lines: [], squares: [] };
  const start = cutBegin(first);
  const rest = [start.rest, ...lines.slice(1)];
  const last = itemAt(rest, rest.length - 1);
  if (!hasLength(last)) return { lines: rest.slice(0, -1), squares: [start.square] };
  const end = cutBegin(last.toReversed());
  const kept = [...rest.slice(0, -1), end.rest.toReversed()].filter(hasLength);
  return { lines: kept, squares: joined(start.square, end.square) };
}

/** Where one cell ends and the other begins nothing is left between them. */
function hasLength(line: readonly Vertex[]): boolean {
  const [first] = line;
  const last = line.at(-1);
  return first !== undefined && last !== undefined && Math.abs(last.alongM - first.alongM) > 1e-3;
}

/** Both ends in one cell are one square. */
function joined(a: Piece, b: Piece): Piece[] {
  const same = a.box.south === b.box.south && a.box.west === b.box.west && a.box.east === b.box.east;
  return same && a.box.north === b.box.north ? [{ box: a.box, spans: [...a.spans, ...b.spans] }] : [a, b];
}

function cutBegin(line: readonly Vertex[]): { readonly rest: Vertex[]; readonly square: Piece } {
  const begin = itemAt(line, 0);
  const cell = cellOf(begin);
  let at = 1;
  while (at < line.length && holds(cell, line[at]!)) at++;
  const inside = line[at - 1]!;
  const outside = line[at];
  const edge = outside && vertexBetween(inside, outside, shareInside(cell, inside, outside));
  const cut = [...line.slice(0, at), ...(edge ? [edge] : [])];
  return {
    rest: edge ? [edge, ...line.slice(at)] : [],
    square: { spans: [spanOf(begin, itemAt(cut, cut.length - 1))], box: squareOf(cell, cut) },
  };
}

function spanOf(a: Vertex, b: Vertex): Span {
  return { fromM: Math.min(a.alongM, b.alongM), toM: Math.max(a.alongM, b.alongM) };
}

function cellOf({ lat, lon }: Vertex): Box {
  const side = CELL_M / METRES_PER_DEGREE;
  const row = Math.floor(lat / side);
  // an even number of them goes once round each row, so that none lies across the antimeridian
  const across = 2 * Math.max(1, Math.floor((180 * Math.cos(toRad((row + 0.5) * side))) / side));
  const column = Math.floor((lon / 360) * across);
  return {
    south: row * side,
    north: (row + 1) * side,
    west: (column / across) * 360,
    east: ((column + 1) / across) * 360,
  };
}

function holds({ south, north, west, east }: Box, { lat, lon }: Vertex): boolean {
  return lat >= south && lat < north && lon >= west && lon < east;
}

/** How far along the leg from inside to outside the cell's edge lies, 0…1. */
function shareInside(cell: Box, inside: Vertex, outside: Vertex): number {
  const [dLat, dLon] = [outside.lat - inside.lat, outside.lon - inside.lon];
  const ways = [
    dLat > 0 ? (cell.north - inside.lat) / dLat : 1,
    dLat < 0 ? (cell.south - inside.lat) / dLat : 1,
    dLon > 0 ? (cell.east - inside.lon) / dLon : 1,
    dLon < 0 ? (cell.west - inside.lon) / dLon : 1,
  ];
  return Math.max(0, Math.min(1, smallest(ways)));
}

/** Brought within ±180: a cell never crosses the antimeridian, since an even number goes round. */
function squareOf(cell: Box, line: readonly Vertex[]): Box {
  const turns = Math.floor(((cell.west + cell.east) / 2 + 180) / 360) * 360;
  const longest = line.reduce((most, { legM }) => Math.max(most, legM), 0);
  const marginM = Math.max(MARGIN_M, longest > 2 * MARGIN_M ? radiusOf(longest) : 0);
  return grow({ ...cell, west: cell.west - turns, east: cell.east - turns }, marginM);
}
