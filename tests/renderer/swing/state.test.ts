import { beforeEach, describe, expect, it } from 'vitest';
import { vehicleId, vehicles } from '../../../renderer/state/kept.ts';
import { rollBy, startByHand, turnWheel } from '../../../renderer/swing/hand-keys.ts';
import {
  besideId,
  byHand,
  choose,
  contactM,
  rackWanted,
  set,
  shown,
  shownBeside,
  toStart,
  touchedByHand,
  travelM,
  wayM,
} from '../../../renderer/swing/state.ts';
import { COACH_BUILT } from './support.ts';

beforeEach(() => {
  vehicles.value = [
    { id: 'a', card: COACH_BUILT },
    { id: 'b', card: { ...COACH_BUILT, name: 'Short', rearOverhangM: 1, lengthM: 5.985 } },
  ];
  vehicleId.value = 'a';
  besideId.value = undefined;
  rackWanted.value = undefined;
  choose('leave');
  set({ gapM: 0.3, lockShare: 1, straightM: 0, beside: 'wall', turnSide: 'right' });
});

describe('a lesson', () => {
  it('touches the wall with a gap of 30 cm and not with one of 50', () => {
    expect(contactM.value).toBeGreaterThan(0.5);
    expect(shown.value?.decision?.level).toBe('barred');
    set({ gapM: 0.5 });
    expect(contactM.value).toBeUndefined();
    expect(shown.value?.decision?.sum?.spareM).toBeCloseTo(0.041, 2);
    expect(shown.value?.decision?.level).toBe('tight');
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
    expect(wayM.value).toBeCloseTo(12, 6);
  });

  it('does not show the vehicle beside a second time when it is chosen itself', () => {
    besideId.value = 'b';
    vehicleId.value = 'b';
    expect(shownBeside.value).toBeUndefined();
  });

  it('driven by hand is the drive of one vehicle: another begins with the lesson', () => {
    startByHand();
    turnWheel(-1);
    rollBy(0.5);
    vehicleId.value = 'b';
    expect(byHand.value).toBe(false);
    vehicleId.value = 'a';
    expect(byHand.value).toBe(true);
  });

  it('does not tell of a wide gap where something else is touched', () => {
    choose('reverse');
    set({ gapM: 2.5, lockShare: 1, straightM: 8 });
    expect(shown.value?.contact?.fixture).toBe('the hedge across the aisle');
    expect(shown.value?.decision?.sum).toBeUndefined();
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
    turnWheel(-1);
    for (let i = 0; i < 200; i++) rollBy(0.02);
    expect(touchedByHand.value).toBe(true);
    const stuck = shown.value?.scene.motion.travelM.at(-1) ?? 0;
    rollBy(0.02);
    expect(shown.value?.scene.motion.travelM.at(-1)).toBe(stuck);
    rollBy(-0.02);
    rollBy(-0.02);
    expect(touchedByHand.value).toBe(false);
  });

  it('comes off again by smaller steps than it ran in', () => {
    startByHand();
    turnWheel(-1);
    for (let i = 0; i < 40; i++) rollBy(0.25);
    expect(touchedByHand.value).toBe(true);
    for (let i = 0; i < 20; i++) rollBy(-0.02);
    expect(touchedByHand.value).toBe(false);
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
