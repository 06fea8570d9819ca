import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../../geo/given.ts';
import type { CornerRoom } from '../../../../geo/swing/corner/corner-room.ts';
import { fitCorner, largestRadiusM } from '../../../../geo/swing/corner/fit-corner.ts';
import { bendWidthNeededM, fitBend, fitCircle } from '../../../../geo/swing/corner/fit-ring.ts';
import { planRange, swingFigures } from '../../../../geo/swing/corner/swing-figures.ts';
import { onGround, type Pose } from '../../../../geo/swing/motion/motion.ts';
import type { SwingVehicle } from '../../../../geo/swing/swing-vehicle.ts';
import { RAD, swingVehicle } from '../../../support/swing-vehicle.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const corners: fc.Arbitrary<CornerRoom> = fc
  .record({
    wheelbaseM: between(2.5, 6),
    frontOverhangM: between(0.5, 1.5),
    rearOverhangM: between(0.8, 3.5),
    widthM: between(1.8, 2.55),
    lockM: between(3.5, 7),
    rack: fc.option(fc.record({ lengthM: between(0.3, 1.2), widthM: between(1, 1.8) }), { nil: undefined }),
    turnDeg: between(30, 150),
    entryM: between(2.8, 8),
    exitM: between(2.8, 8),
    kerbRadiusM: between(0.5, 10),
  })
  .map(({ rack, turnDeg, entryM, exitM, kerbRadiusM, ...sizes }) => ({
    vehicle: swingVehicle({ ...sizes, ...given({ rack }) }),
    turnRad: turnDeg * RAD,
    entryM,
    exitM,
    kerbRadiusM,
    clearanceM: 0.15,
  }));

/** Straight along x, the rear axle on an arc to the left round the origin, straight out. */
function posesRound(radiusM: number, turnRad: number): Pose[] {
  const poses: Pose[] = [];
  for (let x = -14; x < 0; x += 0.5) poses.push({ xM: x, yM: -radiusM, headingRad: 0 });
  const steps = Math.ceil(turnRad / (0.5 * RAD));
  for (let i = 0; i <= steps; i++) {
    const headingRad = (i / steps) * turnRad;
    poses.push({ xM: radiusM * Math.sin(headingRad), yM: -radiusM * Math.cos(headingRad), headingRad });
  }
  for (let s = 0.5; s < 14; s += 0.5)
    poses.push({
      xM: radiusM * Math.sin(turnRad) + s * Math.cos(turnRad),
      yM: -radiusM * Math.cos(turnRad) + s * Math.sin(turnRad),
      headingRad: turnRad,
    });
  return poses;
}

/**
 * Least distance from the swept body to the land inside the corner, when the road is laid so that its outer limits are
 * just kept: laid any farther out, the land would only come closer. Everything is measured on the poses.
 */
function spareAtKerbM(corner: CornerRoom, radiusM: number): number {
  const { vehicle, turnRad, kerbRadiusM, clearanceM } = corner;
  const poses = posesRound(radiusM, turnRad);
  const [outX, outY] = [Math.sin(turnRad), -Math.cos(turnRad)];
  let entryReachM = Number.NEGATIVE_INFINITY;
  let exitReachM = Number.NEGATIVE_INFINITY;
  for (const pose of poses)
    for (const [aheadM, leftM] of outline(vehicle)) {
      const { xM, yM } = onGround(pose, aheadM, leftM);
      entryReachM = Math.max(entryReachM, -yM);
      exitReachM = Math.max(exitReachM, xM * outX + yM * outY);
    }
  // distances of the two inner kerb lines from the origin, outward positive; the corner where they meet at K's rounding
  const alongEntry = entryReachM + clearanceM - corner.entryM - kerbRadiusM;
  const alongExit = exitReachM + clearanceM - corner.exitM - kerbRadiusM;
  const ky = -alongEntry;
  const kx = (alongExit - ky * outY) / outX;
  let leastM = Number.POSITIVE_INFINITY;
  const innerM = vehicle.widthM / 2;
  for (const pose of poses)
    for (let aheadM = -vehicle.rearOverhangM; aheadM <= vehicle.wheelbaseM; aheadM += 0.05) {
      const { xM, yM } = onGround(pose, aheadM, innerM);
      leastM = Math.min(leastM, toWedgeM(xM - kx, yM - ky, outX, outY) - kerbRadiusM);
    }
  return leastM - clearanceM;
}

