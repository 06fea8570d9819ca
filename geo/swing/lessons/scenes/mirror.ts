import type { Motion } from '../../motion/motion.ts';
import type { Point } from '../scene.ts';

/** Left and right exchanged. */
export function mirrorPoint({ xM, yM }: Point): Point {
  return { xM, yM: -yM };
}

/** The same motion turned the other way. */
export function mirrorMotion(motion: Motion): Motion {
  return {
    travelM: motion.travelM,
    xM: motion.xM,
    yM: motion.yM.map((yM) => -yM),
    headingRad: motion.headingRad.map((rad) => -rad),
    steerRad: motion.steerRad.map((rad) => -rad),
  };
}

/** The side across. */
export function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}
