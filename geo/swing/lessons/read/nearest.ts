import { poseAt } from '../../motion/motion.ts';
import { stepBy, stepInto } from '../../motion/step.ts';
import { reachM } from '../../outline.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import { atLeastAwayM } from './fixture-box.ts';
import { partsOf, type Separation, type Standing, separationOf } from './separation.ts';

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

/** The vehicle on its way from the sample before to one, so much of it rolled; negative backwards. */
export function standingBetween({ vehicle, motion }: Scene, index: number, rolledM: number): Standing {
  const steerRad = motion.steerRad[index]!;
  return { vehicle, pose: stepBy(vehicle, poseAt(motion, index - 1), steerRad, rolledM), steerRad };
}

/** A place between two samples, and what is nearest there. */
export interface Between {
  readonly rolledM: number;
  readonly near: Separation;
}

/** Places looked at between two samples, and thirds taken away about the nearest: to a hundredth of a millimetre. */
const PLACES = 8;
const THIRDS = 16;

/**
 * Where the vehicle comes nearest to anything hard between the sample before and one: a corner may pass the end of a
 * thing there, clear of it at both samples. Undefined where nothing is nearer than a bound, or only the wheel turned.
 */
export function nearestBetween(scene: Scene, index: number, belowM: number): Between | undefined {
  const stepM = stepInto(scene.motion, index);
  if (stepM === 0) return undefined;
  let best: Between | undefined;
  const look = (share: number): number => {
    const rolledM = share * stepM;
    const near = nearestTo(standingBetween(scene, index, rolledM), scene.fixtures, belowM);
    if (near && (!best || near.gapM < best.near.gapM)) best = { rolledM, near };
    return near?.gapM ?? Number.POSITIVE_INFINITY;
  };
  for (let place = 1; place < PLACES; place++) look(place / PLACES);
  if (!best) return undefined;
  const about = best.rolledM / stepM;
  let [from, to] = [about - 1 / PLACES, about + 1 / PLACES];
  for (let third = 0; third < THIRDS; third++) {
    const [a, b] = [from + (to - from) / 3, to - (to - from) / 3];
    if (look(a) < look(b)) to = b;
    else from = a;
  }
  return best;
}

/** No point of the vehicle moved farther than this from the sample before. Metres. */
export function movedM({ motion }: Scene, index: number, reach: number): number {
  if (index === 0) return 0;
  const dx = motion.xM[index]! - motion.xM[index - 1]!;
  const dy = motion.yM[index]! - motion.yM[index - 1]!;
  const turned = Math.abs(motion.headingRad[index]! - motion.headingRad[index - 1]!);
  // a wheel turned standing moves the ends of its tyre
  const wheelM = Math.abs(motion.steerRad[index]! - motion.steerRad[index - 1]!) * 0.3;
  return Math.hypot(dx, dy) + turned * reach + wheelM;
}
