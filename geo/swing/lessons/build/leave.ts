import { toRad } from '../../../earth/angles.ts';
import { radiusOfShareM } from '../../circle.ts';
import { POST_BACK_M } from '../../corner/clearance.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { LessonSettings } from '../scene/settings.ts';
import type { Draft } from './draft.ts';
import { at, block, CAR, hard, post } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';

/** Turned at most this far, then straight on: the tail has long come back. */
const TURN_MOST_RAD = toRad(50);
/** Driven after the straight. Metres. */
const RUN_M = 8;
const BEHIND_M = -9;
const AHEAD_M = 22;
const WALL_THICK_M = 0.3;

/**
 * Pulling away from what stands alongside. The body side beside it lies on y = 0 and the rear axle at x = 0 whatever
 * the vehicle; steering held, the tail goes farthest just as its corner comes level with where the turn began.
 */
export function draftLeave(vehicle: SwingVehicle, settings: LessonSettings): Draft {
  const radiusM = radiusOfShareM(vehicle, settings.lockShare);
  const arcM = Math.min(RUN_M, radiusM * TURN_MOST_RAD);
  return {
    fixtures: besides(settings),
    start: { xM: 0, yM: vehicle.widthM / 2, headingRad: 0 },
    legs: [
      straightLeg(settings.straightM),
      arcLeg(vehicle, radiusM, arcM / radiusM),
      straightLeg(RUN_M - arcM),
    ],
    swingSide: 'right',
  };
}

function besides({ beside, gapM, straightM }: LessonSettings): Fixture[] {
  if (beside === 'parked car')
    return [block('parked car', 'parked car', at(-CAR.lengthM, -gapM - CAR.widthM), at(0, -gapM))];
  if (beside === 'wall')
    return [block('wall', 'wall', at(BEHIND_M, -gapM - WALL_THICK_M), at(AHEAD_M, -gapM))];
  return [
    hard('kerb', 'kerb', [at(BEHIND_M, -gapM), at(AHEAD_M, -gapM)]),
    // where the tail goes farthest
    post('post behind the kerb', straightM, -gapM - POST_BACK_M),
  ];
}
