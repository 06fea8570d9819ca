import { onGround, type Pose, poseAt } from '../motion/motion.ts';
import { swingsOfScene } from './read-scene.ts';
import type { Point, Scene } from './scene.ts';
import { boxesOf } from './scenes/outline.ts';

/**
 * The gap at the start, between the body side and what stands beside it, that this run needs to pass. Beside a car only
 * what comes out along the car's own length counts, so pulling straight first helps; beside a wall it does not. Metres.
 */
export function gapNeededM(scene: Scene): number {
  const car = scene.fixtures.find(({ kind }) => kind === 'parked car');
  if (!car) return swingsOfScene(scene).mostM.at(-1) ?? 0;
  const xs = car.line.map(({ xM }) => xM);
  return outBesideM(scene, Math.min(...xs), Math.max(...xs));
}

/**
 * The most that comes out over the line of the body side at the start, between two places along that line, when all
 * is driven `shiftM` farther ahead along it (behind: negative). Metres; nothing below 0.
 */
export function outBesideM(scene: Scene, fromXM: number, toXM: number, shiftM = 0): number {
  const { vehicle, motion, swingSide } = scene;
  const start = poseAt(motion, 0);
  const side = swingSide === 'left' ? 1 : -1;
  const boxes = boxesOf(vehicle);
  let most = 0;
  for (let index = 0; index < motion.xM.length; index++) {
    const pose = poseAt(motion, index);
    for (const { backM, frontM, halfWidthM } of boxes) {
      const a = seenFrom(start, side, onGround(pose, backM, side * halfWidthM));
      const b = seenFrom(start, side, onGround(pose, frontM, side * halfWidthM));
      const c = seenFrom(start, side, onGround(pose, backM, -side * halfWidthM));
      const d = seenFrom(start, side, onGround(pose, frontM, -side * halfWidthM));
      for (const [p, q] of [
        [a, b],
        [a, c],
        [b, d],
      ] as const)
        most = Math.max(most, outAlong(p, q, fromXM - shiftM, toXM - shiftM) - vehicle.widthM / 2);
    }
  }
  return most;
}

/** The start's own frame for y, positive out to the side; x stays that of the ground, along which every lesson starts. */
function seenFrom(start: Pose, side: 1 | -1, { xM, yM }: Point): Point {
  return { xM, yM: side * (yM - start.yM) };
}

/** The greatest y of an edge between two x; −∞ where it does not come there. */
function outAlong(p: Point, q: Point, fromXM: number, toXM: number): number {
  const [low, high] = p.xM < q.xM ? [p, q] : [q, p];
  if (high.xM < fromXM || low.xM > toXM) return Number.NEGATIVE_INFINITY;
  const at = (xM: number): number =>
    high.xM === low.xM
      ? Math.max(low.yM, high.yM)
      : low.yM + ((high.yM - low.yM) * (xM - low.xM)) / (high.xM - low.xM);
  return Math.max(at(Math.max(fromXM, low.xM)), at(Math.min(toXM, high.xM)));
}
