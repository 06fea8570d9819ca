import { radiusOfShareM } from '../../circle.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { LessonSettings } from '../scene/settings.ts';
import type { Draft } from './draft.ts';
import { at, block, CAR, hard } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';

/** Bays end at this kerb, and behind them is a hedge across the aisle. Metres. */
const HEAD_M = 0.5;
const OPPOSITE_M = -19;
const HEDGE_M = 0.8;
const CAR_BACK_M = 0.3;
const AFTER_M = 2;
const SIDE_M = 25;

/**
 * Backing out of a bay, nose to its head at x = 0, and turning: the nose swings out over the neighbour, a parked car.
 * The body side beside it lies on y = 0.
 */
export function draftReverse(vehicle: SwingVehicle, settings: LessonSettings): Draft {
  const { gapM, lockShare, straightM } = settings;
  const radiusM = radiusOfShareM(vehicle, lockShare);
  return {
    fixtures: [
      block(
        'parked car',
        'parked car',
        at(-CAR_BACK_M - CAR.lengthM, -gapM - CAR.widthM),
        at(-CAR_BACK_M, -gapM),
      ),
      hard('kerb', 'kerb at the head of the bay', [at(HEAD_M, -SIDE_M), at(HEAD_M, SIDE_M)]),
      block('hedge', 'hedge across the aisle', at(OPPOSITE_M - HEDGE_M, -SIDE_M), at(OPPOSITE_M, SIDE_M)),
    ],
    start: { xM: -vehicle.wheelbaseM - vehicle.frontOverhangM, yM: vehicle.widthM / 2, headingRad: 0 },
    legs: [straightLeg(straightM), arcLeg(vehicle, radiusM, Math.PI / 2), straightLeg(AFTER_M)],
    swingSide: 'right',
    reversing: true,
  };
}
