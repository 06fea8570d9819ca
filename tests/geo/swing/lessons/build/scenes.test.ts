import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { given } from '../../../../../geo/given.ts';
import type { Turn } from '../../../../../geo/report/turn.ts';
import { lockRad, tailSwingM } from '../../../../../geo/swing/circle.ts';
import { startInLane } from '../../../../../geo/swing/corner/swing-figures.ts';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import { driveTurnScene } from '../../../../../geo/swing/lessons/build/drive-turn.ts';
import { contactOf, leastGapOf } from '../../../../../geo/swing/lessons/read/contact.ts';
import { fanOf } from '../../../../../geo/swing/lessons/read/fan.ts';
import { readScene } from '../../../../../geo/swing/lessons/read/read-scene.ts';
import { LESSONS } from '../../../../../geo/swing/lessons/scene/lesson.ts';
import type { Scene } from '../../../../../geo/swing/lessons/scene/scene.ts';
import {
  DEFAULTS,
  type LessonSettings,
  rangesOf,
  USES,
} from '../../../../../geo/swing/lessons/scene/settings.ts';
import { tellScene } from '../../../../../geo/swing/lessons/tell/tell-scene.ts';
import { onGround, poseAt } from '../../../../../geo/swing/motion/motion.ts';
import { boxesOf } from '../../../../../geo/swing/outline.ts';
import { coachBuilt, sampleVehicles, withRack } from '../vehicles.ts';

const BUILT = LESSONS.filter((lesson) => lesson !== 'drive-turn');

/** Any settings that the sliders of a lesson can reach. */
const settingsOf = (lesson: Scene['lesson'], vehicle = coachBuilt): fc.Arbitrary<LessonSettings> => {
  const ranges = rangesOf(lesson, vehicle);
  const slid = (key: keyof typeof ranges) =>
    fc.double({ min: ranges[key].from, max: ranges[key].to, noNaN: true });
  return fc.record({
    driveSide: fc.constantFrom('left', 'right'),
    turnSide: fc.constantFrom('left', 'right'),
    beside: fc.constantFrom('kerb', 'wall', 'parked car'),
    gapM: slid('gapM'),
    lockShare: slid('lockShare'),
    straightM: slid('straightM'),
    laneM: slid('laneM'),
    kerbRadiusM: slid('kerbRadiusM'),
    openingM: slid('openingM'),
  });
};
/** Printed as its settings, not as a thousand samples. */
const anyCase = fc
  .tuple(fc.constantFrom(...BUILT), fc.nat({ max: sampleVehicles.length - 1 }))
  .chain(([lesson, which]) =>
    settingsOf(lesson, sampleVehicles[which]).map((settings) => ({ lesson, which, settings })),
  );
type Case = typeof anyCase extends fc.Arbitrary<infer T> ? T : never;
const built = ({ lesson, which, settings }: Case): Scene =>
  buildScene(lesson, sampleVehicles[which] ?? coachBuilt, settings);

function soundScene(scene: Scene): void {
  const { motion, extent, vehicle, fixtures } = scene;
  const numbers = Object.values(motion).flatMap((values) => [...(values as Float64Array)]);
  expect(numbers.every(Number.isFinite)).toBe(true);
  expect(fixtures.flatMap(({ line }) => line).every(({ xM, yM }) => Number.isFinite(xM + yM))).toBe(true);
  expect(motion.travelM.length).toBeGreaterThan(10);
  expect(motion.travelM.length).toBeLessThan(6000);
  // thousands of samples: asked in one question each
  expect(motion.travelM.findIndex((travelM, i) => i > 0 && !(travelM >= motion.travelM[i - 1]!))).toBe(-1);
  const lock = lockRad(vehicle) + 1e-9;
  expect(motion.steerRad.findIndex((steerRad) => !(Math.abs(steerRad) < lock))).toBe(-1);
  const outside: { readonly xM: number; readonly yM: number }[] = [];
  for (let index = 0; index < motion.travelM.length; index += 20)
    for (const { backM, frontM, halfWidthM } of boxesOf(vehicle))
      for (const aheadM of [backM, frontM])
        for (const leftM of [halfWidthM, -halfWidthM]) {
          const { xM, yM } = onGround(poseAt(motion, index), aheadM, leftM);
          const inside =
            xM >= extent.from.xM && xM <= extent.to.xM && yM >= extent.from.yM && yM <= extent.to.yM;
          if (!inside) outside.push({ xM, yM });
        }
  expect(outside).toEqual([]);
}

