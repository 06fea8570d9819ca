import { firstAtLeast } from '../earth/bisect.ts';
import { wayAlong } from '../graph/road-graph.ts';
import type { Roads } from '../roads/roads.ts';
import type { Drive, Stretch } from './drive.ts';

/** A node the drive passes. */
export interface PassedNode {
  /** index into Roads.nodes */
  readonly node: number;
  /** place within its way: 0 is the way's first ref */
  readonly refIndex: number;
  /** metres along the drive */
  readonly atM: number;
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
      // field by field: spread, thousands of them would take many times as long
      if (!handedOver)
        passed.push({
          node: node.node,
          refIndex: node.refIndex,
          atM: node.atM,
          stretch: leg,
          legIndex,
        });
    });
  });
  return passed;
}
