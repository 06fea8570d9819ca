import { toDeg } from '../../../geo/earth/angles.ts';
import { mix, shareOf } from '../../../geo/earth/between.ts';
import { firstAtLeast } from '../../../geo/earth/bisect.ts';
import { mercatorX, mercatorY } from '../../../geo/earth/mercator.ts';
import type { Point } from '../../../geo/earth/point.ts';
import { shareNearest } from '../../../geo/earth/segment.ts';
import type { FollowedDrive } from '../../../main/contract/followed-drive.ts';

/** Stretch after stretch is one part; off the map and gaps are parts of their own. */
export interface PathPart {
  readonly kind: 'stretch' | 'offMap' | 'gap';
  /** first and last position of the part */
  readonly from: number;
  readonly to: number;
}

/** A drive as it is drawn: positions on the unit square (mercator) with their metres along the drive. */
export interface DrivePath {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly atM: Float64Array;
  readonly parts: readonly PathPart[];
  readonly lengthM: number;
}

export function drivePath(drive: FollowedDrive): DrivePath {
  const x: number[] = [];
  const y: number[] = [];
  const atM: number[] = [];
  const parts: PathPart[] = [];
  for (const { kind, line, alongM } of drive.legs) {
    const from = x.length;
    for (let i = 0; i < alongM.length; i++) {
      y.push(mercatorY(line[2 * i]!));
      x.push(mercatorX(line[2 * i + 1]!));
      atM.push(alongM[i]!);
    }
    if (x.length === from) continue;
    const before = parts.at(-1);
    if (kind === 'stretch' && before?.kind === 'stretch')
      parts[parts.length - 1] = { ...before, to: x.length - 1 };
    else parts.push({ kind, from, to: x.length - 1 });
  }
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    atM: Float64Array.from(atM),
    parts,
    lengthM: drive.lengthM,
  };
}

export interface PathPlace {
  readonly x: number;
  readonly y: number;
  /** clockwise from north */
  readonly headingDeg: number;
}

/** Where a distance along the drive lies, and which way one faces there; undefined for a drive without positions. */
export function placeOnPath(path: DrivePath, m: number): PathPlace | undefined {
  const here = pointOnPath(path, m);
  if (here === undefined) return undefined;
  const ahead = pointOnPath(path, m + 4) ?? here;
  const behind = pointOnPath(path, m - 4) ?? here;
  const dx = ahead.x - behind.x;
  const dy = ahead.y - behind.y;
  const headingDeg = dx === 0 && dy === 0 ? 0 : toDeg(Math.atan2(dx, -dy));
  return { ...here, headingDeg };
}

function pointOnPath({ x, y, atM }: DrivePath, m: number): Point | undefined {
  if (atM.length === 0) return undefined;
  const high = firstAtLeast(atM, m, 0, atM.length - 1);
  const low = Math.max(0, high - 1);
  const t = shareOf(m, atM[low]!, atM[high]!);
  return { x: mix(x[low]!, x[high]!, t), y: mix(y[low]!, y[high]!, t) };
}

/** The lines of one kind of parts, whole: x and y in turn. */
export function linesOf({ x, y, parts }: DrivePath, kind: PathPart['kind']): number[][] {
  return parts
    .filter((part) => part.kind === kind)
    .map(({ from, to }) => {
      const line: number[] = [];
      for (let i = from; i <= to; i++) line.push(x[i]!, y[i]!);
      return line;
    });
}

/** The lines between two distances, x and y in turn, gaps left out. */
export function linesBetween(path: DrivePath, fromM: number, toM: number): number[][] {
  const lines: number[][] = [];
  for (const part of path.parts) {
    const startM = path.atM[part.from]!;
    const endM = path.atM[part.to]!;
    if (part.kind === 'gap' || endM < fromM || startM > toM) continue;
    const line: number[] = [];
    for (let i = part.from; i <= part.to; i++) {
      const here = path.atM[i]!;
      const before = i > part.from ? path.atM[i - 1]! : here;
      if (before < fromM && here > fromM) pushBetween(path, i, fromM, line);
      if (here >= fromM && here <= toM) line.push(path.x[i]!, path.y[i]!);
      if (before < toM && here > toM) pushBetween(path, i, toM, line);
    }
    if (line.length >= 4) lines.push(line);
  }
  return lines;
}

/** The place at distance `m` on the way to position `i`. */
function pushBetween({ x, y, atM }: DrivePath, i: number, m: number, line: number[]): void {
  const t = shareOf(m, atM[i - 1]!, atM[i]!);
  line.push(mix(x[i - 1]!, x[i]!, t), mix(y[i - 1]!, y[i]!, t));
}

/** How a place is looked for on a path. */
interface Looking {
  /** where the drive passes twice, the pass nearer to this counts; metres along the drive */
  readonly aboutM: number;
  /** farther away is nowhere; unit square */
  readonly reach: number;
  /** places as near as this to each other are the same place; unit square */
  readonly same: number;
}

/** The distance along the drive nearest to a place of the unit square; undefined where none is within reach. */
export function nearestM(
  path: DrivePath,
  place: Point,
  { aboutM, reach, same }: Looking,
): number | undefined {
  let best: { m: number; away: number } | undefined;
  for (const part of path.parts) {
    if (part.kind === 'gap') continue;
    for (let i = part.from + 1; i <= part.to; i++) {
      const found = nearestOnSegment(path, i, place);
      if (found.away > reach) continue;
      const nearer = best === undefined || found.away < best.away - same;
      const again = best !== undefined && found.away < best.away + same;
      if (nearer || (again && Math.abs(found.m - aboutM) < Math.abs((best?.m ?? 0) - aboutM))) best = found;
    }
  }
  return best?.m;
}

/** On the segment that ends at position `i`. */
function nearestOnSegment({ x, y, atM }: DrivePath, i: number, place: Point): { m: number; away: number } {
  const ax = x[i - 1]!;
  const ay = y[i - 1]!;
  const dx = x[i]! - ax;
  const dy = y[i]! - ay;
  const t = shareNearest(place.x - ax, place.y - ay, dx, dy);
  return {
    m: mix(atM[i - 1]!, atM[i]!, t),
    away: Math.hypot(place.x - ax - t * dx, place.y - ay - t * dy),
  };
}

/** Edges on the unit square, where north is less. */
export interface PathBox {
  readonly west: number;
  readonly north: number;
  readonly east: number;
  readonly south: number;
}

/** What a drive covers; undefined for one without positions. */
export function pathBox({ x, y }: DrivePath): PathBox | undefined {
  if (x.length === 0) return undefined;
  let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < x.length; i++) {
    west = Math.min(west, x[i]!);
    east = Math.max(east, x[i]!);
    north = Math.min(north, y[i]!);
    south = Math.max(south, y[i]!);
  }
  return { west, north, east, south };
}
