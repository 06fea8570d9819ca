import { toRad } from '../../../earth/angles.ts';
import { CIRCLE_CLEARANCE_M } from '../../corner/clearance.ts';
import type { Point } from '../../point.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { Draft } from './draft.ts';
import { arcPoints, at, disc, hard, painted } from './fixtures.ts';
import { arcFromOrigin, FAR_M, type SteadyArc } from './steady-arc.ts';

/** Beyond half a turn by more than this, the ways in and out cross each other. Radians. */
const CROSSING_RAD = toRad(5);

/** Edges of a ring as radii about its middle. Metres. */
interface RingEdges {
  readonly outerM: number;
  readonly innerM?: number;
  readonly laneLineM?: number;
  readonly island?: { readonly role: 'dome' | 'island'; readonly radiusM: number };
}

/** Round a circle: its edges about the arc's own centre, with tangent straights before and after. */
export function draftRing(arc: SteadyArc, { outerM, innerM, laneLineM, island }: RingEdges): Draft {
  const centreYM = arc.radiusM + arc.vehicle.widthM / 2;
  const centre = at(0, centreYM);
  const round = (edgeM: number): Point[] => ringEdge(centre, edgeM, arc.turnRad);
  const fixtures: Fixture[] = [hard('kerb', 'outer kerb', round(outerM))];
  if (innerM !== undefined && innerM > 0.5) fixtures.push(hard('kerb', 'inner kerb', round(innerM)));
  if (laneLineM !== undefined) fixtures.push(painted('middle line', round(laneLineM)));
  if (island) fixtures.push(disc('island', island.role, centre, island.radiusM));
  return {
    fixtures,
    ...arcFromOrigin(arc),
    swingSide: 'right',
    see: [at(-outerM, centreYM - outerM - CIRCLE_CLEARANCE_M)],
  };
}

function ringEdge(centre: Point, edgeM: number, turnRad: number): Point[] {
  const arc = arcPoints(centre, edgeM, -Math.PI / 2, turnRad - Math.PI / 2);
  const last = arc.at(-1);
  // where the ways in and out cross, the ring alone is drawn
  if (!last || turnRad >= Math.PI + CROSSING_RAD) return arc;
  const out = at(last.xM + FAR_M * Math.cos(turnRad), last.yM + FAR_M * Math.sin(turnRad));
  return [at(-FAR_M, centre.yM - edgeM), ...arc, out];
}

/** Turning back between two kerbs, from beside the one that the tail swings over. */
export function draftAcrossRoad(arc: SteadyArc, roadM: number): Draft {
  const kerb = (yM: number): Point[] => [at(-FAR_M, yM), at(FAR_M, yM)];
  return {
    fixtures: [
      hard('kerb', 'kerb it leaves', kerb(-CIRCLE_CLEARANCE_M)),
      hard('kerb', 'kerb across the road', kerb(roadM - CIRCLE_CLEARANCE_M)),
    ],
    ...arcFromOrigin(arc),
    swingSide: 'right',
  };
}
