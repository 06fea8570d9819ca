import { beforeEach, describe, expect, it } from 'vitest';
import { vehicleId, vehicles } from '../../../renderer/state/kept.ts';
import { rollBy, startByHand, turnWheelTo } from '../../../renderer/swing/state/hand.ts';
import {
  besideId,
  choose,
  rackOn,
  set,
  toStart,
  travelM,
  tryRack,
} from '../../../renderer/swing/state/lesson.ts';
import { byHand, contactM, reading, shown, shownBeside, wayM } from '../../../renderer/swing/state/shown.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';

beforeEach(() => {
  vehicles.value = [
    { id: 'a', card: COACH_BUILT },
    { id: 'b', card: { ...COACH_BUILT, name: 'Short', rearOverhangM: 1, lengthM: 5.985 } },
  ];
  vehicleId.value = 'a';
  besideId.value = undefined;
  choose('leave');
  set({ gapM: 0.3, lockShare: 1, straightM: 0, beside: 'wall', turnSide: 'right' });
});

describe('a lesson', () => {
  it('is judged anew at every setting: a wall touched at 30 cm, and close at 50', () => {
    expect(contactM.value).toBeGreaterThan(0.5);
    expect(shown.value?.judged?.level).toBe('barred');
    set({ gapM: 0.5 });
    expect(contactM.value).toBeUndefined();
    expect(shown.value?.judged?.level).toBe('tight');
  });

  it('keeps what was set in it while another is looked at', () => {
    set({ gapM: 0.77 });
    choose('reverse');
    choose('leave');
    expect(shown.value?.scene.settings?.gapM).toBe(0.77);
  });

  it('shows a second vehicle, and both are scrubbed over the longer way', () => {
    besideId.value = 'b';
    expect(shownBeside.value?.scene.vehicle.name).toBe('Short');
    expect(wayM.value).toBeCloseTo(8, 6);
  });

  it('does not show the vehicle beside a second time when it is chosen itself', () => {
    besideId.value = 'b';
    vehicleId.value = 'b';
    expect(shownBeside.value).toBeUndefined();
  });

  it('driven by hand is the drive of one vehicle: another begins with the lesson', () => {
    startByHand();
    turnWheelTo(-1);
    rollBy(0.5);
    vehicleId.value = 'b';
    expect(byHand.value).toBe(false);
    vehicleId.value = 'a';
    expect(byHand.value).toBe(true);
  });

  it('a rack tried out on one vehicle is not carried to another', () => {
    tryRack(true);
    expect(shown.value?.scene.vehicle.rack).toBeDefined();
    vehicleId.value = 'b';
    expect(rackOn.value).toBe(false);
    expect(shown.value?.scene.vehicle.rack).toBeUndefined();
  });

  it('starts another lesson at its first moment', () => {
    travelM.value = 5;
    choose('pitch');
    expect(travelM.value).toBe(0);
  });
});

describe('the wheel in the hand', () => {
  it('rolls until it touches, and then only off again', () => {
    startByHand();
    turnWheelTo(-1);
    for (let i = 0; i < 100; i++) rollBy(0.02);
    expect(reading.value?.nearestM).toBeLessThan(0);
    const stuck = shown.value?.scene.motion.travelM.at(-1) ?? 0;
    rollBy(0.02);
    expect(shown.value?.scene.motion.travelM.at(-1)).toBe(stuck);
    for (let i = 0; i < 5; i++) rollBy(-0.02);
    expect(reading.value?.nearestM).toBeGreaterThan(0);
  });

  it('is taken off by going back to the lesson', () => {
    startByHand();
    expect(byHand.value).toBe(true);
    toStart();
    expect(byHand.value).toBe(false);
    rollBy(1);
    expect(byHand.value).toBe(false);
  });
});
