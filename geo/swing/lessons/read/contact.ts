import { halve } from '../../../earth/bisect.ts';
import { type Pose, poseAt } from '../../motion/motion.ts';
import { stepBy, stepInto } from '../../motion/step.ts';
import { reachM } from '../../outline.ts';
import type { Point } from '../../point.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import { atLeastAwayM } from './fixture-box.ts';
import type { VehiclePart } from './part.ts';
import { partsOf, type Separation, type Standing, separationOf } from './separation.ts';

/** The first touch. */
export interface Contact {
  /** the first sample at or past the touch */
  readonly index: number;
  /** the exact pose of the touch, between the samples */
  readonly pose: Pose;
  readonly travelM: number;
  /** where on the ground */
  readonly at: Point;
  readonly fixture: Fixture;
  readonly part: VehiclePart;
}

/** Side by side with no gap is not yet a touch. Metres. */
const TOUCH_M = 1e-6;
/** Things farther off than this need no exact gap. Metres. */
const FAR_M = 0.5;
/** The moment of the touch is found to this way of the rear axle. Metres. */
const FINE_M = 1e-4;

/** The least gap to anything hard; undefined where nothing hard is nearer than a bound. Metres. */
export function nearestTo(
  standing: Standing,
  fixtures: readonly Fixture[],
  belowM = Number.POSITIVE_INFINITY,
): Separation | undefined {
  let best: Separation | undefined;
  const reach = reachM(standing.vehicle);
  const partsMeeting = partsOf(standing);
  for (const fixture of fixtures) {
    if (!fixture.hard) continue;
    const limitM = best?.gapM ?? belowM;
    if (atLeastAwayM(fixture, standing.pose) - reach >= limitM) continue;
    best = separationOf(partsMeeting(fixture.kind), fixture, limitM) ?? best;
  }
  return best;
}

/** The vehicle of a scene at one of its samples. */
export function standingAt({ vehicle, motion }: Scene, index: number): Standing {
  return { vehicle, pose: poseAt(motion, index), steerRad: motion.steerRad[index]! };
}

/** The first touch, its moment found between the samples; undefined where the run touches nothing. */
export function contactOf(scene: Scene): Contact | undefined {
  const { motion, fixtures, vehicle } = scene;
  const reach = reachM(vehicle);
  let freeM = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    freeM -= moveM(scene, index, reach);
    if (freeM > 0) continue;
    const now = nearestTo(standingAt(scene, index), fixtures, FAR_M);
    if (!now || !touches(now)) {
      freeM = now?.gapM ?? FAR_M;
      continue;
    }
    return touchBetween(scene, index, now);
  }
  return undefined;
}

function touches({ gapM }: Separation): boolean {
  return gapM < -TOUCH_M;
}

function touchBetween(scene: Scene, index: number, now: Separation): Contact {
  const { vehicle, motion, fixtures } = scene;
  const stepM = stepInto(motion, index);
  const { steerRad, pose: hitPose } = standingAt(scene, index);
  const endM = motion.travelM[index]!;
  let touch = { pose: hitPose, travelM: endM, near: now };
  if (stepM !== 0) {
    const before = poseAt(motion, index - 1);
    halve(0, stepM, FINE_M, (goneM) => {
      const pose = stepBy(vehicle, before, steerRad, goneM);
      const near = nearestTo({ vehicle, pose, steerRad }, fixtures, FAR_M);
      if (!near || !touches(near)) return false;
      touch = { pose, travelM: endM - Math.abs(stepM - goneM), near };
      return true;
    });
  }
  const { pose, travelM, near } = touch;
  return { index, pose, travelM, at: near.at, fixture: near.fixture, part: near.part };
}

/** The least gap of the whole run to anything hard; negative where it touches. Undefined where nothing hard stands there. */
export function leastGapOf(scene: Scene): Separation | undefined {
  const { motion, fixtures, vehicle } = scene;
  const reach = reachM(vehicle);
  let best: Separation | undefined;
  let spareM = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    spareM -= moveM(scene, index, reach);
    // it cannot have come nearer than the least so far
    if (spareM > 0) continue;
    const belowM = best ? best.gapM + FAR_M : Number.POSITIVE_INFINITY;
    const near = nearestTo(standingAt(scene, index), fixtures, belowM);
    if (near && (!best || near.gapM < best.gapM)) best = near;
    if (!best) return undefined;
    spareM = near ? near.gapM - best.gapM : FAR_M;
  }
  return best;
}

/** No point of the vehicle moved farther than this from the sample before. Metres. */
function moveM({ motion }: Scene, index: number, reach: number): number {
  if (index === 0) return 0;
  const dx = motion.xM[index]! - motion.xM[index - 1]!;
  const dy = motion.yM[index]! - motion.yM[index - 1]!;
  const turned = Math.abs(motion.headingRad[index]! - motion.headingRad[index - 1]!);
  // a wheel turned standing moves the ends of its tyre
  const wheelM = Math.abs(motion.steerRad[index]! - motion.steerRad[index - 1]!) * 0.3;
  return Math.hypot(dx, dy) + turned * reach + wheelM;
}
