import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../geo/given.ts';
import { lockRad, tailSwingM } from '../../../geo/swing/circle.ts';
import { type Motion, onGround, poseAt } from '../../../geo/swing/motion/motion.ts';
import { steer } from '../../../geo/swing/motion/steer.ts';
import { tailsOf } from '../../../geo/swing/outline.ts';
import { steeringForGap, straightFirstM } from '../../../geo/swing/pass-gap.ts';
import type { SwingVehicle } from '../../../geo/swing/swing-vehicle.ts';
import { noseSwingM } from '../../support/steady-circle.ts';
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

/** Straight on, then the wheel held left until a third of a circle is turned, or the ends have long come back. */
function driven(vehicle: SwingVehicle, steerRad: number, straightM: number, reverse = false): Motion {
  const radiusM = vehicle.wheelbaseM / Math.tan(steerRad);
  return steer(vehicle, {
    reverse,
    stepM: 0.01,
    points: [
      { travelM: 0, steerRad: 0 },
      { travelM: straightM, steerRad: 0 },
      { travelM: straightM, steerRad },
      { travelM: straightM + Math.min(2 * radiusM, 15), steerRad },
    ],
  });
}

/** How far the right side's corners come out over the line of the body's right side, where they stand at x up to `uptoM`. */
function outOnRightM(vehicle: SwingVehicle, motion: Motion, uptoM = Number.POSITIVE_INFINITY): number {
  let mostM = 0;
  const tails = tailsOf(vehicle);
  for (let index = 0; index < motion.xM.length; index++)
    for (const { aheadM, halfWidthM } of tails) {
      // along the edge behind the corner too
      for (let share = -1; share <= 1; share += 0.05) {
        const point = onGround(poseAt(motion, index), aheadM, share * halfWidthM);
        if (point.xM <= uptoM) mostM = Math.max(mostM, -point.yM - vehicle.widthM / 2);
      }
    }
  return mostM;
}

describe('a gap beside the tail', () => {
  it('of 46 cm lets the 7.4 m coach-built turn at any lock, one of 45 cm does not', () => {
    expect(steeringForGap(swingVehicle(), { gapM: 0.46, reversing: false }).lockShare).toBe(1);
    expect(steeringForGap(swingVehicle(), { gapM: 0.45, reversing: false }).lockShare).toBeLessThan(1);
  });

  it('of nothing lets the wheel stay straight only', () => {
    expect(steeringForGap(swingVehicle(), { gapM: 0, reversing: false })).toMatchObject({
      radiusM: Number.POSITIVE_INFINITY,
      steerRad: 0,
    });
  });

  it('is what the steering that it allows needs, to a micrometre', () => {
    fc.assert(
      fc.property(vehicles, fc.double({ min: 0.01, max: 1, noNaN: true }), (vehicle, gapM) => {
        for (const reversing of [false, true]) {
          const { radiusM, lockShare } = steeringForGap(vehicle, { gapM, reversing });
          const neededM = reversing ? noseSwingM(vehicle, radiusM) : tailSwingM(vehicle, radiusM);
          if (lockShare === 1) expect(neededM).toBeLessThanOrEqual(gapM + 1e-6);
          else expect(neededM).toBeCloseTo(gapM, 6);
        }
      }),
    );
  });

  it('is kept when that steering is driven, and passed with a tenth more of the wheel', () => {
    fc.assert(
      fc.property(vehicles, fc.double({ min: 0.02, max: 0.6, noNaN: true }), (vehicle, gapM) => {
        const { steerRad, lockShare } = steeringForGap(vehicle, { gapM, reversing: false });
        expect(outOnRightM(vehicle, driven(vehicle, steerRad, 0))).toBeLessThanOrEqual(gapM + 1e-6);
        if (lockShare < 0.9)
          expect(outOnRightM(vehicle, driven(vehicle, 1.1 * steerRad, 0))).toBeGreaterThan(gapM);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a parked car alongside that ends beside the tail', () => {
  it('lets the wheel be turned at once when it ends behind the bumper', () => {
    expect(straightFirstM(swingVehicle(), 4.985, { gapM: 0.3, reversing: false }, -2.43)).toBe(0);
  });

  it('lets it be turned at once when the gap is as wide as the swing', () => {
    expect(straightFirstM(swingVehicle(), 4.985, { gapM: 0.46, reversing: false }, 1)).toBe(0);
  });

  it('is passed after the straight way worked out, and hit 5 cm short of it', () => {
    fc.assert(
      fc.property(
        vehicles,
        fc.double({ min: 0.02, max: 0.4, noNaN: true }),
        fc.double({ min: -2, max: 4, noNaN: true }),
        (vehicle, gapM, endM) => {
          const straightM = straightFirstM(
            vehicle,
            vehicle.lock.rearAxleRadiusM,
            { gapM, reversing: false },
            endM,
          );
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
          const straightM = straightFirstM(
            vehicle,
            vehicle.lock.rearAxleRadiusM,
            { gapM, reversing: true },
            endM,
          );
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
