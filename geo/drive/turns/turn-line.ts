import { toRad, wrapLon, wrapRad } from '../../earth/angles.ts';
import { mix, shareOf } from '../../earth/between.ts';
import { spanHolding } from '../../earth/bisect.ts';
import { headingRad, type Point } from '../../earth/point.ts';
import { EARTH_RADIUS_M, type Place } from '../../earth/sphere.ts';
import { type Roads, WAY_KIND } from '../../roads/roads.ts';
import type { Drive, Stretch } from '../drive.ts';
import { endOf } from '../end-of.ts';
import { nodesAlong } from '../nodes-along.ts';
import { placeDriven } from '../point-at.ts';

/** Places nearer than this are one. Metres. */
const SAME_PLACE_M = 0.2;

/**
 * One unbroken run along roads as they are drawn, ferries, gaps and what lies off the map left out.
 * Flat metres unrolled step by step: right between neighbours, of no meaning over kilometres.
 */
export interface TurnLine {
  /** metres along the drive, rising */
  readonly atM: Float64Array;
  /** metres east and north of the first place */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** index into Roads.nodes, -1 where no node stands */
  readonly node: Int32Array;
  /** stretch of the piece from place i to i + 1; one shorter than the rest */
  readonly stretch: readonly Stretch[];
  /** change of heading at each place, radians, left positive; 0 at both ends */
  readonly turnRad: Float64Array;
}

/** The runs of road of a drive, with the change of heading at every place. */
export function turnLines(drive: Drive, roads: Roads): TurnLine[] {
  const lines: TurnLine[] = [];
  let open = newPoints();
  const close = () => {
    if (open.atM.length > 2) lines.push(finish(open));
    open = newPoints();
  };
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch' || roads.ways.kind[leg.way] === WAY_KIND.ferry) {
      close();
      continue;
    }
    const lastM = open.atM.at(-1);
    if (lastM !== undefined && leg.fromM - lastM > SAME_PLACE_M) close();
    addStretch(open, drive, roads, leg);
  }
  close();
  return lines;
}

interface Points {
  readonly atM: number[];
  readonly lat: number[];
  readonly lon: number[];
  readonly node: number[];
  readonly stretch: Stretch[];
}

function newPoints(): Points {
  return { atM: [], lat: [], lon: [], node: [], stretch: [] };
}

function addStretch(points: Points, drive: Drive, roads: Roads, stretch: Stretch): void {
  const { lat, lon } = roads.nodes;
  const passed = nodesAlong(stretch, roads);
  const first = passed[0];
  if (first === undefined || first.atM - stretch.fromM > SAME_PLACE_M)
    addPlace(points, drive, roads, stretch, stretch.fromM);
  for (const { node, atM } of passed) add(points, stretch, { atM, lat: lat[node]!, lon: lon[node]!, node });
  if (stretch.toM - (passed.at(-1)?.atM ?? stretch.fromM) > SAME_PLACE_M)
    addPlace(points, drive, roads, stretch, endOf(stretch));
}

function addPlace(points: Points, drive: Drive, roads: Roads, stretch: Stretch, atM: number): void {
  add(points, stretch, { ...placeDriven(drive, roads, atM), atM, node: -1 });
}

interface Added extends Place {
  readonly atM: number;
  readonly node: number;
}

/** Adds a place; one that repeats the last is that one, and keeps its node. */
function add(points: Points, stretch: Stretch, { atM, lat, lon, node }: Added): void {
  const last = points.atM.length - 1;
  if (last >= 0 && atM - points.atM[last]! < SAME_PLACE_M) {
    if (points.node[last] === -1) points.node[last] = node;
    return;
  }
  if (last >= 0) points.stretch.push(stretch);
  points.atM.push(atM);
  points.lat.push(lat);
  points.lon.push(lon);
  points.node.push(node);
}

function finish({ atM, lat, lon, node, stretch }: Points): TurnLine {
  const count = atM.length;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const turnRad = new Float64Array(count);
  let before = 0;
  for (let i = 1; i < count; i++) {
    const [south, north] = [lat[i - 1]!, lat[i]!];
    const east = toRad(wrapLon(lon[i]! - lon[i - 1]!)) * EARTH_RADIUS_M;
    const dx = east * Math.cos(toRad((south + north) / 2));
    const dy = toRad(north - south) * EARTH_RADIUS_M;
    x[i] = x[i - 1]! + dx;
    y[i] = y[i - 1]! + dy;
    const heading = Math.atan2(dy, dx);
    if (i > 1) turnRad[i - 1] = wrapRad(heading - before);
    before = heading;
  }
  return { atM: Float64Array.from(atM), x, y, node: Int32Array.from(node), stretch, turnRad };
}

/** The place so many metres along the drive; the ends hold what lies beyond them. */
export function placeOn(line: TurnLine, m: number): Point {
  const { atM, x, y } = line;
  const low = spanHolding(atM, m);
  const high = Math.min(low + 1, atM.length - 1);
  const t = shareOf(m, atM[low]!, atM[high]!);
  return { x: mix(x[low]!, x[high]!, t), y: mix(y[low]!, y[high]!, t) };
}

/** Direction from one place on the line to a later one, radians anticlockwise from east. */
export function headingBetween(line: TurnLine, fromM: number, toM: number): number {
  return headingRad(placeOn(line, fromM), placeOn(line, toM));
}
