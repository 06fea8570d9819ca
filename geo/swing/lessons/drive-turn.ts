import type { Turn } from '../../report.ts';
import { frontCornerRadiusM, tailSwingM } from '../circle.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Draft } from './draft.ts';
import { arcPoints, at, disc, hard, painted } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';
import type { Fixture, Point, Scene } from './scene.ts';
import { sceneOf } from './scene-of.ts';

/** Kept free on every side, as where the radius was fitted. Metres; judgement. */
const CORNER_CLEARANCE_M = 0.15;
const CIRCLE_CLEARANCE_M = 0.3;
const BEFORE_M = 12;
const AFTER_M = 10;
const FAR_M = 40;
/** Roads that hardly turn, or turn right back, have no corner to draw. Radians. */
const TURN_LEAST_RAD = (5 * Math.PI) / 180;
const TURN_MOST_RAD = (175 * Math.PI) / 180;
const DOME_M = 2;

/** A turn of a checked drive with its own geometry, the rear axle on the radius that was fitted (full lock for a shunt). */
export function driveTurnScene(turn: Turn, vehicle: SwingVehicle): Scene {
  return { ...sceneOf('drive-turn', vehicle, draftDriveTurn(turn, vehicle), turn.side === 'right'), turn };
}

/** A turn of a drive with its own angle, widths and kerb; drawn turning left, the rear axle on the fitted radius. */
function draftDriveTurn(turn: Turn, vehicle: SwingVehicle): Draft {
  const title = `${NAMES[turn.kind]}, ${Math.round(turn.turnDeg)}° to the ${turn.side}`;
  // tighter than the lock cannot be driven: a vehicle of another size goes round at its own full lock
  const radiusM = Math.max(turn.rearAxleRadiusM, vehicle.lock.rearAxleRadiusM);
  const turnRad = (turn.turnDeg * Math.PI) / 180;
  if (turn.bendRadiusM !== undefined)
    return ring(title, vehicle, radiusM, turnRad, {
      outerM: turn.bendRadiusM + turn.entry.roadM / 2,
      innerM: turn.bendRadiusM - turn.entry.roadM / 2,
    });
  if (turn.circleM !== undefined)
    return ring(title, vehicle, radiusM, turnRad, {
      outerM: turn.circleM / 2,
      ...(turn.kind === 'mini-roundabout' ? { domeM: DOME_M } : {}),
    });
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
  const kerbLineM = entryM - CORNER_CLEARANCE_M - (tailM - CORNER_CLEARANCE_M - sideM);
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
  if (entry.laneM < entry.roadM - 0.1 || exit.laneM < exit.roadM - 0.1)
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

/** Round a circle: the outer kerb about the arc's own centre, tangent straights before and after. */
function ring(
  title: string,
  vehicle: SwingVehicle,
  radiusM: number,
  turnRad: number,
  { outerM, innerM, domeM }: { readonly outerM: number; readonly innerM?: number; readonly domeM?: number },
): Draft {
  const centreM = radiusM + vehicle.widthM / 2;
  const centre = at(0, centreM);
  const round = (edgeM: number): Point[] => {
    const end = turnRad - Math.PI / 2;
    const arc = arcPoints(centre, edgeM, -Math.PI / 2, end);
    const last = at(edgeM * Math.cos(end), centreM + edgeM * Math.sin(end));
    return [
      at(-FAR_M, centreM - edgeM),
      ...arc,
      at(last.xM + FAR_M * Math.cos(turnRad), last.yM + FAR_M * Math.sin(turnRad)),
    ];
  };
  const fixtures: Fixture[] = [hard('kerb', 'the outer kerb', round(outerM))];
  // the ways in and out of a turn right round cross each other far off: only their near parts are the road
  if (innerM !== undefined && innerM > 0.5) fixtures.push(hard('kerb', 'the inner kerb', round(innerM)));
  if (domeM !== undefined) fixtures.push(disc('island', 'the dome', centre, domeM));
  return {
    title,
    fixtures,
    ...arcFromOrigin(vehicle, radiusM, turnRad),
    swingSide: 'right',
    see: [at(-outerM, centreM - outerM - CIRCLE_CLEARANCE_M)],
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
