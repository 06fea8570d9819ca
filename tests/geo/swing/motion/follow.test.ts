import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcFrom } from '../../../../geo/swing/motion/articulation.ts';
import { follow } from '../../../../geo/swing/motion/follow.ts';
import { arc, CORNER, driven, line } from '../../../support/swing-path.ts';
import { swingVehicle } from '../../../support/swing-vehicle.ts';

describe('a point kept on a path', () => {
  it('lies on it at every sample, wherever ahead of the rear axle it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: -1.2, max: 1.2, noNaN: true }),
        (aheadM, leftM) => {
          const motion = driven(swingVehicle(), { pieces: [line(10), arc(20, 90)] }, { aheadM, leftM });
          for (let i = 0; i < motion.xM.length; i += 17) {
            const [x, y, h, s] = [motion.xM, motion.yM, motion.headingRad, motion.travelM].map(
              (of) => of[i] ?? 0,
            ) as [number, number, number, number];
            const px = x + aheadM * Math.cos(h) - leftM * Math.sin(h);
            const py = y + aheadM * Math.sin(h) + leftM * Math.cos(h);
            const wanted =
              s <= 10 ? [s, 0] : [10 + 20 * Math.sin((s - 10) / 20), 20 - 20 * Math.cos((s - 10) / 20)];
            expect(Math.hypot(px - (wanted[0] ?? 0), py - (wanted[1] ?? 0))).toBeLessThan(2e-6);
          }
        },
      ),
      { numRuns: 50 },
    );
  });

  it('rolls the rear axle without slipping sideways', () => {
    const motion = driven(swingVehicle(), CORNER, 'front axle', { stepM: 0.01 });
    for (let i = 1; i < motion.xM.length; i++) {
      const [dx, dy] = [
        (motion.xM[i] ?? 0) - (motion.xM[i - 1] ?? 0),
        (motion.yM[i] ?? 0) - (motion.yM[i - 1] ?? 0),
      ];
      const h = ((motion.headingRad[i] ?? 0) + (motion.headingRad[i - 1] ?? 0)) / 2;
      expect(Math.abs(dy * Math.cos(h) - dx * Math.sin(h))).toBeLessThan(1e-7);
    }
  });

  it('solves the equation of the angle on an arc, against a plain integration', () => {
    let alpha = 0.3;
    const steps = 20_000;
    const ds = 6 / steps;
    const slope = (a: number): number => 1 / 7 - Math.sin(a) / 4.035;
    for (let i = 0; i < steps; i++) alpha += ds * slope(alpha + (ds / 2) * slope(alpha));
    expect(arcFrom(4.035, 0.3, 1 / 7, 6)).toBeCloseTo(alpha, 8);
  });

  it.each([
    ['front axle', 4.035, 'Segment 2'],
    ['front axle', 3, 'let the rear axle follow'],
    [{ aheadM: 4.985, leftM: -1.16 }, 4.9, 'Segment 2'],
    [{ aheadM: 0, leftM: 1.16 }, 1.1, 'Segment 2'],
  ] as const)('%j on an arc of %d m is refused', (guide, radiusM, says) => {
    const motion = follow(swingVehicle(), { pieces: [line(5), arc(radiusM, 90)] }, guide);
    expect(motion.ok ? 'driven' : motion.error.message).toContain(says);
  });

  it('is refused where reversing by the front axle would fold the wheels square', () => {
    const motion = follow(swingVehicle(), CORNER, 'front axle', { reverse: true });
    expect(motion.ok ? 'driven' : motion.error.message).toContain('square');
  });
});
