import { append } from '../../../lists.ts';
import { type Motion, onGround, poseAt } from '../../motion/motion.ts';
import { beyondSide, footOnSide, type SideLine, wheelSide } from '../../motion/side-line.ts';
import { noseOf, type OutlineCorner, swingingCorners, tailsOf } from '../../outline.ts';
import { otherSide, type Point, type Side, signOf } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Scene } from '../scene/scene.ts';

/** Where the points that explain a turn ran, a place a sample. */
interface Traces {
  /** the tail's outermost corner on the side that goes out */
  readonly tail: readonly Point[];
  /** the inner rear wheel */
  readonly wheel: readonly Point[];
  /** the nose's corner on the side that goes out */
  readonly nose: readonly Point[];
}

export function tracesOf({ vehicle, motion, swingSide }: Scene): Traces {
  const [tail] = tailsOf(vehicle).slice(-1);
  const cornerTrace = ({ aheadM, halfWidthM }: OutlineCorner) =>
    traceOf(motion, aheadM, signOf(swingSide) * halfWidthM);
  return {
    tail: tail ? cornerTrace(tail) : [],
    wheel: traceOf(motion, 0, (signOf(otherSide(swingSide)) * vehicle.trackM) / 2),
    nose: cornerTrace(noseOf(vehicle)),
  };
}

/** Where one point of the vehicle went. */
function traceOf(motion: Motion, aheadM: number, leftM: number): Point[] {
  return Array.from(motion.xM, (_, index) => onGround(poseAt(motion, index), aheadM, leftM));
}

/** Ground that a corner covers beyond one line, while the wheel is held to one side. */
export interface SweptStrip {
  readonly places: readonly { readonly index: number; readonly at: Point }[];
  /** the place of the line square to a place */
  foot(at: Point): Point;
}

/** The strips that tail (running backwards: nose) covers beyond the line of the body's side, one a corner and line. */
export function sweptStrips({ vehicle, motion, reversing }: Scene): readonly SweptStrip[] {
  const strips: CornerStrip[] = [];
  let current: readonly CornerStrip[] = [];
  let wheel: Side | undefined;
  for (let index = 0; index < motion.xM.length; index++) {
    const now = wheelSide(motion.steerRad[index]!);
    if (now !== wheel) {
      wheel = now;
      const line = now && { pose: poseAt(motion, Math.max(0, index - 1)), side: otherSide(now) };
      current = line
        ? swingingCorners(vehicle, { reversing }).map((corner) => cornerStrip(vehicle, line, corner))
        : [];
      append(strips, current);
    }
    for (const strip of current) strip.take(motion, index);
  }
  return strips.filter(({ places }) => places.length > 1);
}

interface CornerStrip extends SweptStrip {
  take(motion: Motion, index: number): void;
}

function cornerStrip(vehicle: SwingVehicle, line: SideLine, corner: OutlineCorner): CornerStrip {
  const places: { index: number; at: Point }[] = [];
  const beyond = beyondSide(vehicle, line);
  return {
    places,
    foot: (at) => footOnSide(vehicle, line, at),
    take: (motion, index) => {
      const pose = poseAt(motion, index);
      if (beyond(pose, corner) > 0)
        places.push({ index, at: onGround(pose, corner.aheadM, signOf(line.side) * corner.halfWidthM) });
    },
  };
}
