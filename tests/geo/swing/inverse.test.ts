import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../geo/given.ts';
import { fullLockSwingM, noseSwingM, swingOfPointM, tailsOf } from '../../../geo/swing/circle.ts';
import { gapForSteering, sideBeyondGap, steeringForGap, straightFirstM } from '../../../geo/swing/inverse.ts';
import { type Motion, onGround, poseAt } from '../../../geo/swing/motion/motion.ts';
import { lockRad, steer } from '../../../geo/swing/motion/steer.ts';
import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';
import { swingVehicle } from '../../support/swing-vehicle.ts';

const vehicles = fc
  .record({
    wheelbaseM: fc.double({ min: 2.5, max: 6, noNaN: true }),
    frontOverhangM: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
    rearOverhangM: fc.double({ min: 0.8, max: 3.5, noNaN: true }),
    widthM: fc.double({ min: 1.8, max: 2.55, noNaN: true }),
    lockM: fc.double({ min: 3.5, max: 9, noNaN: true }),
    rack: fc.option(
      fc.record({
        lengthM: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
        widthM: fc.double({ min: 1, max: 1.8, noNaN: true }),
      }),
      { nil: undefined },
    ),
  })
  .map(({ rack, ...sizes }) => swingVehicle({ ...sizes, ...given({ rack }) }));

/** Straight on, then the wheel held left until a third of a circle is turned. */
function driven(vehicle: SwingVehicle, steerRad: number, straightM: number, reverse = false): Motion {
  const radiusM = vehicle.wheelbaseM / Math.tan(steerRad);
  return steer(vehicle, {
    reverse,
    stepM: 0.01,
    points: [
      { travelM: 0, steerRad: 0 },
      { travelM: straightM, steerRad: 0 },
      { travelM: straightM, steerRad },
      { travelM: straightM + 2 * radiusM, steerRad },
    ],
  });
}

/** How far the right side's corners come out over the line of the body's right side, where they stand at x up to `uptoM`. */
function outOnRightM(vehicle: SwingVehicle, motion: Motion, uptoM = Number.POSITIVE_INFINITY): number {
  let mostM = 0;
  for (let index = 0; index < motion.xM.length; index++)
    for (const { behindM, halfWidthM } of tailsOf(vehicle)) {
      // along the edge behind the corner too
      for (let share = -1; share <= 1; share += 0.05) {
        const point = onGround(poseAt(motion, index), -behindM, share * halfWidthM);
        if (point.xM <= uptoM) mostM = Math.max(mostM, -point.yM - vehicle.widthM / 2);
      }
    }
  return mostM;
}

describe('a gap beside the tail', () => {
  it('of 46 cm lets the 7.4 m coach-built turn at any lock, one of 45 cm does not', () => {
    expect(steeringForGap(swingVehicle(), 0.46, 'tail').lockShare).toBe(1);
    expect(steeringForGap(swingVehicle(), 0.45, 'tail').lockShare).toBeLessThan(1);
  });

  it('of nothing lets the wheel stay straight only', () => {
    expect(steeringForGap(swingVehicle(), 0, 'tail')).toMatchObject({
      radiusM: Number.POSITIVE_INFINITY,
      steerRad: 0,
    });
    expect(gapForSteering(swingVehicle(), 0, 'tail')).toBe(0);
  });

  it('is what the steering that it allows needs, to a micrometre', () => {
    fc.assert(
      fc.property(vehicles, fc.double({ min: 0.01, max: 1, noNaN: true }), (vehicle, gapM) => {
        for (const end of ['tail', 'nose'] as const) {
          const { steerRad, lockShare } = steeringForGap(vehicle, gapM, end);
          const neededM = gapForSteering(vehicle, steerRad, end);
          if (lockShare === 1) expect(neededM).toBeLessThanOrEqual(gapM + 1e-6);
          else expect(neededM).toBeCloseTo(gapM, 6);
        }
      }),
    );
  });

  it('is kept when that steering is driven, and passed with a tenth more of the wheel', () => {
    fc.assert(
      fc.property(vehicles, fc.double({ min: 0.02, max: 0.6, noNaN: true }), (vehicle, gapM) => {
        const { steerRad, lockShare } = steeringForGap(vehicle, gapM, 'tail');
        expect(outOnRightM(vehicle, driven(vehicle, steerRad, 0))).toBeLessThanOrEqual(gapM + 1e-6);
        if (lockShare < 0.9)
          expect(outOnRightM(vehicle, driven(vehicle, 1.1 * steerRad, 0))).toBeGreaterThan(gapM);
      }),
      { numRuns: 40 },
    );
  });

  it('at full lock is the closed form’s swing; reversing, the nose’s', () => {
    fc.assert(
      fc.property(vehicles, (vehicle) => {
        expect(gapForSteering(vehicle, lockRad(vehicle), 'tail')).toBeCloseTo(fullLockSwingM(vehicle), 9);
        expect(gapForSteering(vehicle, -lockRad(vehicle), 'nose')).toBeCloseTo(
          noseSwingM(vehicle, vehicle.lock.rearAxleRadiusM),
          9,
        );
      }),
    );
  });
});

