import { useMemo } from 'preact/hooks';
import type { Point, Scene } from '../../../geo/swing/lessons/scene.ts';
import { onGround, poseAt } from '../../../geo/swing/motion/motion.ts';
import {
  beyondLineM,
  type Corner,
  footOnLine,
  isStraight,
  type SideLine,
  signOf,
  swingingCorners,
  traceOf,
} from './corner.ts';
import { type GrowingPath, growingPath, pathOf } from './paths.ts';

/** How the swept strip is tinted: free, over a line or near to something, or touching. */
export type Tone = 'free' | 'close' | 'over';

/** Where the tail's outer corner, the inner rear wheel and the nose's outer corner have been, up to a sample. In metres. */
export function Traces({ scene, index, tone }: { scene: Scene; index: number; tone: Tone }) {
  const lines = useMemo(() => linesOf(scene), [scene]);
  return (
    <>
      <path class={`swing-swept swing-swept-${tone}`} d={sweptUpTo(lines.strips, index)} />
      <path class="trace trace-wheel" d={lines.wheel.upTo(index)} />
      <path
        class={scene.reversing ? 'trace trace-nose trace-watched' : 'trace trace-nose'}
        d={lines.nose.upTo(index)}
      />
      <path class={scene.reversing ? 'trace' : 'trace trace-watched'} d={lines.tail.upTo(index)} />
    </>
  );
}

/** Ground that a corner covers beyond one line, while the wheel is held to one side. */
interface Strip {
  readonly places: readonly { readonly index: number; readonly at: Point }[];
  foot(at: Point): Point;
}

function linesOf(scene: Scene): {
  readonly tail: GrowingPath;
  readonly wheel: GrowingPath;
  readonly nose: GrowingPath;
  readonly strips: readonly Strip[];
} {
  const { vehicle, motion, swingSide } = scene;
  const out = signOf(swingSide);
  const tails = swingingCorners(vehicle, swingSide, false);
  const tail = tails.at(-1) ?? { aheadM: -vehicle.rearOverhangM, leftM: (out * vehicle.widthM) / 2 };
  const nose = { aheadM: vehicle.wheelbaseM + vehicle.frontOverhangM, leftM: (out * vehicle.widthM) / 2 };
  return {
    tail: growingPath(traceOf(motion, tail)),
    wheel: growingPath(traceOf(motion, { aheadM: 0, leftM: (-out * vehicle.trackM) / 2 })),
    nose: growingPath(traceOf(motion, nose)),
    strips: stripsOf(scene),
  };
}

function stripsOf(scene: Scene): Strip[] {
  const { vehicle, motion, reversing } = scene;
  const strips: (Strip & { readonly places: { readonly index: number; readonly at: Point }[] })[] = [];
  let current: typeof strips = [];
  let corners: readonly Corner[] = [];
  let line: SideLine | undefined;
  for (let index = 0; index < motion.xM.length; index++) {
    const steerRad = motion.steerRad[index]!;
    const side = steerRad > 0 ? 'right' : 'left';
    if (isStraight(steerRad)) line = undefined;
    else if (line?.side !== side) {
      const from: SideLine = { pose: poseAt(motion, Math.max(0, index - 1)), side };
      line = from;
      corners = swingingCorners(vehicle, side, reversing);
      current = corners.map(() => ({ places: [], foot: (at) => footOnLine(from, vehicle.widthM, at) }));
      strips.push(...current);
    }
    if (!line) continue;
    for (const [i, { aheadM, leftM }] of corners.entries()) {
      const at = onGround(poseAt(motion, index), aheadM, leftM);
      if (beyondLineM(line, vehicle.widthM, at) > 0) current[i]?.places.push({ index, at });
    }
  }
  return strips.filter(({ places }) => places.length > 1);
}

function sweptUpTo(strips: readonly Strip[], index: number): string {
  return strips
    .map(({ places, foot }) => {
      const run = places.filter((place) => place.index <= index).map(({ at }) => at);
      const [first, last] = [run[0], run.at(-1)];
      return first && last && run.length > 1 ? pathOf([foot(first), ...run, foot(last)], true) : '';
    })
    .join('');
}
