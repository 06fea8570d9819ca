import type { Frame } from '../../motion/frame.ts';
import { onGround } from '../../motion/motion.ts';
import { beyondSide, footOnSide, type SideLine, sideLineAt } from '../../motion/side-line.ts';
import { swingingCorners } from '../../outline.ts';
import { type Point, signOf } from '../../point.ts';
import type { Scene } from '../scene/scene.ts';

/** The swing at one moment: the corner that is farthest out, and how far beyond which line. */
export interface SwingNow {
  readonly line: SideLine;
  readonly corner: Point;
  /** the place of the line square to the corner */
  readonly foot: Point;
  readonly outM: number;
}

/** The corner farthest out at a moment, beyond the line of the side. */
export function swingNow(
  { vehicle, motion, reversing, swingSide }: Scene,
  { pose, index }: Pick<Frame, 'pose' | 'index'>,
): SwingNow {
  const line = sideLineAt(motion, index, swingSide);
  const beyond = beyondSide(vehicle, line);
  const far = swingingCorners(vehicle, { reversing })
    .map((corner) => ({ corner, outM: beyond(pose, corner) }))
    .reduce((most, each) => (each.outM > most.outM ? each : most));
  const corner = onGround(pose, far.corner.aheadM, signOf(line.side) * far.corner.halfWidthM);
  return { line, corner, foot: footOnSide(vehicle, line, corner), outM: far.outM };
}
