import { radiusOfShareM } from '../../circle.ts';
import type { Point } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { LessonSettings } from '../scene/settings.ts';
import type { Draft } from './draft.ts';
import { arcPoints, at, disc, hard } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';

/** Outer radius of a common mini-roundabout and of the dome in its middle; the dome may be 1 to 4 m across. Metres, from memory. */
const OUTER_M = 9;
const DOME_M = 2;
/** Splitter islands: half their width, their length, and how far from the circle they begin. Metres; judgement. */
const SPLITTER = { halfWidthM: 0.6, lengthM: 6, outM: 1.3 };
/** Level beside the dome from so far before the front axle is beside it until so far after the rear axle is. Metres; judgement. */
const LEVEL = { beforeM: 1, afterM: 0.5 };
const CLEARANCE_M = 0.3;
/** However much room there is, the way round the dome shows. Metres. */
const BEND_LEAST_M = 0.3;
const START_M = -18;
const AFTER_M = 8;
const ARM_M = 30;

/**
 * Straight across a mini-roundabout, drawn for driving on the left: left past the splitter island, right to come level
 * beside the dome, right again behind it and left into the far exit, four arcs of one radius. Between them the vehicle is
 * level while its axles pass the dome. The body's kerb side lies on y = 0 before it.
 */
export function draftMiniRoundabout(vehicle: SwingVehicle, settings: LessonSettings): Draft {
  const { gapM, laneM, lockShare } = settings;
  const armM = SPLITTER.halfWidthM + laneM;
  const centre = at(0, gapM - armM);
  const rearM = -vehicle.widthM / 2;
  const radiusM = radiusOfShareM(vehicle, lockShare);
  // the wheels keep off the dome, the body may hang over it
  const besideDomeM = centre.yM + DOME_M + CLEARANCE_M + vehicle.trackM / 2;
  const outM = Math.max(BEND_LEAST_M, besideDomeM - rearM);
  // out by 2 R (1 − cos θ) over two arcs of θ
  const theta = Math.acos(Math.max(0, 1 - outM / (2 * radiusM)));
  const beginM = -vehicle.wheelbaseM - LEVEL.beforeM - 2 * radiusM * Math.sin(theta);
  const startM = Math.min(START_M, beginM - 1);
  return {
    fixtures: [disc('island', 'dome', centre, DOME_M), ...arms(centre, armM)],
    start: { xM: startM, yM: rearM, headingRad: 0 },
    legs: [
      straightLeg(beginM - startM),
      arcLeg(vehicle, radiusM, theta),
      arcLeg(vehicle, radiusM, -theta),
      straightLeg(vehicle.wheelbaseM + LEVEL.beforeM + LEVEL.afterM),
      arcLeg(vehicle, radiusM, -theta),
      arcLeg(vehicle, radiusM, theta),
      straightLeg(AFTER_M),
    ],
    swingSide: 'right',
    see: [at(-OUTER_M - 1, centre.yM - OUTER_M - 1), at(OUTER_M + 1, centre.yM + OUTER_M + 1)],
  };
}

/** By quarters round the circle from the way in. */
const QUARTERS = [
  { kerb: 'kerb on the way in', island: 'splitter island on the way in' },
  { kerb: 'kerb on the way out', island: 'splitter island of the arm beside' },
  { kerb: 'kerb opposite', island: 'splitter island on the way out' },
  { kerb: 'kerb opposite', island: 'splitter island of the arm opposite' },
] as const;

/** Four arms at right angles: a kerb from each to the next, and a splitter island in each. */
function arms(centre: Point, armM: number): Fixture[] {
  const corner = Math.asin(armM / OUTER_M);
  return QUARTERS.flatMap((roles, quarter) => {
    const turned = (-quarter * Math.PI) / 2;
    const placed = ({ xM, yM }: Point): Point =>
      at(
        centre.xM + xM * Math.cos(turned) - yM * Math.sin(turned),
        centre.yM + xM * Math.sin(turned) + yM * Math.cos(turned),
      );
    const kerb = [
      at(-ARM_M, armM),
      ...arcPoints(at(0, 0), OUTER_M, Math.PI - corner, Math.PI / 2 + corner),
      at(-armM, ARM_M),
    ];
    const { halfWidthM, lengthM, outM } = SPLITTER;
    const [nose, end] = [-OUTER_M - outM, -OUTER_M - outM - lengthM];
    const island = [at(end, -halfWidthM), at(nose, -halfWidthM), at(nose, halfWidthM), at(end, halfWidthM)];
    return [
      hard('kerb', roles.kerb, kerb.map(placed)),
      { ...hard('island', roles.island, island.map(placed)), closed: true },
    ];
  });
}
