import { radiusOfShareM } from '../../circle.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { LessonSettings } from '../scene/settings.ts';
import { turnBeforeM } from './clear-corner.ts';
import type { Draft } from './draft.ts';
import { arcPoints, at, hard, painted } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';

/** Kept between the inner rear side and the kerb of the corner. Metres; judgement. */
const CLEARANCE_M = 0.3;
/** The rear axle begins here, before the side road's edge at x = 0, or nearer to its turn where that is earlier. */
const START_M = -14;
const AFTER_M = 9;
const FAR_M = 30;

/**
 * From a main road along x into a side road at right angles, both with two lanes of one width. The body side nearest to
 * the kerb one drives along lies on y = 0. Turning to that side, the turn begins as early as the inner rear side clears
 * the corner; turning across the road, so that the vehicle ends in its own lane of the side road.
 */
export function draftSideRoad(vehicle: SwingVehicle, settings: LessonSettings): Draft {
  const { gapM, laneM, kerbRadiusM, lockShare, straightM } = settings;
  const nearside = settings.driveSide === settings.turnSide;
  const { widthM } = vehicle;
  const radiusM = radiusOfShareM(vehicle, lockShare);
  const innerKerbM = nearside ? gapM : 2 * laneM - gapM;
  const innerSideM = nearside ? 0 : widthM;
  const clearM = -turnBeforeM({
    sideRadiusM: radiusM - widthM / 2,
    besideM: innerKerbM - innerSideM,
    kerbRadiusM,
    clearanceM: CLEARANCE_M,
  });
  const inLaneM = 2 * laneM - gapM - widthM / 2 - radiusM;
  const turnAtM = nearside ? clearM : Math.max(clearM, inLaneM);
  const startM = Math.min(START_M, turnAtM - 1);
  return {
    fixtures: roads(laneM, innerKerbM, kerbRadiusM),
    start: { xM: startM, yM: innerSideM - widthM / 2, headingRad: 0 },
    legs: [
      straightLeg(turnAtM - startM + straightM),
      arcLeg(vehicle, radiusM, Math.PI / 2),
      straightLeg(AFTER_M),
    ],
    swingSide: 'right',
    see: [at(-6, innerKerbM - 2 * laneM - 1), at(2 * laneM + 4, innerKerbM + 8)],
  };
}

/** @param kerbM the main road's kerb on the side of the side road */
function roads(laneM: number, kerbM: number, kerbRadiusM: number): Fixture[] {
  const roadM = 2 * laneM;
  const roundM = kerbM + kerbRadiusM;
  return [
    hard('kerb', 'kerb of the corner', [
      at(-FAR_M, kerbM),
      ...arcPoints(at(-kerbRadiusM, roundM), kerbRadiusM, -Math.PI / 2, 0),
      at(0, kerbM + FAR_M),
    ]),
    hard('kerb', 'far kerb of the side road', [
      at(roadM, kerbM + FAR_M),
      ...arcPoints(at(roadM + kerbRadiusM, roundM), kerbRadiusM, Math.PI, 1.5 * Math.PI),
      at(FAR_M, kerbM),
    ]),
    hard('kerb', 'kerb opposite', [at(-FAR_M, kerbM - roadM), at(FAR_M, kerbM - roadM)]),
    painted('middle line of the main road', [at(-FAR_M, kerbM - laneM), at(FAR_M, kerbM - laneM)]),
    painted('middle line of the side road', [at(laneM, kerbM), at(laneM, kerbM + FAR_M)]),
  ];
}
