import { given } from '../../given.ts';
import { type Motion, poseAt } from '../motion/motion.ts';
import { reversalsIn, type SteeredSpan, steeredSpans } from '../motion/steered-spans.ts';
import { noseOf, tailsOf } from '../outline.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type Swing, swingBeyond } from './swing-beyond.ts';

/** What is read off a motion without a path. */
export interface EndSwings {
  /** the tail on the outside of the first turn, beyond the line of that body side before the turn, until the steering first reverses */
  readonly tail: Swing;
  /** the greatest after the steering has reversed, each from the body line at the instant the wheel stood straight */
  readonly tailAfterReversal?: Swing;
  /** the greatest of any later turn, on whichever side, each from the body line as that turn began */
  readonly tailLater?: Swing;
  /** the nose on the outside of the first turn: what swings when reversing */
  readonly nose: Swing;
  readonly steerReversals: number;
  readonly steerMaxRad: number;
  /** least radius of the rear-axle centre; infinite where it never turns */
  readonly rearAxleRadiusMinM: number;
}

/** How far the ends of the vehicle swing. */
export function measureEnds(vehicle: SwingVehicle, motion: Motion): EndSwings {
  const spans = steeredSpans(motion);
  const reversal = spans.find(({ afterReversal }) => afterReversal);
  const first = {
    from: spans[0]?.from ?? 0,
    to: reversal ? Math.max(0, reversal.from - 1) : motion.travelM.length - 1,
    line: spans[0]?.line ?? { pose: poseAt(motion, 0), side: 'right' as const },
  };
  const tails = tailsOf(vehicle);
  const greatest = (among: readonly SteeredSpan[]): Swing | undefined =>
    mostOf(among.map((span) => swingBeyond(vehicle, motion, span, tails)));
  let steerMaxRad = 0;
  for (const steerRad of motion.steerRad) steerMaxRad = Math.max(steerMaxRad, Math.abs(steerRad));
  return {
    tail: swingBeyond(vehicle, motion, first, tails),
    nose: swingBeyond(vehicle, motion, first, [noseOf(vehicle)]),
    ...given({
      tailAfterReversal: greatest(spans.filter(({ afterReversal }) => afterReversal)),
      tailLater: greatest(spans.slice(1)),
    }),
    steerReversals: reversalsIn(spans),
    steerMaxRad,
    rearAxleRadiusMinM:
      steerMaxRad < 1e-9 ? Number.POSITIVE_INFINITY : vehicle.wheelbaseM / Math.tan(steerMaxRad),
  };
}

/** The farthest, the first of several as far; undefined where there is none. */
function mostOf(swings: readonly Swing[]): Swing | undefined {
  return swings.reduce<Swing | undefined>(
    (most, swing) => (most === undefined || swing.swingM > most.swingM ? swing : most),
    undefined,
  );
}
