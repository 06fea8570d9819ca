import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lockRad } from '../../../../../geo/swing/circle.ts';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import {
  drivenByHand,
  type HandDrive,
  roll,
  steeredScene,
  takeWheel,
  turnWheel,
} from '../../../../../geo/swing/lessons/hand/hand-drive.ts';
import { contactOf } from '../../../../../geo/swing/lessons/read/contact.ts';
import { isTouching, levelByHand } from '../../../../../geo/swing/lessons/read/judge.ts';
import { readScene } from '../../../../../geo/swing/lessons/read/read-scene.ts';
import type { Scene } from '../../../../../geo/swing/lessons/scene/scene.ts';
import { DEFAULTS } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { poseAt } from '../../../../../geo/swing/motion/motion.ts';
import { steer } from '../../../../../geo/swing/motion/steer.ts';
import { stepBy } from '../../../../../geo/swing/motion/step.ts';
import { coachBuilt, withRack } from '../vehicles.ts';

const besideWall = (gapM: number): Scene => buildScene('leave', coachBuilt, { ...DEFAULTS.leave, gapM });
/** Rolls in equal steps; @returns whether the last of them moved it. */
const rollOften = (drive: HandDrive, scene: Scene, byM: number, times: number): boolean => {
  let rolled = false;
  for (let step = 0; step < times; step++) rolled = roll(drive, scene, byM);
  return rolled;
};
const readingOf = (drive: HandDrive, scene: Scene) =>
  readScene(steeredScene(scene, drivenByHand(drive)), Number.MAX_SAFE_INTEGER);

describe('steered by hand', () => {
  it('the vehicle goes where a steering programme takes it, forwards and backwards', () => {
    const open: Scene = { ...buildScene('leave', withRack, DEFAULTS.leave), fixtures: [] };
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 12, noNaN: true }),
        fc.boolean(),
        (share, wayM, reverse) => {
          const drive = takeWheel(open);
          turnWheel(drive, withRack, share);
          rollOften(drive, open, ((reverse ? -1 : 1) * wayM) / 100, 100);
          const points = [0, wayM].map((travelM) => ({ travelM, steerRad: share * lockRad(withRack) }));
          const driven = steer(withRack, { points, reverse, start: poseAt(open.motion, 0) });
          const end = poseAt(driven, driven.travelM.length - 1);
          expect(drive.pose.xM).toBeCloseTo(end.xM, 9);
          expect(drive.pose.yM).toBeCloseTo(end.yM, 9);
          expect(drive.pose.headingRad).toBeCloseTo(end.headingRad, 9);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('the same steering reads the same swing as the lesson, on the same side', () => {
    const scene = besideWall(0.6);
    const drive = takeWheel(scene);
    turnWheel(drive, coachBuilt, -1);
    rollOften(drive, scene, 0.03, 120);
    const byHand = steeredScene(scene, drivenByHand(drive));
    expect(readScene(byHand, 1000).swingMostM).toBeCloseTo(0.459, 3);
    expect(byHand.swingSide).toBe('left');
    expect(byHand.reversing).toBe(false);
  });

  it('a way forth and back with the wheel held ends where it began', () => {
    const start = { xM: 3, yM: -1, headingRad: 1 };
    const there = stepBy(coachBuilt, start, 0.4, 5);
    const back = stepBy(coachBuilt, there, 0.4, -5);
    expect(back.xM).toBeCloseTo(start.xM, 12);
    expect(back.yM).toBeCloseTo(start.yM, 12);
  });

  it('the wheel goes no farther than its lock', () => {
    const drive = takeWheel(besideWall(0.6));
    expect(turnWheel(drive, coachBuilt, -1.4)).toBe(-1);
    expect(drive.steerRad).toBeCloseTo(-lockRad(coachBuilt), 12);
  });
});

describe('steered by hand into a wall', () => {
  it('it stops where the lesson touches, and rolls no farther that way', () => {
    const scene = besideWall(0.3);
    const drive = takeWheel(scene);
    turnWheel(drive, coachBuilt, -1);
    expect(rollOften(drive, scene, 0.02, 200)).toBe(false);
    expect(isTouching(readingOf(drive, scene))).toBe(true);
    expect(levelByHand(readingOf(drive, scene))).toBe('barred');
    expect(Math.abs(drive.travelM - (contactOf(scene)?.travelM ?? Number.NaN))).toBeLessThan(0.02);
  });

  it('it comes off again the other way, by smaller steps than it ran in', () => {
    const scene = besideWall(0.3);
    const drive = takeWheel(scene);
    turnWheel(drive, coachBuilt, -1);
    rollOften(drive, scene, 0.25, 40);
    expect(isTouching(readingOf(drive, scene))).toBe(true);
    expect(rollOften(drive, scene, -0.02, 20)).toBe(true);
    expect(isTouching(readingOf(drive, scene))).toBe(false);
    expect(levelByHand(readingOf(drive, scene))).toBe('care');
  });
});
