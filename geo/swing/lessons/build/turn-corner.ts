import { toRad } from '../../../earth/angles.ts';
import type { Turn } from '../../../report/turn.ts';
import { frontCornerRadiusM, tailSwingM } from '../../circle.ts';
import { CORNER_CLEARANCE_M } from '../../corner/clearance.ts';
import type { Point } from '../../point.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { StartGap } from '../scene/scene.ts';
import type { Draft } from './draft.ts';
import { arcPoints, at, hard, painted } from './fixtures.ts';
import { arcFromOrigin, FAR_M, LANE_LEAST_M, type SteadyArc } from './steady-arc.ts';

/** Roads that hardly turn, or turn right back, have no corner to draw. Radians. */
const TURN_LEAST_RAD = toRad(5);
const TURN_MOST_RAD = toRad(175);

/**
 * Round an inner kerb: the arc's centre lies so that the tail just keeps inside the entry's outer limit and the front
 * corner inside the exit's, each with the clearance. Where no sweep fits it comes along the middle of its lane, as the
 * turn was judged, and the inner kerb is hit.
 */
export function draftCorner(steady: SteadyArc, turn: Turn): Draft {
  const arc = { ...steady, turnRad: Math.min(TURN_MOST_RAD, Math.max(TURN_LEAST_RAD, steady.turnRad)) };
  const edges = innerEdges(arc, turn);
  const { entry, exit } = turn;
  const fixtures: Fixture[] = [
    hard('kerb', 'inner kerb', innerKerb(edges, turn.kerbRadiusM)),
    hard('kerb', 'outer kerb', outerLine(edges, entry.roadM, exit.roadM)),
  ];
  if (entry.laneM < entry.roadM - LANE_LEAST_M || exit.laneM < exit.roadM - LANE_LEAST_M)
    fixtures.push(painted('lane line', outerLine(edges, entry.laneM, exit.laneM)));
  return {
    fixtures,
    ...arcFromOrigin(arc),
    swingSide: 'right',
    starts: startGap(edges, turn),
    see: [at(-4, edges.entryYM + 1), at(-4, edges.entryYM - entry.roadM - 1)],
  };
}

/** In its own lane before the turn it is the lane's line that counts, where there is one, else the kerb. */
function startGap({ entryYM }: InnerEdges, { entry, room }: Turn): StartGap {
  const inLane = room !== 'whole road';
  return inLane && entry.laneM < entry.roadM - LANE_LEAST_M
    ? { gapM: entry.laneM - entryYM, beside: 'lane line' }
    : { gapM: entry.roadM - entryYM, beside: 'outer kerb' };
}

/** The inner edges of entry and exit: the one at a y, the other through the point P where both meet, at the turn's angle. */
interface InnerEdges {
  readonly turnRad: number;
  readonly entryYM: number;
  readonly meetXM: number;
}

/** y = 0 is the line of the outer body side. */
function innerEdges(arc: SteadyArc, { entry, exit, room, start }: Turn): InnerEdges {
  const { vehicle, radiusM, turnRad } = arc;
  const ownEntry = room === 'own lane' || room === 'other lane on the exit';
  const entryM = ownEntry ? entry.laneM : entry.roadM;
  const exitM = room === 'own lane' ? exit.laneM : exit.roadM;
  const sideM = radiusM + vehicle.widthM / 2;
  const tailOutM = tailSwingM(vehicle, radiusM, turnRad) + CORNER_CLEARANCE_M;
  const noseM = noseReachM(arc) + CORNER_CLEARANCE_M;
  // where the room does not do, the vehicle still comes along its road, and the tail passes the outer limit
  const onRoadM = Math.min(vehicle.widthM + CORNER_CLEARANCE_M, (entryM + vehicle.widthM) / 2);
  const entryYM =
    room === 'back up' && start ? entry.laneM - start.gapM : Math.max(entryM - tailOutM, onRoadM);
  const alongM = (exitM - noseM + (sideM - entryYM) * Math.cos(turnRad)) / Math.sin(turnRad);
  return { turnRad, entryYM, meetXM: -alongM };
}

/** A point so far along the exit's direction from P, and so far out from its inner edge. */
function onExit({ turnRad, entryYM, meetXM }: InnerEdges, forthM: number, outM: number): Point {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return at(meetXM + forthM * cos + outM * sin, entryYM + forthM * sin - outM * cos);
}

function innerKerb(edges: InnerEdges, kerbM: number): Point[] {
  const { turnRad, entryYM, meetXM } = edges;
  const tangentM = kerbM * Math.tan(turnRad / 2);
  const farM = Math.max(FAR_M, tangentM + 1);
  return [
    at(meetXM - farM, entryYM),
    ...arcPoints(at(meetXM - tangentM, entryYM + kerbM), kerbM, -Math.PI / 2, turnRad - Math.PI / 2),
    onExit(edges, farM, 0),
  ];
}

/** A line on the outside, so far out from the inner edges of entry and exit. */
function outerLine(edges: InnerEdges, entryOutM: number, exitOutM: number): Point[] {
  const { turnRad, entryYM, meetXM } = edges;
  const meetM = (exitOutM * Math.cos(turnRad) - entryOutM) / Math.sin(turnRad);
  return [
    at(meetXM - FAR_M, entryYM - entryOutM),
    onExit(edges, meetM, exitOutM),
    onExit(edges, Math.max(FAR_M, meetM + 1), exitOutM),
  ];
}

/** How far the nose's outer corner comes out over the line of the exit, from the arc's centre. */
function noseReachM({ vehicle, radiusM, turnRad }: SteadyArc): number {
  const sideM = radiusM + vehicle.widthM / 2;
  const full = frontCornerRadiusM(vehicle, radiusM);
  const phi = Math.atan2(vehicle.wheelbaseM + vehicle.frontOverhangM, sideM);
  return turnRad >= phi ? full : Math.max(full * Math.cos(phi - turnRad), sideM);
}
