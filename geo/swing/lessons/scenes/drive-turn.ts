import { toRad } from '../../../earth/angles.ts';
import { given } from '../../../given.ts';
import type { Turn } from '../../../report/turn.ts';
import { frontCornerRadiusM, tailSwingM } from '../../circle.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Draft } from '../draft.ts';
import type { Fixture, Point, Scene } from '../scene.ts';
import { sceneOf } from '../scene-of.ts';
import { arcPoints, at, disc, hard, painted } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';
import { CIRCLE_CLEARANCE_M, CORNER_CLEARANCE_M, refitTurn } from './refit-turn.ts';

const BEFORE_M = 12;
const AFTER_M = 10;
const FAR_M = 40;
/** Roads that hardly turn, or turn right back, have no corner to draw. Radians. */
const TURN_LEAST_RAD = toRad(5);
const TURN_MOST_RAD = toRad(175);
/** Across a mini-roundabout's dome, half of it. Metres, from memory. */
const DOME_M = 2;
/** A turn back within less than this is made between a road's two kerbs, no turning place. Metres; judgement. */
const ROAD_MOST_M = 11;
/** A lane narrower than its road by no more than this has no line of its own. Metres. */
const LANE_LEAST_M = 0.1;

/** A turn of a checked drive with its own geometry, the rear axle on the radius that fits (full lock for a shunt). */
export function driveTurnScene(turn: Turn, vehicle: SwingVehicle): Scene {
  const fitted = refitTurn(turn, vehicle);
  const draft = draftDriveTurn(fitted, vehicle);
  return { ...sceneOf('drive-turn', vehicle, draft, turn.side === 'right'), turn: fitted };
}

/** A turn of a drive with its own angle, widths and kerb; drawn turning left, the rear axle on the fitted radius. */
function draftDriveTurn(turn: Turn, vehicle: SwingVehicle): Draft {
  const title = `${NAMES[turn.kind]}, ${Math.round(turn.turnDeg)}° to the ${turn.side}`;
  // a rounding error tighter than the lock cannot be driven
  const radiusM = Math.max(turn.rearAxleRadiusM, vehicle.lock.rearAxleRadiusM);
  const turnRad = toRad(turn.turnDeg);
  const { bendRadiusM, circleM } = turn;
  if (bendRadiusM !== undefined) {
    const road = turn.entry.roadM < turn.exit.roadM ? turn.entry : turn.exit;
    const edges = { outerM: bendRadiusM + road.roadM / 2, innerM: bendRadiusM - road.roadM / 2 };
    const lanes = road.laneM < road.roadM - LANE_LEAST_M;
    return ring(title, vehicle, radiusM, turnRad, {
      ...edges,
      ...given({ laneLineM: lanes ? bendRadiusM : undefined }),
    });
  }
  if (circleM !== undefined) {
    if (turn.kind === 'u-turn' && circleM < ROAD_MOST_M)
      return acrossRoad(title, vehicle, radiusM, turnRad, circleM);
    const outerM = circleM / 2;
    const islandM = turn.kind === 'roundabout' ? outerM - turn.entry.roadM : DOME_M;
    const island = turn.kind === 'u-turn' || islandM < 1 ? {} : { islandM };
    return ring(title, vehicle, radiusM, turnRad, { outerM, ...island });
  }
  return corner(title, turn, vehicle, radiusM, turnRad);
}

const NAMES: Readonly<Record<Turn['kind'], string>> = {
  junction: 'Junction',
  bend: 'Bend',
  roundabout: 'Roundabout',
  'mini-roundabout': 'Mini-roundabout',
  'u-turn': 'Turning back',
};

/**
 * Round an inner kerb: the arc's centre lies so that the tail just keeps inside the entry's outer limit and the front
 * corner inside the exit's, each with the clearance. Where the room does not do, the inner kerb is hit.
 */