/** Distance to the wedge on the inside of both lines through the origin, square to (0, −1) and (outX, outY); 0 within. */
function toWedgeM(x: number, y: number, outX: number, outY: number): number {
  const overEntry = -y;
  const overExit = x * outX + y * outY;
  if (overEntry <= 0 && overExit <= 0) return 0;
  const cos = -outY;
  // beside one edge, beside the other, else round the tip
  if (overEntry > 0 && overExit - overEntry * cos <= 0) return overEntry;
  if (overExit > 0 && overEntry - overExit * cos <= 0) return overExit;
  return Math.hypot(x, y);
}

function outline(vehicle: SwingVehicle): (readonly [number, number])[] {
  const { wheelbaseM, frontOverhangM, rearOverhangM, widthM, rack } = vehicle;
  const points: (readonly [number, number])[] = [
    [wheelbaseM + frontOverhangM, widthM / 2],
    [wheelbaseM + frontOverhangM, -widthM / 2],
    [-rearOverhangM, widthM / 2],
    [-rearOverhangM, -widthM / 2],
  ];
  if (rack) {
    points.push([-rearOverhangM - rack.lengthM, rack.widthM / 2]);
    points.push([-rearOverhangM - rack.lengthM, -rack.widthM / 2]);
  }
  return points;
}

describe('the largest radius round a corner', () => {
  it('keeps the whole body inside the road, and no larger one does', () => {
    let fitted = 0;
    fc.assert(
      fc.property(corners, (corner) => {
        const leastM = corner.vehicle.lock.rearAxleRadiusM;
        const radiusM = largestRadiusM(corner);
        if (radiusM !== undefined) {
          fitted++;
          expect(radiusM).toBeGreaterThanOrEqual(leastM);
          expect(spareAtKerbM(corner, radiusM)).toBeGreaterThan(-0.002);
        }
        const larger =
          radiusM === undefined
            ? [leastM, leastM + 0.1, leastM + 0.5, leastM + 1.5, 12, 20, 40]
            : [radiusM + 0.02, radiusM + 0.3, radiusM + 1.5, radiusM + 6].filter((m) => m < 40);
        for (const m of larger) expect(spareAtKerbM(corner, m)).toBeLessThan(0.001);
      }),
      { numRuns: 60, seed: 5, endOnFailure: true },
    );
    expect(fitted).toBeGreaterThan(15);
  });

  it('never shrinks when a road gets wider or the kerb rounder', () => {
    fc.assert(
      fc.property(corners, between(0, 1), (corner, moreM) => {
        const radiusM = largestRadiusM(corner);
        fc.pre(radiusM !== undefined);
        for (const roomier of [
          { ...corner, entryM: corner.entryM + moreM },
          { ...corner, exitM: corner.exitM + moreM },
          { ...corner, kerbRadiusM: corner.kerbRadiusM + moreM },
        ])
          expect(largestRadiusM(roomier)).toBeGreaterThanOrEqual((radiusM ?? 0) - 0.0011);
      }),
      { numRuns: 200 },
    );
  });
});

const uk = {
  vehicle: swingVehicle(),
  turnRad: 90 * RAD,
  entry: { laneM: 3.25, roadM: 6.5 },
  exit: { laneM: 3.25, roadM: 6.5 },
  kerbRadiusM: 6,
  clearanceM: 0.15,
};

describe('the room a corner takes', () => {
  it('is the least that will do: its lane, the other lane on the exit, the whole road, backing up once', () => {
    const at = (laneM: number, kerbRadiusM: number, roadM = 2 * laneM) =>
      fitCorner({ ...uk, entry: { laneM, roadM }, exit: { laneM, roadM }, kerbRadiusM }).room;
    expect(at(3.65, 10)).toBe('own lane');
    expect(at(3.25, 6)).toBe('other lane on the exit');
    expect(at(2.75, 6)).toBe('whole road');
    expect(at(2.75, 1, 4)).toBe('back up');
  });

  it('is backing up once, at full lock, on a road narrower than the vehicle or of no width at all', () => {
    for (const laneM of [2, 0, Number.NaN])
      expect(fitCorner({ ...uk, entry: { laneM, roadM: laneM } })).toEqual({
        room: 'back up',
        rearAxleRadiusM: 4.985,
      });
  });

  it('is found for any turn between nothing and half round', () => {
    for (const deg of [0, 0.01, 1, 10, 170, 179.9, 180, 270])
      expect(fitCorner({ ...uk, turnRad: deg * RAD }).rearAxleRadiusM).toBeGreaterThanOrEqual(4.985);
  });
});

