import { halve } from '../../../earth/bisect.ts';
import type { Pose } from '../../motion/motion.ts';
import { stepInto } from '../../motion/step.ts';
import { reachM } from '../../outline.ts';
import type { Point } from '../../point.ts';
import type { Fixture } from '../scene/fixture.ts';
import type { Scene } from '../scene/scene.ts';
import { type Between, movedM, nearestBetween, nearestTo, standingAt, standingBetween } from './nearest.ts';
import { oncePerScene } from './once-per-scene.ts';
import type { VehiclePart } from './part.ts';
import type { Separation } from './separation.ts';

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
/** Gaps that differ by less are the same gap, driven along. Metres. */
const NOISE_M = 1e-9;
/** The moment of the touch is found to this way of the rear axle. Metres. */
const FINE_M = 1e-4;

/** The first touch, its moment found between the samples; undefined where the run touches nothing. */
export const contactOf = oncePerScene(firstTouch);

function firstTouch(scene: Scene): Contact | undefined {
  const { motion, fixtures, vehicle } = scene;
  const reach = reachM(vehicle);
  // nothing hard is nearer than this where it last stood
  let freeM = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    const moved = movedM(scene, index, reach);
    const wasFreeM = freeM;
    freeM -= moved;
    if (freeM > 0) continue;
    const now = nearestTo(standingAt(scene, index), fixtures, FAR_M);
    if (now && touches(now))
      return touchBetween(scene, index, { rolledM: stepInto(motion, index), near: now });
    freeM = now?.gapM ?? FAR_M;
    // leaving the one clearance and coming to the other, it cannot have used up both
    if (index === 0 || wasFreeM + freeM >= moved) continue;
    const between = nearestBetween(scene, index, freeM);
    if (between && touches(between.near)) return touchBetween(scene, index, between);
  }
  return undefined;
}

function touches({ gapM }: Separation): boolean {
  return gapM < -TOUCH_M;
}

/** The first touch on the way from the sample before to a place that touches. */
function touchBetween(scene: Scene, index: number, hit: Between): Contact {
  const { motion, fixtures } = scene;
  const stepM = stepInto(motion, index);
  let touch = { ...hit, pose: standingAt(scene, index).pose };
  if (stepM !== 0) {
    touch = { ...hit, pose: standingBetween(scene, index, hit.rolledM).pose };
    halve(0, hit.rolledM, FINE_M, (rolledM) => {
      const standing = standingBetween(scene, index, rolledM);
      const near = nearestTo(standing, fixtures, FAR_M);
      if (!near || !touches(near)) return false;
      touch = { rolledM, near, pose: standing.pose };
      return true;
    });
  }
  const { pose, near, rolledM } = touch;
  const travelM = motion.travelM[index]! - Math.abs(stepM - rolledM);
  return { index, pose, travelM, at: near.at, fixture: near.fixture, part: near.part };
}

/** The least gap of the whole run to anything hard; negative where it touches. Undefined where nothing hard stands there. */
export const leastGapOf = oncePerScene(leastGap);

function leastGap(scene: Scene): Separation | undefined {
  const { motion } = scene;
  const reach = reachM(scene.vehicle);
  let best = leastAtSamples(scene, reach);
  if (!best) return undefined;
  // now between the samples that are hardly farther off than the least
  let spareM = 0;
  for (let index = 1; index < motion.xM.length; index++) {
    const moved = movedM(scene, index, reach);
    const wasSpareM = spareM;
    spareM -= moved;
    if (spareM > 0) continue;
    const near = nearestTo(standingAt(scene, index), scene.fixtures, best.gapM + FAR_M);
    spareM = near ? near.gapM - best.gapM : FAR_M;
    if (wasSpareM + spareM >= moved) continue;
    const between = nearestBetween(scene, index, best.gapM + Math.min(wasSpareM, spareM) - NOISE_M);
    if (between && between.near.gapM < best.gapM) best = between.near;
  }
  return best;
}

function leastAtSamples(scene: Scene, reach: number): Separation | undefined {
  const { motion, fixtures } = scene;
  let best: Separation | undefined;
  let spareM = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    spareM -= movedM(scene, index, reach);
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