function corner(title: string, turn: Turn, vehicle: SwingVehicle, radiusM: number, wantedRad: number): Draft {
  const turnRad = Math.min(TURN_MOST_RAD, Math.max(TURN_LEAST_RAD, wantedRad));
  const { entry, exit, kerbRadiusM: kerbM, room } = turn;
  const ownEntry = room === 'own lane' || room === 'other lane on the exit';
  const entryM = ownEntry ? entry.laneM : entry.roadM;
  const exitM = room === 'own lane' ? exit.laneM : exit.roadM;
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  const sideM = radiusM + vehicle.widthM / 2;
  const tailM = sideM + tailSwingM(vehicle, radiusM, turnRad) + CORNER_CLEARANCE_M;
  const noseM = noseReachM(vehicle, radiusM, turnRad) + CORNER_CLEARANCE_M;
  // y = 0 is the line of the outer body side; the edges' lines meet at the corner's point P
  // where the room does not do, the vehicle still comes along its road, and the tail passes the outer limit
  const onRoadM = Math.min(vehicle.widthM + CORNER_CLEARANCE_M, (entryM + vehicle.widthM) / 2);
  const kerbLineM = Math.max(entryM - (tailM - sideM), onRoadM);
  const centreM = sideM;
  const along = (exitM - noseM + (centreM - kerbLineM) * cos) / sin;
  const shift = -along;
  /** a point so far along the exit's direction from P, and so far out from its inner edge */
  const onExit = (forthM: number, outM: number): Point =>
    at(shift + forthM * cos + outM * sin, kerbLineM + forthM * sin - outM * cos);
  const tangentM = kerbM * Math.tan(turnRad / 2);
  const outer = (entryOutM: number, exitOutM: number): Point[] => {
    const meetM = (exitOutM * cos - entryOutM) / sin;
    return [
      at(shift - FAR_M, kerbLineM - entryOutM),
      onExit(meetM, exitOutM),
      onExit(Math.max(FAR_M, meetM + 1), exitOutM),
    ];
  };
  const fixtures: Fixture[] = [
    hard('kerb', 'the inner kerb', [
      at(shift - Math.max(FAR_M, tangentM + 1), kerbLineM),
      ...arcPoints(at(shift - tangentM, kerbLineM + kerbM), kerbM, -Math.PI / 2, turnRad - Math.PI / 2),
      onExit(Math.max(FAR_M, tangentM + 1), 0),
    ]),
    hard('kerb', 'the outer kerb', outer(entry.roadM, exit.roadM)),
  ];
  if (entry.laneM < entry.roadM - LANE_LEAST_M || exit.laneM < exit.roadM - LANE_LEAST_M)
    fixtures.push(painted('lane line', 'the lane line', outer(entry.laneM, exit.laneM)));
  return {
    title,
    fixtures,
    ...arcFromOrigin(vehicle, radiusM, turnRad),
    swingSide: 'right',
    see: [at(-4, kerbLineM + 1), at(-4, kerbLineM - entry.roadM - 1)],
  };
}

/** How far the nose's outer corner comes out over the line of the exit, from the arc's centre. */
function noseReachM(vehicle: SwingVehicle, radiusM: number, turnRad: number): number {
  const sideM = radiusM + vehicle.widthM / 2;
  const full = frontCornerRadiusM(vehicle, radiusM);
  const phi = Math.atan2(vehicle.wheelbaseM + vehicle.frontOverhangM, sideM);
  return turnRad >= phi ? full : Math.max(full * Math.cos(phi - turnRad), sideM);
}

/** Edges of a ring as radii about its middle. Metres. */
interface Ring {
  readonly outerM: number;
  readonly innerM?: number;
  readonly laneLineM?: number;
  readonly islandM?: number;
}

/** Round a circle: its edges about the arc's own centre, with tangent straights before and after. */
function ring(title: string, vehicle: SwingVehicle, radiusM: number, turnRad: number, edges: Ring): Draft {
  const { outerM, innerM, laneLineM, islandM } = edges;
  const centreM = radiusM + vehicle.widthM / 2;
  const centre = at(0, centreM);
  const end = turnRad - Math.PI / 2;
  // the ways in and out of more than a turn back cross each other: then the ring alone is drawn
  const straights = turnRad < Math.PI + TURN_LEAST_RAD;
  const round = (edgeM: number): Point[] => {
    const arc = arcPoints(centre, edgeM, -Math.PI / 2, end);
    if (!straights) return arc;
    const last = arc.at(-1) as Point;
    const out = at(last.xM + FAR_M * Math.cos(turnRad), last.yM + FAR_M * Math.sin(turnRad));
    return [at(-FAR_M, centreM - edgeM), ...arc, out];
  };
  const fixtures: Fixture[] = [hard('kerb', 'the outer kerb', round(outerM))];
  if (innerM !== undefined && innerM > 0.5) fixtures.push(hard('kerb', 'the inner kerb', round(innerM)));
  if (laneLineM !== undefined) fixtures.push(painted('lane line', 'the middle line', round(laneLineM)));
  if (islandM !== undefined)
    fixtures.push(disc('island', islandM === DOME_M ? 'the dome' : 'the island', centre, islandM));
  return {
    title,
    fixtures,
    ...arcFromOrigin(vehicle, radiusM, turnRad),
    swingSide: 'right',
    see: [at(-outerM, centreM - outerM - CIRCLE_CLEARANCE_M)],
  };
}

/** Turning back between two kerbs, from beside the one that the tail swings over. */
function acrossRoad(
  title: string,
  vehicle: SwingVehicle,
  radiusM: number,
  turnRad: number,
  roadM: number,
): Draft {
  const kerb = (yM: number): Point[] => [at(-FAR_M, yM), at(FAR_M, yM)];
  return {
    title,
    fixtures: [
      hard('kerb', 'the kerb it leaves', kerb(-CIRCLE_CLEARANCE_M)),
      hard('kerb', 'the kerb across the road', kerb(roadM - CIRCLE_CLEARANCE_M)),
    ],
    ...arcFromOrigin(vehicle, radiusM, turnRad),
    swingSide: 'right',
  };
}

/** Straight, one arc that begins at x = 0, straight; the outer body side on y = 0. */
function arcFromOrigin(
  vehicle: SwingVehicle,
  radiusM: number,
  turnRad: number,
): Pick<Draft, 'start' | 'legs'> {
  return {
    start: { xM: -BEFORE_M, yM: vehicle.widthM / 2, headingRad: 0 },
    legs: [straightLeg(BEFORE_M), arcLeg(vehicle, radiusM, turnRad), straightLeg(AFTER_M)],
  };
}