describe('every lesson', () => {
  it('builds with every sample vehicle at its defaults, stays finite, ends, and its extent holds every pose', () => {
    for (const lesson of LESSONS)
      for (const vehicle of sampleVehicles) soundScene(buildScene(lesson, vehicle, DEFAULTS[lesson]));
  });

  it('does so wherever its sliders stand', () => {
    fc.assert(
      fc.property(anyCase, (drawn) => soundScene(built(drawn))),
      { numRuns: 60 },
    );
  });

  it('tells three to seven sentences, with figures and no holes', () => {
    fc.assert(
      fc.property(anyCase, (drawn) => {
        const scene = built(drawn);
        const told = tellScene(scene, 'metric');
        expect(told.length).toBeGreaterThanOrEqual(3);
        expect(told.length).toBeLessThanOrEqual(7);
        expect(told.join(' ')).not.toMatch(/NaN|undefined|Infinity|-\d+ cm/);
      }),
      { numRuns: 60 },
    );
  });

  it('the least gap is below nothing exactly when something is touched', () => {
    fc.assert(
      fc.property(anyCase, (drawn) => {
        const scene = built(drawn);
        const leastM = leastGapOf(scene)?.gapM ?? Number.POSITIVE_INFINITY;
        fc.pre(Math.abs(leastM) > 1e-5);
        expect(contactOf(scene) !== undefined).toBe(leastM < 0);
      }),
      { numRuns: 60 },
    );
  });

  it('at the touch the vehicle is within 5 mm of what it touches, and before it clear of everything', () => {
    fc.assert(
      fc.property(anyCase, (drawn) => {
        const scene = built(drawn);
        const contact = contactOf(scene);
        fc.pre(contact !== undefined && contact.index > 0);
        if (!contact) return;
        const { motion } = scene;
        const touching = {
          ...scene,
          motion: { ...motion, ...standing(contact.pose, motion.steerRad[contact.index]!) },
        };
        // a wheel turned standing may turn into a kerb by as much as the end of its tyre comes out
        const standingM = contact.travelM === motion.travelM[contact.index - 1] ? 0.15 : 0.005;
        expect(Math.abs(readScene(touching, 0).nearestM)).toBeLessThan(standingM);
        for (let index = 0; index < contact.index; index += 5)
          expect(readScene(scene, index).nearestM).toBeGreaterThan(-1e-5);
      }),
      { numRuns: 30 },
    );
  });

  it('left and right exchanged give the mirrored scene', () => {
    const other = { left: 'right', right: 'left' } as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...BUILT).chain((lesson) => fc.tuple(fc.constant(lesson), settingsOf(lesson))),
        ([lesson, settings]) => {
          const a = buildScene(lesson, coachBuilt, settings);
          const b = buildScene(lesson, coachBuilt, {
            ...settings,
            driveSide: other[settings.driveSide],
            turnSide: other[settings.turnSide],
          });
          expect(b.swingSide).toBe(other[a.swingSide]);
          expect([...b.motion.yM].map((yM) => -yM)).toEqual([...a.motion.yM]);
          const at = contactOf(a);
          expect(contactOf(b)?.travelM ?? -1).toBeCloseTo(at?.travelM ?? -1, 3);
          expect(contactOf(b)?.fixture.role).toBe(at?.fixture.role);
          const last = a.motion.travelM.length - 1;
          expect(readScene(b, last).swingMostM).toBeCloseTo(readScene(a, last).swingMostM, 9);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('uses every setting that it shows: moving it changes the scene', () => {
    for (const lesson of BUILT)
      for (const key of USES[lesson]) {
        const plain = { ...DEFAULTS[lesson], lockShare: 0.7 };
        const value = plain[key];
        const changed =
          key === 'beside'
            ? 'parked car'
            : value === 'left'
              ? 'right'
              : value === 'right'
                ? 'left'
                : Number(value) + 0.2;
        const picture = (settings: LessonSettings) => {
          const { motion, fixtures } = buildScene(lesson, coachBuilt, settings);
          return JSON.stringify([fixtures, [...motion.xM], [...motion.yM]]);
        };
        expect(picture({ ...plain, [key]: changed }), `${lesson} ${key}`).not.toBe(picture(plain));
      }
  });

  it('shows two vehicles from the same line: the body side that the gap is measured from starts on y = 0', () => {
    for (const lesson of BUILT)
      for (const vehicle of sampleVehicles) {
        const { motion } = buildScene(lesson, vehicle, DEFAULTS[lesson]);
        expect(Math.abs(motion.yM[0]!)).toBeCloseTo(vehicle.widthM / 2, 9);
      }
  });

  it('stands still as evenly spaced places from the start to the end', () => {
    const scene = buildScene('leave', coachBuilt, { ...DEFAULTS.leave, straightM: 3 });
    const { motion } = scene;
    const poses = fanOf(scene, 7);
    expect(poses.length).toBe(7);
    expect(poses[0]).toEqual(poseAt(motion, 0));
    expect(poses[6]).toEqual(poseAt(motion, motion.travelM.length - 1));
    // on the straight the places are as far apart as the way from one to the next
    expect(Math.abs(poses[1]!.xM - (motion.travelM.at(-1) ?? 0) / 6)).toBeLessThan(0.06);
  });
});

describe('at a mini-roundabout', () => {
  it('the tail swings to the other side each time the wheel goes over', () => {
    const scene = buildScene('mini-roundabout', coachBuilt, DEFAULTS['mini-roundabout']);
    const sides = new Set<string>();
    for (let index = 0; index < scene.motion.travelM.length; index++) {
      const { swingM, swingSide } = readScene(scene, index);
      if (swingM > 0.1) sides.add(swingSide);
    }
    expect([...sides].sort()).toEqual(['left', 'right']);
  });

  it('every sample vehicle gets across at the defaults', () => {
    for (const vehicle of sampleVehicles)
      expect(contactOf(buildScene('mini-roundabout', vehicle, DEFAULTS['mini-roundabout']))).toBeUndefined();
  });
});

describe('a turn of a drive', () => {
  const turn = (change: Partial<Turn>): Turn => ({
    kind: 'junction',
    lockFrom: 'rear-axle radius',
    side: 'left',
    turnDeg: 90,
    driveSide: 'left',
    entry: { laneM: 3.25, roadM: 6.5, from: 'default' },
    exit: { laneM: 3.25, roadM: 6.5, from: 'default' },
    kerbRadiusM: 6,
    room: 'other lane on the exit',
    rearAxleRadiusM: 12.3,
    swing: {
      side: 'right',
      gentleM: 0.11,
      planM: 0.22,
      planFromM: 0.17,
      planToM: 0.28,
      worstM: 0.459,
      worstFromM: 0.42,
      worstToM: 0.5,
    },
    assumed: [],
    ...change,
  });

  it('at a radius that fits, a 90° corner of two 3.25 m lanes with a 6 m kerb is passed without a touch', () => {
    expect(contactOf(driveTurnScene(turn({}), coachBuilt))).toBeUndefined();
  });

  it('that may take backing up once touches the inner kerb at full lock', () => {
    const narrow = { laneM: 3, roadM: 3, from: 'tags' as const };
    const scene = driveTurnScene(
      turn({
        entry: narrow,
        exit: narrow,
        kerbRadiusM: 3,
        room: 'back up',
        rearAxleRadiusM: 4.985,
        turnDeg: 130,
      }),
      coachBuilt,
    );
    expect(contactOf(scene)?.fixture.role).toBe('inner kerb');
  });

  it('that may take backing up starts in the middle of its lane, as its row judged it', () => {
    const narrow = { laneM: 3, roadM: 3, from: 'tags' as const };
    const start = startInLane(coachBuilt, 3, 0.459);
    const scene = driveTurnScene(
      turn({ entry: narrow, exit: narrow, room: 'back up', rearAxleRadiusM: 4.985, turnDeg: 100, start }),
      coachBuilt,
    );
    expect(scene.starts?.gapM).toBeCloseTo(start.gapM, 6);
    expect(tellScene(scene, 'metric').join(' ')).toMatch(
      /It is drawn starting in the middle of its lane, 34 cm from the outer kerb; the tail goes up to 16 cm over/,
    );
  });

  it('is driven with the wheel hard over where that is wanted, and tells the same figure to keep free', () => {
    const hard = driveTurnScene(turn({}), coachBuilt, 'full lock');
    expect(hard.turn?.rearAxleRadiusM).toBe(coachBuilt.lock.rearAxleRadiusM);
    expect(readScene(hard, 1e6).swingMostM).toBeCloseTo(0.459, 3);
    const [fits, lock] = [driveTurnScene(turn({}), coachBuilt), hard].map((of) => tellScene(of, 'metric'));
    expect(lock?.[0]).toBe(fits?.[0]);
    expect(lock?.[1]).toContain('the wheel hard over');
  });

  it('swings as far as the plan says, on the side the plan says', () => {
    const scene = driveTurnScene(turn({ side: 'right' }), coachBuilt);
    expect(readScene(scene, 1e6).swingMostM).toBeCloseTo(tailSwingM(coachBuilt, 12.3), 3);
    expect(scene.swingSide).toBe('left');
  });

  it('is fitted anew where the rack is put on: what passed in the other lane may need the whole road', () => {
    const own = driveTurnScene(turn({}), coachBuilt).turn;
    const racked = driveTurnScene(turn({}), { ...coachBuilt, rack: { lengthM: 0.9, widthM: 2.32 } }).turn;
    expect(own?.rearAxleRadiusM).toBe(12.3);
    expect(racked?.rearAxleRadiusM ?? 0).not.toBeCloseTo(12.3, 1);
  });

  it('is told with its angle, its room, its figures and what was assumed', () => {
    const told = tellScene(
      driveTurnScene(
        turn({
          assumed: [
            { what: 'lane', m: 3.25 },
            { what: 'kerb radius', m: 6 },
          ],
        }),
        coachBuilt,
      ),
      'metric',
    );
    expect(told[0]).toBe('Keep 50 cm free to the right for the tail.');
    expect(told[1]).toBe(
      'Coach-built 7.4 turns 90° to the left, the rear axle on a radius of 12.3 m, and needs the other lane on the exit.',
    );
    expect(told[3]).toMatch(/^On this sweep the tail swings out .*; driven gently .*, at full lock .*\.$/);
    expect(told[4]).toMatch(/^It is drawn starting \d+ cm from the lane line\./);
    expect(told[5]).toBe('Not mapped, so usual figures: lane 3.25 m, kerb radius 6 m.');
  });

  it('is built for any kind, angle, width and kerb, and never tighter than full lock', () => {
    const width = fc.double({ min: 2.5, max: 8, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom('junction', 'bend', 'roundabout', 'mini-roundabout', 'u-turn'),
        fc.constantFrom('left', 'right'),
        fc.double({ min: 0, max: 355, noNaN: true }),
        fc.tuple(width, width, width, width),
        fc.double({ min: 0, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.option(fc.double({ min: 5, max: 60, noNaN: true }), { nil: undefined }),
        fc.option(fc.double({ min: 1, max: 60, noNaN: true }), { nil: undefined }),
        (kind, side, turnDeg, [a, b, c, d], kerbRadiusM, rearAxleRadiusM, circleM, bendRadiusM) => {
          const scene = driveTurnScene(
            turn({
              kind,
              side,
              turnDeg,
              entry: { laneM: Math.min(a, b), roadM: Math.max(a, b), from: 'tags' },
              exit: { laneM: Math.min(c, d), roadM: Math.max(c, d), from: 'tags' },
              kerbRadiusM,
              rearAxleRadiusM,
              ...given({ circleM, bendRadiusM }),
            }),
            withRack,
          );
          soundScene(scene);
          expect(tellScene(scene, 'metric').join(' ')).not.toMatch(/NaN|undefined|Infinity/);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** A motion of one place. */
function standing(pose: { xM: number; yM: number; headingRad: number }, steerRad: number) {
  return {
    travelM: Float64Array.of(0),
    xM: Float64Array.of(pose.xM),
    yM: Float64Array.of(pose.yM),
    headingRad: Float64Array.of(pose.headingRad),
    steerRad: Float64Array.of(steerRad),
  };
}
