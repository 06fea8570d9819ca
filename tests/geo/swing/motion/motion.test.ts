import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../../geo/given.ts';
import { fullLockSwingM, lockRad } from '../../../../geo/swing/circle.ts';
import { measureEnds } from '../../../../geo/swing/measure/measure-ends.ts';
import { follow } from '../../../../geo/swing/motion/follow.ts';
import type { GuidePath, PathPiece } from '../../../../geo/swing/motion/guide-path.ts';
import { poseAt } from '../../../../geo/swing/motion/motion.ts';
import { steer } from '../../../../geo/swing/motion/steer.ts';
import type { SwingVehicle } from '../../../../geo/swing/swing-vehicle.ts';
import { swingVehicle } from '../../../support/swing-vehicle.ts';

const sizes = {
  wheelbaseM: fc.double({ min: 2.4, max: 6.5, noNaN: true }),
  frontOverhangM: fc.double({ min: 0.3, max: 2, noNaN: true }),
  rearOverhangM: fc.double({ min: 0.3, max: 4, noNaN: true }),
  widthM: fc.double({ min: 1.6, max: 2.6, noNaN: true }),
  lockM: fc.double({ min: 3, max: 10, noNaN: true }),
  rack: fc.option(
    fc.record({
      lengthM: fc.double({ min: 0.2, max: 1.5, noNaN: true }),
      widthM: fc.double({ min: 0.8, max: 2.6, noNaN: true }),
    }),
    { nil: undefined },
  ),
};
const vehicles = fc.record(sizes).map(({ rack, ...sizes }) => swingVehicle({ ...sizes, ...given({ rack }) }));

/** The wheel turned anyhow, at most to full lock, over up to 40 m: each a share of full lock reached after some metres. */
const programs = fc.array(
  fc.record({
    rollM: fc.integer({ min: 0, max: 80 }).map((tenths) => tenths / 10),
    share: fc.integer({ min: -100, max: 100 }).map((percent) => percent / 100),
  }),
  { minLength: 1, maxLength: 5 },
);

function steered(vehicle: SwingVehicle, turns: readonly { rollM: number; share: number }[], stepM = 0.25) {
  let travelM = 0;
  const points = [{ travelM: 0, steerRad: 0 }];
  for (const { rollM, share } of turns) {
    travelM += rollM;
    points.push({ travelM, steerRad: share * lockRad(vehicle) });
  }
  points.push({ travelM: travelM + 2, steerRad: points.at(-1)?.steerRad ?? 0 });
  return steer(vehicle, { points, stepM });
}

const pieces = fc.array(
  fc.oneof(
    fc.record({
      kind: fc.constant('line' as const),
      lengthM: fc.double({ min: 0.5, max: 30, noNaN: true }),
    }),
    fc.record({
      kind: fc.constant('arc' as const),
      radiusM: fc.double({ min: 7, max: 40, noNaN: true }),
      turnRad: fc.double({ min: 0.05, max: 2.5, noNaN: true }).chain((turn) => fc.constantFrom(turn, -turn)),
    }),
  ),
  { minLength: 1, maxLength: 5 },
);

function mirrored(path: GuidePath): GuidePath {
  return {
    pieces: path.pieces.map(
      (piece): PathPiece => (piece.kind === 'arc' ? { ...piece, turnRad: -piece.turnRad } : piece),
    ),
  };
}

