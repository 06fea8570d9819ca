import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../../geo/given.ts';
import { fullLockSwingM } from '../../../../geo/swing/circle.ts';
import { measureEnds } from '../../../../geo/swing/measure/measure-ends.ts';
import { measureSwing } from '../../../../geo/swing/measure/measure-swing.ts';
import type { Guide, GuidePath } from '../../../../geo/swing/motion/guide-path.ts';
import { steer } from '../../../../geo/swing/motion/steer.ts';
import { noseSwingM } from '../../../support/steady-circle.ts';
import { arc, CORNER, driven, line } from '../../../support/swing-path.ts';
import { swingVehicle } from '../../../support/swing-vehicle.ts';
import { turnToLock } from '../../../support/turn-to-lock.ts';

/** Vehicles of any shape a card allows within reason, and with any lock from 25° to 45°. */
const anyVehicle = fc
  .record({
    wheelbaseM: fc.double({ min: 2, max: 7, noNaN: true }),
    frontOverhangM: fc.double({ min: 0.3, max: 2.5, noNaN: true }),
    overhangShare: fc.double({ min: 0.05, max: 0.8, noNaN: true }),
    widthM: fc.double({ min: 1.5, max: 2.6, noNaN: true }),
    lockDeg: fc.double({ min: 25, max: 45, noNaN: true }),
    rack: fc.option(
      fc.record({
        lengthM: fc.double({ min: 0.1, max: 1.5, noNaN: true }),
        widthM: fc.double({ min: 0.5, max: 2.6, noNaN: true }),
      }),
      { nil: undefined },
    ),
  })
  .map(({ overhangShare, lockDeg, rack, ...sizes }) =>
    swingVehicle({
      ...sizes,
      rearOverhangM: overhangShare * sizes.wheelbaseM,
      lockM: sizes.wheelbaseM / Math.tan((lockDeg * Math.PI) / 180),
      ...given({ rack }),
    }),
  );

/** Up to three bends, each after a straight. */
const anyBends = fc.array(
  fc.record({
    straightM: fc.double({ min: 0.1, max: 15, noNaN: true }),
    wider: fc.double({ min: 1, max: 6, noNaN: true }),
    turnDeg: fc.double({ min: 2, max: 200, noNaN: true }),
    left: fc.boolean(),
  }),
  { minLength: 1, maxLength: 3 },
);
function bendsOf(
  bends: readonly { straightM: number; wider: number; turnDeg: number; left: boolean }[],
  leastM: number,
): GuidePath {
  return {
    pieces: bends.flatMap(({ straightM, wider, turnDeg, left }) => [
      line(straightM),
      arc(leastM * wider, left ? turnDeg : -turnDeg),
    ]),
  };
}
const COARSE = { stepM: 0.25 };

describe('the full-lock bound', () => {
  it('is reached with the wheel hard over from the start, and nearly so when the wheel is turned at walking pace', () => {
    const vehicle = swingVehicle();
    const swing = (centreToLockS: number) =>
      measureEnds(
        vehicle,
        steer(vehicle, { points: turnToLock(vehicle, { speedMS: 1.4, centreToLockS, travelM: 12 }) }),
      ).tail.swingM;
    expect(swing(0)).toBeCloseTo(fullLockSwingM(vehicle), 6);
    expect(swing(1)).toBeCloseTo(0.443, 3);
    expect(swing(4)).toBeLessThan(swing(2));
  });

  it('is kept by a wheel that is told to go beyond it', () => {
    const vehicle = swingVehicle();
    const points = [
      { travelM: 0, steerRad: 1.5 },
      { travelM: 10, steerRad: 1.5 },
    ];
    expect(measureEnds(vehicle, steer(vehicle, { points })).rearAxleRadiusMinM).toBeCloseTo(4.985, 6);
  });
});

describe('reversing', () => {
  it('the rear axle led back along its own path stands as it stood', () => {
    const vehicle = swingVehicle();
    const forth = driven(vehicle, CORNER, 'rear axle');
    const end = forth.xM.length - 1;
    const start = {
      xM: forth.xM[end] ?? 0,
      yM: forth.yM[end] ?? 0,
      headingRad: (forth.headingRad[end] ?? 0) + Math.PI,
    };
    const back = driven(vehicle, { pieces: [line(40), arc(8, -90), line(30)] }, 'rear axle', {
      start,
      reverse: true,
    });
    const last = back.xM.length - 1;
    expect(Math.hypot(back.xM[last] ?? 1, back.yM[last] ?? 1)).toBeLessThan(1e-9);
    expect(Math.cos(back.headingRad[last] ?? 1)).toBeCloseTo(1, 9);
    // the wheel lies where it lay on the way out
    expect(Math.max(...back.steerRad)).toBeCloseTo(Math.max(...forth.steerRad), 9);
    expect(Math.min(...back.steerRad)).toBeCloseTo(0, 9);
  });

  it('reversing at full lock from straight swings the nose by its closed form, the tail not at all', () => {
    const vehicle = swingVehicle();
    const points = turnToLock(vehicle, { speedMS: 1, centreToLockS: 0, travelM: 12 });
    const { nose, tail } = measureEnds(vehicle, steer(vehicle, { points, reverse: true }));
    expect(nose.swingM).toBeCloseTo(noseSwingM(vehicle, 4.985), 4);
    expect([nose.side, tail.swingM]).toEqual(['right', 0]);
  });
});

