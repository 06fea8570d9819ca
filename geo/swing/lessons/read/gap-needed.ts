import { onGround, poseAt } from '../../motion/motion.ts';
import { boxesOf } from '../../outline.ts';
import { type Point, signOf } from '../../point.ts';
import type { Scene } from '../scene/scene.ts';
import { mostSwingM } from './swings.ts';

/** Where a car stands along the first straight, from its one end to the other. Metres on the ground's x. */
export interface CarStretch {
  readonly fromXM: number;
  readonly toXM: number;
}

/** The parked car that stands beside the vehicle; undefined where none does. */
export function carBeside({ fixtures }: Scene): CarStretch | undefined {
  const car = fixtures.find(({ kind }) => kind === 'parked car');
  if (!car) return undefined;
  const xs = car.line.map(({ xM }) => xM);
  return { fromXM: Math.min(...xs), toXM: Math.max(...xs) };
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
  const boxes = boxesOf(vehicle);
  let most = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    const pose = poseAt(motion, index);
    // x is that of the ground, along which every lesson starts; y from the start's middle line, positive out
    const seen = (aheadM: number, outM: number): Point => {
      const { xM, yM } = onGround(pose, aheadM, sign * outM);
      return { xM, yM: sign * (yM - startYM) };
    };
    for (const { backM, frontM, halfWidthM } of boxes) {
      const [outBack, outFront] = [seen(backM, halfWidthM), seen(frontM, halfWidthM)];
      most = Math.max(
        most,
        outAlong(outBack, outFront, along) - vehicle.widthM / 2,
        outAlong(outBack, seen(backM, -halfWidthM), along) - vehicle.widthM / 2,
        outAlong(outFront, seen(frontM, -halfWidthM), along) - vehicle.widthM / 2,
      );
    }
  }
  return most;
}

/** The greatest y of an edge along a stretch of x; −∞ where it does not come there. */
function outAlong(p: Point, q: Point, { fromXM, toXM }: CarStretch): number {
  const [low, high] = p.xM < q.xM ? [p, q] : [q, p];
  if (high.xM < fromXM || low.xM > toXM) return Number.NEGATIVE_INFINITY;
  const at = (xM: number): number =>
    high.xM === low.xM
      ? Math.max(low.yM, high.yM)
      : low.yM + ((high.yM - low.yM) * (xM - low.xM)) / (high.xM - low.xM);
  return Math.max(at(Math.max(fromXM, low.xM)), at(Math.min(toXM, high.xM)));
}
