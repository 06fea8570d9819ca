import { radiusOfShareM } from '../../circle.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { LessonSettings } from '../scene/settings.ts';
import { turnBeforeM } from './clear-corner.ts';
import type { Draft } from './draft.ts';
import { at, block, post } from './fixtures.ts';
import { arcLeg, straightLeg } from './legs.ts';

const HEDGE_M = 0.8;
/** Kept between the inner side and the near post, and at least to either hedge. Metres; judgement. */
const CLEARANCE_M = 0.2;
const HEDGE_LEAST_M = 0.05;
const PITCH_DEPTH_M = 10;
const START_M = -12;
const AFTER_M = 4;
const FAR_M = 25;

/**
 * Off a lane between hedges into a pitch at right angles, through a gateway with posts from x = 0 on. The body side
 * away from the pitch lies on y = 0; the turn begins as early as the near post allows.
 */
export function draftPitch(vehicle: SwingVehicle, settings: LessonSettings): Draft {
  const { laneM, openingM, lockShare, straightM } = settings;
  const gapM = pitchGapM(vehicle, settings);
  const hedgeM = laneM - gapM;
  const radiusM = radiusOfShareM(vehicle, lockShare);
  const turnAtM = -turnBeforeM({
    sideRadiusM: radiusM - vehicle.widthM / 2,
    besideM: hedgeM - vehicle.widthM,
    kerbRadiusM: 0,
    clearanceM: CLEARANCE_M,
  });
  const startM = Math.min(START_M, turnAtM - 1);
  return {
    fixtures: [
      block('hedge', 'hedge opposite', at(-FAR_M, -gapM - HEDGE_M), at(FAR_M, -gapM)),
      block('hedge', 'hedge before the gateway', at(-FAR_M, hedgeM), at(-0.1, hedgeM + HEDGE_M)),
      block('hedge', 'hedge after the gateway', at(openingM + 0.1, hedgeM), at(FAR_M, hedgeM + HEDGE_M)),
      post('near post', -0.05, hedgeM),
      post('far post', openingM + 0.05, hedgeM),
      block('pitch', 'pitch', at(0, hedgeM + HEDGE_M), at(openingM, hedgeM + PITCH_DEPTH_M)),
    ],
    start: { xM: startM, yM: vehicle.widthM / 2, headingRad: 0 },
    legs: [
      straightLeg(turnAtM - startM + straightM),
      arcLeg(vehicle, radiusM, Math.PI / 2),
      straightLeg(AFTER_M),
    ],
    swingSide: 'right',
  };
}

/** The gap to the hedge opposite, as wide as was asked for or as the lane leaves. Metres. */
export function pitchGapM(vehicle: SwingVehicle, { gapM, laneM }: LessonSettings): number {
  return Math.max(0, Math.min(gapM, laneM - vehicle.widthM - HEDGE_LEAST_M));
}
