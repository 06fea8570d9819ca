import { halve } from '../../earth/bisect.ts';
import { type Pose, poseAt } from '../motion/motion.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import type { Contact, Fixture, Scene } from './scene.ts';
import { atLeastAwayM } from './scenes/fixture-box.ts';
import { stepBy, stepInto } from './scenes/legs.ts';
import { reachM } from './scenes/outline.ts';
import { partsMeeting, type Separation, separationOf } from './separation.ts';

/** Side by side with no gap is not yet a touch. Metres. */
const TOUCH_M = 1e-6;
/** Things farther off than this need no exact gap. Metres. */
const FAR_M = 0.5;
/** The moment of the touch is found to this way of the rear axle. Metres. */
const FINE_M = 1e-4;

/** The least gap to anything hard at a pose; undefined where nothing hard is nearer than a bound. Metres. */
export function nearestAt(
  vehicle: SwingVehicle,
  pose: Pose,
  steerRad: number,
  fixtures: readonly Fixture[],
  belowM = Number.POSITIVE_INFINITY,
): Separation | undefined {
  let best: Separation | undefined;
  const reach = reachM(vehicle);
  for (const fixture of fixtures) {
    if (!fixture.hard) continue;
    const limitM = best?.gapM ?? belowM;
    if (atLeastAwayM(fixture, pose) - reach >= limitM) continue;
    best = separationOf(pose, partsMeeting(vehicle, steerRad, fixture.kind), fixture, limitM) ?? best;
  }
  return best;
}

/** The first touch, its moment found between the samples; undefined where the run touches nothing. */
export function contactOf(scene: Scene): Contact | undefined {
  const { vehicle, motion, fixtures } = scene;
  let freeM = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    freeM -= moveM(scene, index);
    if (freeM > 0) continue;
    const steerRad = motion.steerRad[index]!;
    const now = nearestAt(vehicle, poseAt(motion, index), steerRad, fixtures, FAR_M);
    if (!now || now.gapM >= -TOUCH_M) {
      freeM = now?.gapM ?? FAR_M;
      continue;
    }
    return touchBetween(scene, index, now);
  }
  return undefined;
}

function touchBetween(scene: Scene, index: number, now: Separation): Contact {
  const { vehicle, motion, fixtures } = scene;
  const stepM = stepInto(motion, index);
  const steerRad = motion.steerRad[index]!;
  const endM = motion.travelM[index]!;
  let touch = { pose: poseAt(motion, index), travelM: endM, near: now };
  if (stepM !== 0) {
    const before = poseAt(motion, index - 1);
    halve(0, stepM, FINE_M, (goneM) => {
      const pose = stepBy(vehicle, before, steerRad, goneM);
      const near = nearestAt(vehicle, pose, steerRad, fixtures, FAR_M);
      if (!near || near.gapM >= -TOUCH_M) return false;
      touch = { pose, travelM: endM - Math.abs(stepM - goneM), near };
      return true;
    });
  }
  const { pose, travelM, near } = touch;
  return { index, pose, travelM, at: near.at, fixture: near.fixture.name, part: near.part };
}

/** Where a run comes nearest to anything hard. */
export interface LeastGap {
  readonly gapM: number;
  readonly index: number;
  readonly near: Separation;
}

/** The least gap of the whole run; negative where it touches. Undefined where nothing hard stands there. */
export function leastGapOf(scene: Scene): LeastGap | undefined {
  const { vehicle, motion, fixtures } = scene;
  let best: LeastGap | undefined;
  let spareM = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    spareM -= moveM(scene, index);
    // it cannot have come nearer than the least so far
    if (spareM > 0) continue;
    const steerRad = motion.steerRad[index]!;
    const belowM = best ? best.gapM + FAR_M : Number.POSITIVE_INFINITY;
    const near = nearestAt(vehicle, poseAt(motion, index), steerRad, fixtures, belowM);
    if (near && (!best || near.gapM < best.gapM)) best = { gapM: near.gapM, index, near };
    if (!best) return undefined;
    spareM = near ? near.gapM - best.gapM : FAR_M;
  }
  return best;
}

/** No point of the vehicle moved farther than this from the sample before. Metres. */
function moveM({ vehicle, motion }: Scene, index: number): number {
  if (index === 0) return 0;
  const dx = motion.xM[index]! - motion.xM[index - 1]!;
  const dy = motion.yM[index]! - motion.yM[index - 1]!;
  const turned = Math.abs(motion.headingRad[index]! - motion.headingRad[index - 1]!);
  // a wheel turned standing moves the ends of its tyre
  const wheelM = Math.abs(motion.steerRad[index]! - motion.steerRad[index - 1]!) * 0.3;
  return Math.hypot(dx, dy) + turned * reachM(vehicle) + wheelM;
}