describe('the side of the body', () => {
  it('exceeds the gap from the place on where its own swing is the gap', () => {
    fc.assert(
      fc.property(vehicles, fc.double({ min: 0.01, max: 0.3, noNaN: true }), (vehicle, gapM) => {
        const radiusM = vehicle.lock.rearAxleRadiusM;
        const stretch = sideBeyondGap(vehicle, radiusM, gapM, 'tail');
        if (stretch) {
          expect(swingOfPointM(vehicle, radiusM, stretch.fromM)).toBeCloseTo(gapM, 9);
          expect(stretch.toM).toBe(vehicle.rearOverhangM);
        } else
          expect(swingOfPointM(vehicle, radiusM, vehicle.rearOverhangM)).toBeLessThanOrEqual(gapM + 1e-9);
      }),
    );
  });
});

describe('a parked car alongside that ends beside the tail', () => {
  it('lets the wheel be turned at once when it ends behind the bumper', () => {
    expect(straightFirstM(swingVehicle(), 4.985, 0.3, -2.43, 'tail')).toBe(0);
  });

  it('lets it be turned at once when the gap is as wide as the swing', () => {
    expect(straightFirstM(swingVehicle(), 4.985, 0.46, 1, 'tail')).toBe(0);
  });

  it('is passed after the straight way worked out, and hit 5 cm short of it', () => {
    fc.assert(
      fc.property(
        vehicles,
        fc.double({ min: 0.02, max: 0.4, noNaN: true }),
        fc.double({ min: -2, max: 4, noNaN: true }),
        (vehicle, gapM, endM) => {
          const straightM = straightFirstM(vehicle, vehicle.lock.rearAxleRadiusM, gapM, endM, 'tail');
          const out = (byM: number) => outOnRightM(vehicle, driven(vehicle, lockRad(vehicle), byM), endM);
          expect(out(straightM)).toBeLessThanOrEqual(gapM + 0.001);
          if (straightM > 0.05) expect(out(straightM - 0.05)).toBeGreaterThan(gapM);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('reversing, is passed by the nose after the straight way worked out, and hit 5 cm short of it', () => {
    fc.assert(
      fc.property(
        vehicles,
        fc.double({ min: 0.1, max: 0.8, noNaN: true }),
        fc.double({ min: -4, max: 2, noNaN: true }),
        (vehicle, gapM, endM) => {
          const straightM = straightFirstM(vehicle, vehicle.lock.rearAxleRadiusM, gapM, endM, 'nose');
          const out = (byM: number) => {
            const motion = driven(vehicle, lockRad(vehicle), byM, true);
            let mostM = 0;
            for (let index = 0; index < motion.xM.length; index++)
              for (let share = -1; share <= 1; share += 0.05) {
                const nose = vehicle.wheelbaseM + vehicle.frontOverhangM;
                const point = onGround(poseAt(motion, index), nose, (share * vehicle.widthM) / 2);
                // what stands beside reaches back to `endM` in the way of travel, which is backwards
                if (-point.xM <= endM) mostM = Math.max(mostM, -point.yM - vehicle.widthM / 2);
              }
            return mostM;
          };
          expect(out(straightM)).toBeLessThanOrEqual(gapM + 0.001);
          if (straightM > 0.05) expect(out(straightM - 0.05)).toBeGreaterThan(gapM);
        },
      ),
      { numRuns: 40 },
    );
  });
});
