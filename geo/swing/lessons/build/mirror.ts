import type { Motion } from '../../motion/motion.ts';
import { otherSide, type Point } from '../../point.ts';
import type { Scene } from '../scene/scene.ts';

/** A scene with left and right exchanged; its title and settings are the same. */
export function mirrored(scene: Scene): Scene {
  const { from, to } = scene.extent;
  return {
    ...scene,
    motion: mirrorMotion(scene.motion),
    fixtures: scene.fixtures.map((fixture) => ({ ...fixture, line: fixture.line.map(mirrorPoint) })),
    swingSide: otherSide(scene.swingSide),
    extent: { from: { xM: from.xM, yM: -to.yM }, to: { xM: to.xM, yM: -from.yM } },
  };
}

function mirrorPoint({ xM, yM }: Point): Point {
  return { xM, yM: -yM };
}

function mirrorMotion(motion: Motion): Motion {
  return {
    ...motion,
    yM: motion.yM.map(negative),
    headingRad: motion.headingRad.map(negative),
    steerRad: motion.steerRad.map(negative),
  };
}

function negative(value: number): number {
  return -value;
}
