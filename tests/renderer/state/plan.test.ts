import { beforeEach, describe, expect, it } from 'vitest';
import { PLAN_PLACES_MAX } from '../../../main/contract/limits.ts';
import { settingsSchema } from '../../../main/contract/settings.ts';
import {
  leftPlan,
  movePlace,
  openPlan,
  places,
  plan,
  putPlace,
  redoPlaces,
  removePlace,
  reorderPlace,
  savedPlan,
  undoPlaces,
  unsavedPlaces,
} from '../../../renderer/state/plan.ts';

const put = (name: string) => putPlace({ lat: 54, lon: 9, name, stop: true });
const names = () => places.value.map(({ name }) => name);
const keyOf = (name: string) => places.value.find((each) => each.name === name)?.key ?? 0;

beforeEach(() => {
  openPlan(undefined);
  for (const name of ['yard', 'mill', 'shore']) put(name);
});

describe('the places of a plan', () => {
  it('stand in the order they were put, and go where they are moved, never past the ends', () => {
    reorderPlace(keyOf('shore'), -1);
    expect(names()).toEqual(['yard', 'shore', 'mill']);
    reorderPlace(keyOf('yard'), -1);
    expect(names()).toEqual(['yard', 'shore', 'mill']);
  });

  it('are put in between where the line was dragged', () => {
    putPlace({ lat: 54.1, lon: 9, stop: false }, 1);
    expect(names()).toEqual(['yard', undefined, 'mill', 'shore']);
    expect(places.value[1]?.stop).toBe(false);
  });

  it('lose their name when they are put elsewhere', () => {
    movePlace(keyOf('mill'), { lat: 55, lon: 10 });
    expect(places.value[1]).toMatchObject({ lat: 55, lon: 10, stop: true });
    expect(names()).toEqual(['yard', undefined, 'shore']);
  });

  it('come back step by step, and go on again until something else is changed', () => {
    removePlace(keyOf('mill'));
    undoPlaces();
    expect(names()).toEqual(['yard', 'mill', 'shore']);
    undoPlaces();
    expect(names()).toEqual(['yard', 'mill']);
    redoPlaces();
    redoPlaces();
    redoPlaces();
    expect(names()).toEqual(['yard', 'shore']);
    undoPlaces();
    put('ford');
    redoPlaces();
    expect(names()).toEqual(['yard', 'mill', 'shore', 'ford']);
  });

  it('are kept as settings hold them, until they are written to a file or others are put', () => {
    const kept = unsavedPlaces.value;
    expect(settingsSchema.shape.left.parse({ view: 'drive', drive: null, plan: kept })?.plan).toEqual([
      { lat: 54, lon: 9, name: 'yard', stop: true },
      { lat: 54, lon: 9, name: 'mill', stop: true },
      { lat: 54, lon: 9, name: 'shore', stop: true },
    ]);
    savedPlan.value = plan.value;
    expect(unsavedPlaces.value).toEqual([]);
    put('ford');
    expect(unsavedPlaces.value).toHaveLength(4);
    savedPlan.value = undefined;
  });

  it('that were kept stay so while another plan is empty, and are what going on begins with', () => {
    leftPlan.value = unsavedPlaces.value;
    openPlan(undefined);
    expect(unsavedPlaces.value).toBe(leftPlan.value);
    openPlan(undefined, leftPlan.value);
    expect(names()).toEqual(['yard', 'mill', 'shore']);
    leftPlan.value = [];
  });

  it('are no more than one drive may have', () => {
    for (let i = 0; i < PLAN_PLACES_MAX; i++) put(`place ${i}`);
    expect(places.value).toHaveLength(PLAN_PLACES_MAX);
  });
});