describe('the tail of any vehicle driven forward from straight', () => {
  it('never swings out farther than at full lock, over 10,000 vehicles and ways of turning the wheel', () => {
    let swung = 0;
    fc.assert(
      fc.property(vehicles, programs, (vehicle, turns) => {
        const { swingM } = measureEnds(vehicle, steered(vehicle, turns)).tail;
        if (swingM > 0.01) swung++;
        expect(swingM).toBeLessThanOrEqual(fullLockSwingM(vehicle) + 1e-9);
      }),
      { numRuns: 10_000 },
    );
    // not all of them stood still
    expect(swung).toBeGreaterThan(5_000);
  });

  it('keeps within full lock on followed paths too, as long as the path asks for no more', () => {
    fc.assert(
      fc.property(vehicles, pieces, fc.constantFrom('front axle', 'rear axle'), (vehicle, path, guide) => {
        const driven = follow(vehicle, { pieces: path }, guide as 'front axle' | 'rear axle', { stepM: 0.2 });
        fc.pre(driven.ok);
        if (!driven.ok) return;
        const ends = measureEnds(vehicle, driven.value);
        fc.pre(ends.rearAxleRadiusMinM >= vehicle.lock.rearAxleRadiusM);
        expect(ends.tail.swingM).toBeLessThanOrEqual(fullLockSwingM(vehicle) + 1e-9);
      }),
      { numRuns: 1_000 },
    );
  });

  it('is never held in by a rack', () => {
    fc.assert(
      fc.property(vehicles, programs, ({ rack, ...bare }, turns) => {
        fc.pre(rack !== undefined);
        const without = measureEnds(bare, steered(bare, turns)).tail.swingM;
        const withIt = measureEnds({ ...bare, ...given({ rack }) }, steered(bare, turns)).tail.swingM;
        expect(withIt).toBeGreaterThanOrEqual(without - 1e-12);
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('a drive forward and then the same way back', () => {
  it('ends where it began, steered by hand', () => {
    fc.assert(
      fc.property(vehicles, programs, (vehicle, turns) => {
        const there = steered(vehicle, turns, 0.05);
        const last = there.travelM.length - 1;
        const end = there.travelM[last] ?? 0;
        // the wheel as it stood at each place, met from the other side
        const points = Array.from(there.travelM, (travelM, index) => ({
          travelM: end - travelM,
          steerRad: there.steerRad[index] ?? 0,
        })).reverse();
        const back = steer(vehicle, { points, reverse: true, start: poseAt(there, last) });
        const stands = poseAt(back, back.travelM.length - 1);
        expect(Math.hypot(stands.xM, stands.yM)).toBeLessThan(0.001);
        expect(Math.abs(stands.headingRad)).toBeLessThan(0.001);
      }),
      { numRuns: 500 },
    );
  });
});

describe('left and right', () => {
  it('mirror each other', () => {
    fc.assert(
      fc.property(vehicles, pieces, (vehicle, path) => {
        const left = follow(vehicle, { pieces: path }, 'front axle');
        const right = follow(vehicle, mirrored({ pieces: path }), 'front axle');
        expect(left.ok).toBe(right.ok);
        if (!left.ok || !right.ok) return;
        const a = measureEnds(vehicle, left.value);
        const b = measureEnds(vehicle, right.value);
        expect(a.tail.swingM).toBeCloseTo(b.tail.swingM, 9);
        const last = left.value.travelM.length - 1;
        expect(left.value.yM[last]).toBeCloseTo(-(right.value.yM[last] ?? 0), 9);
      }),
      { numRuns: 300 },
    );
  });
});

describe('an axle kept on a path', () => {
  it('is on it at every sample: the rear axle’s own arc, to a nanometre', () => {
    const driven = follow(
      swingVehicle(),
      { pieces: [{ kind: 'arc', radiusM: 8, turnRad: Math.PI / 2 }] },
      'rear axle',
    );
    expect(driven.ok).toBe(true);
    if (!driven.ok) return;
    for (let index = 0; index < driven.value.xM.length; index++) {
      const { xM, yM } = poseAt(driven.value, index);
      expect(Math.hypot(xM, yM - 8)).toBeCloseTo(8, 9);
    }
  });

  it('turns by sin α over the wheelbase for every metre, as a fine integration finds too', () => {
    const vehicle = swingVehicle();
    const path: PathPiece[] = [
      { kind: 'line', lengthM: 3 },
      { kind: 'arc', radiusM: 8, turnRad: 1.2 },
      { kind: 'arc', radiusM: 12, turnRad: -0.9 },
    ];
    const driven = follow(vehicle, { pieces: path }, 'front axle');
    expect(driven.ok).toBe(true);
    if (!driven.ok) return;
    // Euler's midpoint rule in steps of half a millimetre
    let theta = 0;
    let psi = 0;
    for (const piece of path) {
      const lengthM = piece.kind === 'line' ? piece.lengthM : piece.radiusM * Math.abs(piece.turnRad);
      const curvature = piece.kind === 'line' ? 0 : Math.sign(piece.turnRad) / piece.radiusM;
      const steps = Math.round(lengthM / 0.0005);
      const ds = lengthM / steps;
      for (let step = 0; step < steps; step++) {
        const half = theta + (Math.sin(psi - theta) / vehicle.wheelbaseM) * (ds / 2);
        theta += (Math.sin(psi + curvature * (ds / 2) - half) / vehicle.wheelbaseM) * ds;
        psi += curvature * ds;
      }
    }
    expect(driven.value.headingRad.at(-1)).toBeCloseTo(theta, 6);
  });

  it('cannot be the front axle on an arc of the wheelbase or less', () => {
    const driven = follow(
      swingVehicle(),
      { pieces: [{ kind: 'arc', radiusM: 4.035, turnRad: 1 }] },
      'front axle',
    );
    expect(driven.ok).toBe(false);
    if (!driven.ok) expect(driven.error.message).toContain('Segment 1');
  });
});
