import { describe, expect, it } from 'vitest';
import { isMostlyOff, isOffMap, mapForDrive, mapForPlan } from '../../../renderer/actions/which-map.ts';

const SAMPLE = { source: { kind: 'sample', id: 'district' } } as const;
const FILE = { source: { kind: 'path', token: 'own-map-token' } } as const;
const drive = { source: { kind: 'upload', token: 'drive-token' } } as const;
const other = { kind: 'upload', token: 'other-token' } as const;
const SHELF = { kind: 'shelf' } as const;
const onShelf = { source: SHELF, about: drive.source };

describe('the map of a drive that comes without one', () => {
  it.each([
    ['no map is open', undefined],
    ["the sample's is open", SAMPLE],
    ['the shelf is open about another drive', { source: SHELF, about: other }],
    ['the shelf is open about nothing', { source: SHELF }],
  ])('is the shelf where it holds maps and %s', (_, map) => {
    expect(mapForDrive(drive, { map, shelfMaps: 2 })).toEqual(onShelf);
  });

  it('is what is open where the shelf is open about that drive already', () => {
    expect(mapForDrive(drive, { map: onShelf, shelfMaps: 2 })).toBeUndefined();
  });

  it("is what is open where that is a file of the user's own, or the shelf is empty", () => {
    expect(mapForDrive(drive, { map: FILE, shelfMaps: 2 })).toBeUndefined();
    expect(mapForDrive(drive, { map: SAMPLE, shelfMaps: 0 })).toBeUndefined();
    expect(mapForDrive(drive, { map: undefined, shelfMaps: 0 })).toBeUndefined();
  });

  it('is that file again where only what lies about another drive was kept of it', () => {
    expect(mapForDrive(drive, { map: { ...FILE, about: other }, shelfMaps: 2 })).toEqual({
      ...FILE,
      about: drive.source,
    });
  });
});

it('lies mostly off a map with more than half of it off the roads', () => {
  expect(isMostlyOff({ match: { offMapM: 5000 }, lengthM: 10_000 })).toBe(false);
  expect(isMostlyOff({ match: { offMapM: 5001 }, lengthM: 10_000 })).toBe(true);
});

describe('the map that a plan is begun on', () => {
  it('is the shelf, once it holds maps, unless a file of the user’s own is open', () => {
    expect(mapForPlan({ map: SAMPLE, shelfMaps: 1 })).toEqual({ source: SHELF });
    expect(mapForPlan({ map: undefined, shelfMaps: 1 })).toEqual({ source: SHELF });
    expect(mapForPlan({ map: FILE, shelfMaps: 1 })).toEqual(FILE);
    expect(mapForPlan({ map: SAMPLE, shelfMaps: 0 })).toEqual(SAMPLE);
  });

  it('is left by a place off it', () => {
    const bounds = { south: 52, west: -1, north: 53, east: 0 };
    expect(isOffMap({ lat: 52.5, lon: -0.5 }, bounds)).toBe(false);
    expect(isOffMap({ lat: -0.5, lon: 52.5 }, bounds)).toBe(true);
    expect(isOffMap({ lat: 52.5, lon: -0.5 }, null)).toBe(true);
  });
});
