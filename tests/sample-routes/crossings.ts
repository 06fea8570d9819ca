import { flatten, type MapFile, type MapWay } from './read-district.ts';

interface Piece {
  readonly way: MapWay;
  readonly a: number;
  readonly b: number;
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

const CELL_M = 100;

function isTravelled(way: MapWay): boolean {
  return (
    way.tags['highway'] !== undefined || way.tags['railway'] === 'rail' || way.tags['waterway'] !== undefined
  );
}

/** On which level a way runs. */
function levelOf({ tags }: MapWay): number {
  return Number(tags['layer'] ?? 0);
}

/** Whether the way says how it gets over or under something. */
function isDeclared({ tags }: MapWay): boolean {
  return (tags['bridge'] ?? 'no') !== 'no' || (tags['tunnel'] ?? 'no') !== 'no';
}

/** Pairs of roads, railways and waters whose lines cross without a common node and without a bridge or tunnel on another level. */
export function undeclaredCrossings(map: MapFile): string[] {
  const cells = new Map<string, Piece[]>();
  const found = new Set<string>();
  for (const way of map.ways.filter(isTravelled)) {
    for (let i = 1; i < way.refs.length; i++) {
      const piece = pieceOf(map, way, i);
      for (const cell of cellsOf(piece)) {
        const here = cells.get(cell) ?? [];
        for (const other of here) {
          if (!cross(piece, other)) continue;
          const apart = levelOf(way) !== levelOf(other.way) && (isDeclared(way) || isDeclared(other.way));
          if (!apart) found.add(`ways ${other.way.id} and ${way.id} cross near node ${piece.a}`);
        }
        here.push(piece);
        cells.set(cell, here);
      }
    }
  }
  return [...found];
}

function pieceOf(map: MapFile, way: MapWay, i: number): Piece {
  const a = way.refs[i - 1] ?? 0;
  const b = way.refs[i] ?? 0;
  const from = map.nodes.get(a);
  const to = map.nodes.get(b);
  if (from === undefined || to === undefined) throw new Error(`way ${way.id} has a node that is not there`);
  const p = flatten(from);
  const q = flatten(to);
  return { way, a, b, ax: p.x, ay: p.y, bx: q.x, by: q.y };
}

function cellsOf({ ax, ay, bx, by }: Piece): string[] {
  const cells: string[] = [];
  for (let x = Math.floor(Math.min(ax, bx) / CELL_M); x <= Math.floor(Math.max(ax, bx) / CELL_M); x++)
    for (let y = Math.floor(Math.min(ay, by) / CELL_M); y <= Math.floor(Math.max(ay, by) / CELL_M); y++)
      cells.push(`${x},${y}`);
  return cells;
}

function cross(p: Piece, q: Piece): boolean {
  if (p.a === q.a || p.a === q.b || p.b === q.a || p.b === q.b) return false;
  const side = (ax: number, ay: number, bx: number, by: number, cx: number, cy: number) =>
    Math.sign((bx - ax) * (cy - ay) - (by - ay) * (cx - ax));
  return (
    side(p.ax, p.ay, p.bx, p.by, q.ax, q.ay) * side(p.ax, p.ay, p.bx, p.by, q.bx, q.by) < 0 &&
    side(q.ax, q.ay, q.bx, q.by, p.ax, p.ay) * side(q.ax, q.ay, q.bx, q.by, p.bx, p.by) < 0
  );
}