describe('three figures for a turn', () => {
  it('go up from gentle to plan to worst', () => {
    fc.assert(
      fc.property(corners, between(0, 30), ({ vehicle, turnRad }, moreM) => {
        const figures = swingFigures(vehicle, vehicle.lock.rearAxleRadiusM + moreM, turnRad);
        expect(figures.gentleM).toBeLessThanOrEqual(figures.planM + 1e-9);
        expect(figures.planM).toBeLessThanOrEqual(figures.worstM + 1e-9);
        expect(figures.worstFromM).toBeLessThanOrEqual(figures.worstM);
        expect(figures.worstToM).toBeGreaterThanOrEqual(figures.worstM + 0.04);
      }),
    );
  });

  it('leave the worst as far open as an estimated lock does', () => {
    const lock = { rearAxleRadiusM: 5.35, lowM: 4.8, highM: 6.2, from: 'estimate' } as const;
    const { worstM, worstFromM, worstToM } = swingFigures({ ...swingVehicle(), lock }, 8, 90 * RAD);
    expect(worstFromM).toBeLessThan(worstM - 0.039);
    expect(worstToM).toBeGreaterThan(worstM + 0.039);
  });
});

describe('rings', () => {
  it('of the width a bend needs take the vehicle, a centimetre less does not', () => {
    fc.assert(
      fc.property(corners, between(6, 20), ({ vehicle }, centreRadiusM) => {
        const neededM = bendWidthNeededM(vehicle, centreRadiusM, 0.3);
        const room = (widthM: number) => fitBend({ vehicle, centreRadiusM, widthM, clearanceM: 0.3 }).room;
        expect(room(neededM + 0.001)).toBe('own lane');
        expect(room(neededM - 0.01)).toBe('back up');
      }),
    );
  });

  it('with two lanes take the vehicle in its own when that will do, else on the whole road', () => {
    const room = (laneM: number) =>
      fitBend({
        vehicle: swingVehicle(),
        centreRadiusM: 10,
        widthM: 2 * laneM,
        ownLane: { widthM: laneM, at: 'outside' },
        clearanceM: 0.3,
      }).room;
    expect(room(4)).toBe('own lane');
    expect(room(3)).toBe('whole road');
    expect(room(1.9)).toBe('back up');
  });

  it('shorter than the vehicle take backing up once', () => {
    expect(fitCircle({ vehicle: swingVehicle(), circleM: 6, clearanceM: 0.3 }).room).toBe('back up');
  });
});

describe('the range of the plan figure', () => {
  it('closes when nothing is in doubt, and opens on both sides with the widths and the kerb', () => {
    const sure = planRange(uk, { entry: { laneM: 0, roadM: 0 }, exit: { laneM: 0, roadM: 0 }, kerbOffM: 0 });
    expect(sure.toM).toBe(sure.fromM);
    const off = { laneM: 0.2, roadM: 0.4 };
    const open = planRange(uk, { entry: off, exit: off, kerbOffM: 3 });
    expect(open.fromM).toBeLessThan(sure.fromM);
    expect(open.toM).toBeGreaterThan(sure.toM);
  });

  it('of defaults alone, lanes of 3.25 to 3.65 m and kerbs of 1 to 6 m, is 0.18 to 0.41 m', () => {
    const lane = { laneM: 3.45, roadM: 6.9 };
    const off = { laneM: 0.2, roadM: 0.4 };
    const range = planRange(
      { ...uk, entry: lane, exit: lane, kerbRadiusM: 3.5 },
      { entry: off, exit: off, kerbOffM: 2.5 },
    );
    expect(range.fromM).toBeCloseTo(0.18, 2);
    expect(range.toM).toBeCloseTo(0.41, 2);
  });

  it('counts the easier sweep on more road and the tighter one that keeps to the room first found', () => {
    const off = { laneM: 0.5, roadM: 1 };
    const { fromM, toM } = planRange(uk, { entry: off, exit: off, kerbOffM: 0 });
    // narrower by half a metre only the whole road will do, wide enough for an easy sweep; wider, more of its lane's
    expect(fromM).toBeLessThan(0.2);
    expect(toM).toBeGreaterThan(0.2);
  });
});
