import { describe, expect, it } from 'vitest';
import { fullLockSwingM } from '../../../../../geo/swing/circle.ts';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import {
  drivenByHand,
  roll,
  steeredScene,
  takeWheel,
  turnWheel,
} from '../../../../../geo/swing/lessons/hand/hand-drive.ts';
import { adviseFor } from '../../../../../geo/swing/lessons/read/advise.ts';
import { contactOf, leastGapOf } from '../../../../../geo/swing/lessons/read/contact.ts';
import { gapNeededM } from '../../../../../geo/swing/lessons/read/gap-needed.ts';
import { readScene } from '../../../../../geo/swing/lessons/read/read-scene.ts';
import type { Scene } from '../../../../../geo/swing/lessons/scene/scene.ts';
import { DEFAULTS, type LessonSettings } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { MODEL_OFF_M } from '../../../../../geo/swing/model-off.ts';
import { steeringForGap } from '../../../../../geo/swing/pass-gap.ts';
import type { SwingVehicle } from '../../../../../geo/swing/swing-vehicle.ts';
import { noseSwingM } from '../../../../support/steady-circle.ts';
import { coachBuilt, sampleVehicles, withRack } from '../vehicles.ts';

const leaving = (vehicle: SwingVehicle, settings: Partial<LessonSettings>): Scene =>
  buildScene('leave', vehicle, { ...DEFAULTS.leave, beside: 'wall', ...settings });
const backing = (vehicle: SwingVehicle, settings: Partial<LessonSettings>): Scene =>
  buildScene('reverse', vehicle, { ...DEFAULTS.reverse, ...settings });
/** What there is to go straight first, by the advice: what is advised for a gap leaves `MODEL_OFF_M` of it. */
const straightAdvisedM = (scene: Scene): number => {
  const advice = adviseFor(scene, contactOf(scene));
  return advice?.kind === 'gap too small' ? (advice.straightM ?? Number.NaN) : Number.NaN;
};
const swingMostM = (scene: Scene): number => readScene(scene, Number.MAX_SAFE_INTEGER).swingMostM;

/** The turn at which a corner b behind the rear axle has come out by g: b sin θ − (R + W/2)(1 − cos θ) = g. */
function turnAtGap(vehicle: SwingVehicle, behindM: number, gapM: number): number {
  const out = vehicle.lock.rearAxleRadiusM + vehicle.widthM / 2;
  return Math.atan2(behindM, out) - Math.acos((gapM + out) / Math.hypot(behindM, out));
}

describe('pulling away from a wall at full lock', () => {
  it('the 7.4 m coach-built swings out 0.459 m, with a full-width rack of 0.70 m 0.747 m', () => {
    expect(swingMostM(leaving(coachBuilt, {}))).toBeCloseTo(0.459, 3);
    expect(swingMostM(leaving(withRack, {}))).toBeCloseTo(0.747, 3);
  });

  it('every sample vehicle swings as far as the closed form says, to half a millimetre', () => {
    for (const vehicle of sampleVehicles)
      expect(Math.abs(swingMostM(leaving(vehicle, {})) - fullLockSwingM(vehicle))).toBeLessThan(0.0005);
  });

  it('with 30 cm beside it the 7.4 m touches with its left rear corner before it has moved a metre', () => {
    const contact = contactOf(leaving(coachBuilt, { gapM: 0.3 }));
    expect(contact?.part).toEqual({ kind: 'corner', side: 'left', end: 'rear' });
    expect(contact?.fixture.role).toBe('wall');
    expect(contact?.travelM).toBeLessThan(1);
  });

  it('the moment of contact is the closed form’s to 5 mm of way, at any gap that is too small', () => {
    for (const [vehicle, behindM] of [
      [coachBuilt, 2.42],
      [withRack, 3.12],
    ] as const)
      for (const gapM of [0.02, 0.1, 0.15, 0.3, 0.4]) {
        const contact = contactOf(leaving(vehicle, { gapM }));
        const expectedM = vehicle.lock.rearAxleRadiusM * turnAtGap(vehicle, behindM, gapM);
        expect(Math.abs((contact?.travelM ?? Number.NaN) - expectedM)).toBeLessThan(0.005);
      }
  });

  it('half the gap is touched sooner, and with a rack sooner still', () => {
    const at = (vehicle: SwingVehicle, gapM: number) =>
      contactOf(leaving(vehicle, { gapM }))?.travelM ?? Number.NaN;
    expect(at(coachBuilt, 0.15)).toBeLessThan(at(coachBuilt, 0.3));
    expect(at(withRack, 0.3)).toBeLessThan(at(coachBuilt, 0.3));
  });

  it('with 1 cm more than the swing it touches nothing, and that centimetre is the least gap', () => {
    const scene = leaving(coachBuilt, { gapM: fullLockSwingM(coachBuilt) + 0.01 });
    expect(contactOf(scene)).toBeUndefined();
    expect(leastGapOf(scene)?.gapM).toBeCloseTo(0.01, 3);
  });

  it('no gap at all is no touch until the wheel is turned', () => {
    const contact = contactOf(leaving(coachBuilt, { gapM: 0, straightM: 2 }));
    expect(contact?.travelM).toBeGreaterThan(1.99);
    expect(contact?.travelM).toBeLessThan(2.05);
  });

  it('pulling straight first does not help beside a wall, but does beside a parked car', () => {
    expect(gapNeededM(leaving(coachBuilt, { straightM: 3 }))).toBeCloseTo(0.459, 3);
    const car = leaving(coachBuilt, { beside: 'parked car', straightM: 3 });
    expect(gapNeededM(car)).toBeLessThan(0.3);
    expect(contactOf(car)).toBeUndefined();
  });

  it('the straight pull that is advised passes the parked car, two centimetres less do not', () => {
    const settings = { beside: 'parked car', gapM: 0.2 } as const;
    const straightM = straightAdvisedM(leaving(coachBuilt, { ...settings, gapM: 0.2 + MODEL_OFF_M }));
    expect(contactOf(leaving(coachBuilt, { ...settings, straightM }))).toBeUndefined();
    expect(contactOf(leaving(coachBuilt, { ...settings, straightM: straightM - 0.02 }))).toBeDefined();
  });

  it('what is advised leaves the room that the figures may be off, and is advised no more once it is done', () => {
    for (const vehicle of sampleVehicles) {
      const scene = leaving(vehicle, { beside: 'parked car', gapM: 0.25 });
      const advice = adviseFor(scene, contactOf(scene));
      if (advice?.kind !== 'gap too small') continue;
      const lockShare = Math.floor(advice.lockShare * 100) / 100;
      for (const done of [{ lockShare }, { straightM: Math.ceil((advice.straightM ?? 0) * 10) / 10 }]) {
        const after = leaving(vehicle, { beside: 'parked car', gapM: 0.25, ...done });
        expect(leastGapOf(after)?.gapM).toBeGreaterThanOrEqual(MODEL_OFF_M - 1e-3);
        expect(adviseFor(after, contactOf(after))?.kind).toBe('gap does');
      }
    }
  });

  it('the lock that is worked out for a gap swings out just as far as the gap', () => {
    for (const vehicle of sampleVehicles)
      for (const gapM of [0.05, 0.1, 0.2, 0.3]) {
        const { lockShare } = steeringForGap(vehicle, { gapM, reversing: false });
        if (lockShare === 1) expect(fullLockSwingM(vehicle)).toBeLessThanOrEqual(gapM + 1e-9);
        else expect(swingMostM(leaving(vehicle, { lockShare }))).toBeCloseTo(gapM, 3);
      }
  });
});