describe('what is measured', () => {
  it('is the same for a right turn as for its mirror, with the sides changed', () => {
    fc.assert(
      fc.property(
        anyVehicle,
        anyBends,
        fc.constantFrom<Guide>('front axle', 'rear axle'),
        (vehicle, bends, guide) => {
          const read = (mirrored: boolean) => {
            const path = bendsOf(
              bends.map((bend) => (mirrored ? { ...bend, left: !bend.left } : bend)),
              1.4 * vehicle.wheelbaseM,
            );
            return measureSwing(vehicle, driven(vehicle, path, guide, COARSE), path, guide);
          };
          const [one, other] = [read(false), read(true)];
          expect(other.tail.swingM).toBeCloseTo(one.tail.swingM, 9);
          expect(other.tail.side).not.toBe(one.tail.side);
          expect(other.cutInM).toBeCloseTo(one.cutInM, 9);
          expect(other.sweptWidthM).toBeCloseTo(one.sweptWidthM, 6);
          expect(other.frontCornerOut.leftM).toBeCloseTo(one.frontCornerOut.rightM, 9);
          expect(other.rearCornerOut.rightM).toBeCloseTo(one.rearCornerOut.leftM, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('never shrinks by a rack, wide or narrow', () => {
    fc.assert(
      fc.property(anyVehicle, anyBends, (vehicle, bends) => {
        const { rack: _, ...bare } = vehicle;
        const path = bendsOf(bends, 1.4 * vehicle.wheelbaseM);
        const motion = driven(vehicle, path, 'rear axle', COARSE);
        const [withRack, without] = [vehicle, bare].map((one) =>
          measureSwing(one, motion, path, 'rear axle'),
        );
        expect(withRack?.tail.swingM).toBeGreaterThanOrEqual(without?.tail.swingM ?? 1);
        expect(withRack?.sweptWidthM).toBeGreaterThanOrEqual((without?.sweptWidthM ?? 1) - 1e-12);
      }),
      { numRuns: 100 },
    );
  });

  it('does not hang on the place and direction of the path', () => {
    const vehicle = swingVehicle();
    const read = (start?: { xM: number; yM: number; headingRad: number }) =>
      measureSwing(
        vehicle,
        driven(vehicle, CORNER, 'front axle', start ? { start } : {}),
        CORNER,
        'front axle',
        start,
      );
    const [here, there] = [read(), read({ xM: 500, yM: -200, headingRad: 2.5 })];
    expect(there.sweptWidthM).toBeCloseTo(here.sweptWidthM, 6);
    expect(there.tail.swingM).toBeCloseTo(here.tail.swingM, 9);
    expect(there.cutInM).toBeCloseTo(here.cutInM, 9);
  });

  it('hardly hangs on the step: 5 cm against 5 mm', () => {
    const vehicle = swingVehicle();
    const read = (stepM: number) =>
      measureSwing(vehicle, driven(vehicle, CORNER, 'front axle', { stepM }), CORNER, 'front axle');
    const [usual, fine] = [read(0.05), read(0.005)];
    expect(usual.tail.swingM).toBeCloseTo(fine.tail.swingM, 5);
    expect(usual.cutInM).toBeCloseTo(fine.cutInM, 4);
    expect(usual.sweptWidthM).toBeCloseTo(fine.sweptWidthM, 3);
  });

  it('tells a second, tighter turn to the same side after a straight, which the first turn would hide', () => {
    const vehicle = swingVehicle();
    const path = { pieces: [line(20), arc(30, 60), line(30), arc(6, 60), line(20)] };
    const { tail, tailLater, steerReversals } = measureSwing(
      vehicle,
      driven(vehicle, path, 'front axle'),
      path,
      'front axle',
    );
    expect(tail.swingM).toBeCloseTo(0.047, 3);
    expect(tailLater?.swingM).toBeGreaterThan(0.2);
    expect(steerReversals).toBe(0);
  });

  it('is nothing on a straight', () => {
    const path = { pieces: [line(50)] };
    const read = measureSwing(swingVehicle(), driven(swingVehicle(), path, 'front axle'), path, 'front axle');
    expect([read.tail.swingM, read.cutInM, read.offTrackingM, read.rearAxleRadiusMinM]).toEqual([
      0,
      0,
      0,
      Number.POSITIVE_INFINITY,
    ]);
    expect(read.sweptWidthM).toBeCloseTo(2.32, 9);
    expect(read.settleM).toBeUndefined();
  });

  it('sweeps the ring of a steady circle, however often it goes round', () => {
    const vehicle = swingVehicle();
    const path = { pieces: [arc(12, 1000)] };
    const { sweptWidthM } = measureSwing(vehicle, driven(vehicle, path, 'rear axle'), path, 'rear axle');
    expect(sweptWidthM).toBeCloseTo(Math.hypot(13.16, 4.985) - 10.84, 3);
  });
});
