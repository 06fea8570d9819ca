import { type Pose, poseAt } from '../../motion/motion.ts';
import { beyondSide, isHalfRound, type SideLine } from '../../motion/side-line.ts';
import { type SteeredSpan, steeredSpans } from '../../motion/steered-spans.ts';
import { stepInto } from '../../motion/step.ts';
import { noseOf, type OutlineCorner, tailsOf } from '../../outline.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Scene } from '../scene/scene.ts';
import { oncePerScene } from './once-per-scene.ts';

/** The swing at every sample, and the most of the whole run. Metres; nothing below 0. */
interface Swings {
  readonly nowM: Float64Array;
  readonly mostM: Float64Array;
  readonly spans: readonly SteeredSpan[];
  /** the span in which each sample lies, or that lies before it; −1 before the first */
  readonly spanAt: Int16Array;
}

/**
 * How far the tail (running backwards: the nose) is out at each sample, beyond the line of the body side as it lay when
 * the wheel was last straight: after that instant the motion starts afresh, on whichever side.
 */
export const swingsOf = oncePerScene(workOut);

/** The most that tail or nose comes out on the whole way; of a turn of a drive, the figure of its row. Metres. */
export function mostSwingM(scene: Scene): number {
  if (scene.turn && !scene.steered) return scene.turn.swing.planM;
  return swingsOf(scene).mostM.at(-1) ?? 0;
}

/** The span in which a sample lies, or that lies before it; undefined before the first. */
export function spanAt({ spans, spanAt: at }: Swings, index: number): SteeredSpan | undefined {
  return spans[at[index]!];
}

function workOut({ vehicle, motion, reversing }: Scene): Swings {
  const spans = steeredSpans(motion);
  const readers = spans.map(({ line }) => outReader(vehicle, line));
  const [tails, nose] = [tailsOf(vehicle), [noseOf(vehicle)]];
  const count = motion.xM.length;
  const nowM = new Float64Array(count);
  const mostM = new Float64Array(count);
  const spanAt = new Int16Array(count).fill(-1);
  let span = -1;
  let backwards = reversing;
  let most = 0;
  for (let index = 0; index < count; index++) {
    const next = spans[span + 1];
    if (next && index >= next.from) span++;
    const stepM = stepInto(motion, index);
    if (stepM !== 0) backwards = stepM < 0;
    const reader = readers[span];
    if (reader) nowM[index] = reader(poseAt(motion, index), backwards ? nose : tails);
    most = Math.max(most, nowM[index]!);
    mostM[index] = most;
    spanAt[index] = span;
  }
  return { nowM, mostM, spans, spanAt };
}

/** Reads how far the farthest of some corners is out; nothing below 0, and nothing once the vehicle came half round. */
function outReader(
  vehicle: SwingVehicle,
  line: SideLine,
): (pose: Pose, corners: readonly OutlineCorner[]) => number {
  const beyond = beyondSide(vehicle, line);
  return (pose, corners) =>
    isHalfRound(pose, line) ? 0 : corners.reduce((most, corner) => Math.max(most, beyond(pose, corner)), 0);
}
