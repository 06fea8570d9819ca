import { shareOf } from '../earth/between.ts';
import { firstAtLeast, leastWhere } from '../earth/bisect.ts';
import { distanceM, type Place, placeBetween } from '../earth/sphere.ts';
import { placeAlong } from '../graph/place-on-edge.ts';
import { roadGraph, wayAlong } from '../graph/road-graph.ts';
import type { Roads } from '../roads/roads.ts';
import type { Drive, OffMap, Stretch } from './drive.ts';
import { endOf } from './end-of.ts';

export { wayAlong };

/** A node the drive passes. */
export interface PassedNode {
  /** index into Roads.nodes */
  readonly node: number;
  /** place within its way: 0 is the way's first ref */
  readonly refIndex: number;
  /** metres along the drive */
  readonly atM: number;
}

/** The place at a distance along the drive, and the leg it lies on; distances beyond the ends give the ends. */
export function pointAt(
  drive: Drive,
  roads: Roads,
  atM: number,
): (Place & { readonly legIndex: number }) | undefined {
  const { legs } = drive;
  if (legs.length === 0) return undefined;
  const legIndex = leastWhere(0, legs.length - 1, (i) => !(endOf(legs[i]!) < atM));
  const leg = legs[legIndex]!;
  if (leg.kind === 'gap') return { ...leg.from, legIndex };
  const onM = Math.min(leg.toM, Math.max(leg.fromM, atM)) - leg.fromM;
  if (leg.kind === 'offMap') return { ...placeOffMap(leg, onM), legIndex };
  const alongM = leg.forward ? leg.alongFromM + onM : leg.alongFromM - onM;
  return { ...placeAlong(roads, roadGraph(roads), leg.way, alongM), legIndex };
}

/** Every node of the stretch's way that the stretch passes, its two ends included, in driving order. */
export function nodesAlong(stretch: Stretch, roads: Roads): PassedNode[] {
  const along = wayAlong(roads, stretch.way);
  const start = roads.ways.start[stretch.way]!;
  const low = Math.min(stretch.alongFromM, stretch.alongToM);
  const high = Math.max(stretch.alongFromM, stretch.alongToM);
  const passed: PassedNode[] = [];
  for (let refIndex = firstAtLeast(along, low - SAME_PLACE_M); refIndex < along.length; refIndex++) {
    const alongM = along[refIndex]!;
    if (alongM > high + SAME_PLACE_M) break;
    const onM = stretch.forward ? alongM - stretch.alongFromM : stretch.alongFromM - alongM;
    const atM = Math.min(stretch.toM, Math.max(stretch.fromM, stretch.fromM + onM));
    passed.push({ node: roads.ways.refs[start + refIndex]!, refIndex, atM });
  }
  return stretch.forward ? passed : passed.reverse();
}

const SAME_PLACE_M = 1e-6;

/**
 * Every node the drive passes, in driving order. A node where one stretch hands over to the next is told once, with
 * the stretch that comes in; a node passed again later is told again.
 */
export function nodesOnDrive(
  drive: Drive,
  roads: Roads,
): (PassedNode & { readonly stretch: Stretch; readonly legIndex: number })[] {
  const passed: (PassedNode & { stretch: Stretch; legIndex: number })[] = [];
  drive.legs.forEach((leg, legIndex) => {
    if (leg.kind !== 'stretch') return;
    nodesAlong(leg, roads).forEach((node, i) => {
      const last = passed.at(-1);
      const handedOver =
        i === 0 &&
        last?.legIndex === legIndex - 1 &&
        last.node === node.node &&
        node.atM - last.atM < SAME_PLACE_M;
      if (!handedOver) passed.push({ ...node, stretch: leg, legIndex });
    });
  });
  return passed;
}

function placeOffMap(leg: OffMap, onM: number): Place {
  let leftM = onM;
  for (let i = 1; i < leg.lat.length; i++) {
    const a = { lat: leg.lat[i - 1]!, lon: leg.lon[i - 1]! };
    const b = { lat: leg.lat[i]!, lon: leg.lon[i]! };
    const length = distanceM(a.lat, a.lon, b.lat, b.lon);
    if (leftM <= length || i === leg.lat.length - 1) {
      return placeBetween(a, b, shareOf(leftM, 0, length));
    }
    leftM -= length;
  }
  return { lat: leg.lat[0]!, lon: leg.lon[0]! };
}
