import { largest, smallest } from '../../../lists.ts';
import { type Motion, onGround, poseAt } from '../../motion/motion.ts';
import { boxesOf } from '../../outline.ts';
import type { Point } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture, FixtureKind } from '../scene/fixture.ts';
import type { Extent } from '../scene/scene.ts';
import { at } from './fixtures.ts';

/** Left free round everything. Metres. */
const MARGIN_M = 1;
/** Things of their own size; lines run on past the picture. */
const SHOWN_WHOLE: readonly FixtureKind[] = ['parked car', 'post', 'island', 'pitch'];

/** The box of every place the vehicle takes, of the things that stand there and of the points asked for, those without a margin. */
export function extentOf(
  vehicle: SwingVehicle,
  motion: Motion,
  fixtures: readonly Fixture[],
  see: readonly Point[],
): Extent {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const hold = ({ xM, yM }: Point): void => {
    left = Math.min(left, xM);
    right = Math.max(right, xM);
    low = Math.min(low, yM);
    high = Math.max(high, yM);
  };
  const corners = boxesOf(vehicle).flatMap(({ backM, frontM, halfWidthM }) => [
    at(backM, halfWidthM),
    at(backM, -halfWidthM),
    at(frontM, halfWidthM),
    at(frontM, -halfWidthM),
  ]);
  for (let index = 0; index < motion.xM.length; index++) {
    const pose = poseAt(motion, index);
    for (const { xM, yM } of corners) hold(onGround(pose, xM, yM));
  }
  for (const { kind, line } of fixtures) if (SHOWN_WHOLE.includes(kind)) line.forEach(hold);
  const xs = see.map(({ xM }) => xM);
  const ys = see.map(({ yM }) => yM);
  return {
    from: at(Math.min(left - MARGIN_M, smallest(xs)), Math.min(low - MARGIN_M, smallest(ys))),
    to: at(Math.max(right + MARGIN_M, largest(xs)), Math.max(high + MARGIN_M, largest(ys))),
  };
}
