import { largest, smallest } from '../../../lists.ts';
import { onGround, poseAt } from '../../motion/motion.ts';
import { boxesOf, type OutlineBox } from '../../outline.ts';
import { type Point, signOf } from '../../point.ts';
import type { Scene } from '../scene/scene.ts';
import { mostSwingM } from './swings.ts';

/** Where a car stands along the first straight, from its one end to the other. Metres on the ground's x. */
interface CarStretch {
  readonly fromXM: number;
  readonly toXM: number;
}

/** The parked car that stands beside the vehicle; undefined where none does. */
export function carBeside({ fixtures }: Scene): CarStretch | undefined {
  const car = fixtures.find(({ kind }) => kind === 'parked car');
  if (!car) return undefined;
  const xs = car.line.map(({ xM }) => xM);
  return { fromXM: smallest(xs), toXM: largest(xs) };
}

/**
 * The gap at the start, between the body side and what stands beside it, that this run needs to pass. Beside a car only
 * what comes out along the car's own length counts, so pulling straight first helps; beside a wall it does not. Metres.
 */
export function gapNeededM(scene: Scene): number {
  const car = carBeside(scene);
  return car ? outBesideM(scene, car) : mostSwingM(scene);
}

/** The most that comes out over the line of the body side at the start, along a stretch of it. Metres; nothing below 0. */
function outBesideM({ vehicle, motion, swingSide }: Scene, along: CarStretch): number {
  const startYM = motion.yM[0]!;
  const sign = signOf(swingSide);
  let most = 0;
  for (const box of boxesOf(vehicle)) {
    let before: readonly Point[] = [];
    for (let index = 0; index < motion.xM.length; index++) {
      // x is that of the ground, along which every lesson starts; y from the start's middle line, positive out
      const corners = cornersOf(box, sign).map(({ aheadM, leftM }) => {
        const { xM, yM } = onGround(poseAt(motion, index), aheadM, leftM);
        return { xM, yM: sign * (yM - startYM) };
      });
      for (const [which, corner] of corners.entries()) {
        const next = corners[which + 1];
        if (next) most = Math.max(most, outAlong(corner, next, along) - vehicle.widthM / 2);
        // a corner may pass the car's end between two samples
        const was = before[which];
        if (was) most = Math.max(most, outAlong(was, corner, along) - vehicle.widthM / 2);
      }
      before = corners;
    }
  }
  return most;
}

/** Corners of a rectangle in order round its outer side (1 left, −1 right): the back, that side, the front. */
function cornersOf(
  { backM, frontM, halfWidthM }: OutlineBox,
  sign: 1 | -1,
): readonly { readonly aheadM: number; readonly leftM: number }[] {
  return [
    { aheadM: backM, leftM: -sign * halfWidthM },
    { aheadM: backM, leftM: sign * halfWidthM },
    { aheadM: frontM, leftM: sign * halfWidthM },
    { aheadM: frontM, leftM: -sign * halfWidthM },
  ];
}

/** The greatest y of a straight piece along a stretch of x; −∞ where it does not come there. */
function outAlong(p: Point, q: Point, { fromXM, toXM }: CarStretch): number {
  const [low, high] = p.xM < q.xM ? [p, q] : [q, p];
  if (high.xM < fromXM || low.xM > toXM) return Number.NEGATIVE_INFINITY;
  const at = (xM: number): number =>
    high.xM === low.xM
      ? Math.max(low.yM, high.yM)
      : low.yM + ((high.yM - low.yM) * (xM - low.xM)) / (high.xM - low.xM);
  return Math.max(at(Math.max(fromXM, low.xM)), at(Math.min(toXM, high.xM)));
}