describe('a kerb', () => {
  it('is overhung by the body: only the post behind it is hit', () => {
    const scene = leaving(coachBuilt, { beside: 'kerb', gapM: 0.1 });
    expect(contactOf(scene)).toBeUndefined();
    expect(contactOf(leaving(withRack, { beside: 'kerb', gapM: 0.1 }))?.fixture.role).toBe(
      'post behind the kerb',
    );
  });

  it('is met by a wheel that runs against it', () => {
    const scene = leaving(coachBuilt, { beside: 'kerb', gapM: 0.1 });
    const drive = takeWheel(scene);
    turnWheel(drive, coachBuilt, 0.3);
    for (let step = 0; step < 100; step++) roll(drive, scene, 0.05);
    const towards = steeredScene(scene, drivenByHand(drive));
    expect(contactOf(towards)?.part).toEqual({ kind: 'wheel', side: 'left', end: 'front' });
  });
});

describe('backing out of a bay beside a parked car at full lock', () => {
  it('the nose of the 7.4 m swings out 1.77 m', () => {
    expect(noseSwingM(coachBuilt, 4.985)).toBeCloseTo(1.77, 2);
    expect(swingMostM(backing(coachBuilt, {}))).toBeCloseTo(noseSwingM(coachBuilt, 4.985), 3);
  });

  it('80 cm do not do: the right front corner touches', () => {
    const contact = contactOf(backing(coachBuilt, { gapM: 0.8 }));
    expect(contact?.part).toEqual({ kind: 'corner', side: 'right', end: 'front' });
    expect(contact?.fixture.role).toBe('parked car');
  });

  it('the straight way back that is advised passes the car', () => {
    const straightM = straightAdvisedM(backing(coachBuilt, { gapM: 0.8 + MODEL_OFF_M }));
    expect(contactOf(backing(coachBuilt, { gapM: 0.8, straightM }))?.fixture.role).not.toBe('parked car');
    expect(contactOf(backing(coachBuilt, { gapM: 0.8, straightM: straightM - 0.02 }))?.fixture.role).toBe(
      'parked car',
    );
  });

  it('a corner that passes the car’s end between two samples is seen, and the gap needed says so', () => {
    for (const [scene, gapM] of [
      [backing, 0.8],
      [leaving, 0.2],
    ] as const) {
      const settings = { beside: 'parked car', gapM } as const;
      const straightM = straightAdvisedM(scene(coachBuilt, { ...settings, gapM: gapM + MODEL_OFF_M }));
      for (let shortM = 0.002; shortM < 0.06; shortM += 0.004) {
        const short = scene(coachBuilt, { ...settings, straightM: straightM - shortM });
        expect(contactOf(short)?.fixture.role, `${shortM} m short`).toBe('parked car');
        expect(leastGapOf(short)?.gapM).toBeLessThan(0);
        expect(gapNeededM(short)).toBeGreaterThan(gapM);
      }
      const enough = scene(coachBuilt, { ...settings, straightM: straightM + 0.002 });
      expect(contactOf(enough)?.fixture.role).not.toBe('parked car');
      expect(gapNeededM(enough)).toBeLessThan(gapM);
    }
  });
});
