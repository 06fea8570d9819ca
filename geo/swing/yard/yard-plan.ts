import { frontCornerRadiusM } from '../circle.ts';
import { onGround, type Pose } from '../motion/motion.ts';
import { outlineOnGround } from '../motion/outline-on-ground.ts';
import { tailsOf } from '../outline.ts';
import type { Point } from '../point.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';

/** What is chalked in the yard, each with the letter that stands in the drawing and beside its box. */
export type YardMark = 'A' | 'B' | 'C';

/**
 * The yard from above, the wheel hard over to the left: the vehicle where it stands at the start, x ahead and the middle
 * of its rear axle at the origin, and where it is when the tail is farthest out. Metres.
 */
export interface YardPlan {
  readonly poses: readonly [Pose, Pose];
  readonly outlines: readonly (readonly Point[])[];
  /** the side that is chalked on the ground, and run on behind */
  readonly sideLine: readonly [Point, Point];
  /** where the tail's corner goes */
  readonly tailTrack: readonly Point[];
  /** the inner rear tyre's circle, round the turning centre */
  readonly centre: Point;
  readonly wheelRadiusM: number;
  /** A beside the rear axle at the start, B the tail's farthest mark, C across the circle */
  readonly marks: Readonly<Record<YardMark, Point>>;
  /** from the line to B, and straight across the circle */
  readonly tailFoot: Point;
  readonly across: readonly [Point, Point];
  /** a yard must have room for the outer front corner on its whole circle, and a little more */
  readonly roomM: number;
}

/** Left free round the vehicle's widest circle. Metres; judgement. */
const FREE_M = 1.5;
const TRACK_STEPS = 40;
/** The circle is measured across so far turned from the line, where the drawing has room. Radians. */
const ACROSS_RAD = Math.PI / 6;

/** The yard for one vehicle, by what is known of its lock so far. */
export function yardPlanOf(vehicle: SwingVehicle): YardPlan {
  const radiusM = vehicle.lock.rearAxleRadiusM;
  const halfM = vehicle.widthM / 2;
  const centre: Point = { xM: 0, yM: radiusM };
  const turned = (rad: number): Pose => ({
    xM: radiusM * Math.sin(rad),
    yM: radiusM * (1 - Math.cos(rad)),
    headingRad: rad,
  });
  // the corner that comes out farthest, when it lies on the line through the turning centre and A
  const far = tailsOf(vehicle)
    .map(({ aheadM, halfWidthM }) => ({
      aheadM,
      halfWidthM,
      atRad: Math.atan2(-aheadM, radiusM + halfWidthM),
      reachM: Math.hypot(radiusM + halfWidthM, aheadM),
    }))
    .reduce((most, each) => (each.reachM > most.reachM ? each : most));
  const poses = [turned(0), turned(far.atRad)] as const;
  const wheelRadiusM = radiusM - vehicle.trackM / 2;
  const onCircle = (rad: number): Point => ({
    xM: wheelRadiusM * Math.cos(rad),
    yM: radiusM + wheelRadiusM * Math.sin(rad),
  });
  return {
    poses,
    outlines: poses.map((pose) => outlineOnGround(vehicle, pose)),
    sideLine: [
      { xM: far.aheadM - 1.5, yM: -halfM },
      { xM: vehicle.wheelbaseM + vehicle.frontOverhangM, yM: -halfM },
    ],
    tailTrack: Array.from({ length: TRACK_STEPS + 1 }, (_, step) =>
      onGround(turned((1.8 * far.atRad * step) / TRACK_STEPS), far.aheadM, -far.halfWidthM),
    ),
    centre,
    wheelRadiusM,
    marks: {
      A: { xM: 0, yM: -halfM },
      B: onGround(poses[1], far.aheadM, -far.halfWidthM),
      C: onCircle(ACROSS_RAD),
    },
    tailFoot: { xM: 0, yM: -halfM },
    across: [onCircle(ACROSS_RAD), onCircle(ACROSS_RAD + Math.PI)],
    roomM: 2 * (frontCornerRadiusM(vehicle, radiusM) + FREE_M),
  };
}
