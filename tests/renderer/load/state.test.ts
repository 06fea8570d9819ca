import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  change,
  endStep,
  held,
  redo,
  redoes,
  remove,
  replace,
  shown,
  undo,
  undoes,
  weighed,
} from '../../../renderer/load/state/state.ts';
import { vehicleId, vehicles } from '../../../renderer/state/kept.ts';
import { aboard, aboardForCheck, loads, notCounted } from '../../../renderer/state/loads.ts';
import { COACH_BUILT, FAMILY } from '../../geo/load/family.ts';

const BOX = { name: 'Box', massKg: 20, xM: 3.6 };
const { runningOrder: _, unladenKg: __, ...UNWEIGHED } = COACH_BUILT;

let fresh = 0;
beforeEach(() => {
  vi.useFakeTimers();
  // a vehicle that nothing was done with before
  const id = `v${fresh++}`;
  vehicles.value = [
    { id, card: COACH_BUILT },
    { id: 'other', card: COACH_BUILT },
    { id: 'unweighed', card: UNWEIGHED },
  ];
  vehicleId.value = id;
  loads.value = {};
  held.value = undefined;
});
afterEach(() => vi.useRealTimers());

describe('what is aboard', () => {
  it('is taken back and brought back step by step', () => {
    change([BOX], 'put aboard Box');
    remove(0);
    expect(aboard.value).toEqual([]);
    expect(undoes.value).toBe('took off Box');
    undo();
    expect(aboard.value).toEqual([BOX]);
    undo();
    expect(aboard.value).toEqual([]);
    expect(undoes.value).toBeUndefined();
    redo();
    redo();
    expect(aboard.value).toEqual([]);
    expect(redoes.value).toBeUndefined();
  });

  it('is one step where changes of one kind follow each other, until the hand rests', () => {
    change([BOX], 'put aboard Box');
    for (const xM of [3.65, 3.7, 3.75]) replace(0, { ...BOX, xM }, 'moved Box', 'carry 0');
    undo();
    expect(aboard.value).toEqual([BOX]);
    redo();
    replace(0, { ...BOX, xM: 4 }, 'moved Box', 'carry 0');
    endStep();
    replace(0, { ...BOX, xM: 5 }, 'moved Box', 'carry 0');
    undo();
    expect(aboard.value[0]?.xM).toBe(4);
  });

  it('cannot be brought back once something else was done', () => {
    change([BOX], 'put aboard Box');
    undo();
    change([], 'took everything off');
    expect(redoes.value).toBeUndefined();
  });

  it('is of each vehicle by itself', () => {
    change([BOX], 'put aboard Box');
    vehicleId.value = 'other';
    expect(aboard.value).toEqual([]);
    expect(undoes.value).toBeUndefined();
  });

  it('shows what is in the hand where it is held, and counts it at once', () => {
    change([BOX], 'put aboard Box');
    const rearKg = () => (weighed.value?.ok ? weighed.value.value.rearKg : Number.NaN);
    const before = rearKg();
    held.value = { index: 0, item: { ...BOX, xM: 5 } };
    expect(rearKg() - before).toBeCloseTo((20 * 1.4) / COACH_BUILT.wheelbaseM, 9);
    expect(shown.value[0]?.xM).toBe(5);
    expect(aboard.value[0]?.xM).toBe(3.6);
  });
});

describe('the check of the drive', () => {
  it('counts what is aboard, and nothing where nothing is listed', () => {
    expect(aboardForCheck.value).toBeUndefined();
    change(FAMILY, 'opened');
    expect(aboardForCheck.value).toEqual(FAMILY);
    expect(notCounted.value).toBeUndefined();
  });

  it('goes on without a list that cannot be worked out, and it is said', () => {
    vehicleId.value = 'unweighed';
    change(FAMILY, 'opened');
    expect(aboardForCheck.value).toBeUndefined();
    expect(notCounted.value?.code).toBe('no-running-order');
  });
});
