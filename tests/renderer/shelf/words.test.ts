import { describe, expect, it } from 'vitest';
import type { FetchPlan } from '../../../main/contract/fetch.ts';
import type { FollowedDrive } from '../../../main/contract/followed-drive.ts';
import type { MapSummary } from '../../../main/contract/map-summary.ts';
import type { ShelfMap } from '../../../main/contract/shelf.ts';
import { sayLeft, sayTime } from '../../../renderer/look/say-left.ts';
import { sayArea } from '../../../renderer/shelf/area.ts';
import { sayPlan, sayToday, waysInOrder } from '../../../renderer/shelf/fetch/ways.ts';
import { missingOf, sayMissing } from '../../../renderer/shelf/missing.ts';
import { sayAge, sayFromShelf, sayHolds, sayMend, sayOrigin } from '../../../renderer/shelf/say-map.ts';

const track = { kind: 'track', number: 1, name: '', positions: 9 } as const;
const followed = {
  lengthM: 40_000,
  match: { drivenM: 40_000, offMapM: 0, guessedM: 0 },
  tracks: [track],
} as unknown as FollowedDrive;
const own = { followed, source: { kind: 'upload', token: 'drive-token' } } as const;
const shelf = {
  maps: ['Vale'],
  lengthM: 40_000,
  bare: [] as { fromM: number; toM: number }[],
  mainRoadsOnly: false,
  damaged: [] as string[],
};
const onShelf = (parts: Partial<typeof shelf>) => ({
  summary: { shelf: { ...shelf, ...parts } } as unknown as MapSummary,
  source: { kind: 'shelf' } as const,
});
const onSample = { summary: {} as MapSummary, source: { kind: 'sample', id: 'district' } } as const;
const offMap = { ...followed, match: { drivenM: 0, offMapM: 40_000, guessedM: 0 } };

describe('a damaged map', () => {
  const sources = [{ name: 'rutland.osm.pbf', sha256: '' }];
  it('says what helps where no press can mend it: never that a file has moved that only came as a copy', () => {
    expect(sayMend('copy', sources)).toMatch(/^It was made from rutland\.osm\.pbf\. This window cannot see/);
    expect(sayMend('gone', sources)).toContain('no longer where it was: choose it');
    expect(sayMend('fetched', sources)).toContain('fetch it again');
  });
});

describe('what a drive lacks of its map', () => {
  it('is nothing where the shelf has roads along all of it, and nothing for a drive of the sample', () => {
    expect(missingOf(onShelf({}), own)).toBeUndefined();
    expect(missingOf(onSample, { followed: offMap, source: onSample.source })).toBeUndefined();
  });

  it('is what the shelf has no roads along, in the units chosen', () => {
    const bare = [
      { fromM: 0, toM: 3000 },
      { fromM: 9000, toM: 18_400 },
    ];
    const missing = missingOf(onShelf({ bare }), own);
    expect(missing).toMatchObject({ missingM: 12_400, lengthM: 40_000, from: 'shelf' });
    expect(missing && sayMissing(missing, 'metric')).toBe(
      '12.4 km of this drive of 40.0 km are not on your shelf: what is there is unknown.',
    );
    expect(missing && sayMissing(missing, 'imperial')).toContain('7.7 mi of this drive of 24.9 mi');
  });

  it('may stand in a map that is damaged, which is to be mended before anything is fetched', () => {
    const damaged = missingOf(onShelf({ bare: [{ fromM: 0, toM: 3000 }], damaged: ['Vale'] }), own);
    expect(damaged && sayMissing(damaged, 'metric')).toMatch(/or cannot be read there.* First mend Vale/);
  });

  it('of a shelf that cannot be read is not for want of a map: it is to be mended, nothing fetched', () => {
    const missing = missingOf(onSample, { ...own, followed: offMap }, 1);
    expect(missing).toMatchObject({ from: 'unread', missingM: 40_000 });
    expect(missing && sayMissing(missing, 'metric')).toMatch(/could be read .* First mend what is damaged/);
  });

  it('is told where main roads are all that the shelf has', () => {
    const missing = missingOf(onShelf({ mainRoadsOnly: true }), own);
    expect(missing && sayMissing(missing, 'metric')).toBe(
      'What your shelf has here are main roads alone: side roads, and what stands on them, are unknown.',
    );
  });

  it('is not told of the drive that is still shown while the map is opened for another', () => {
    const map = onShelf({ bare: [{ fromM: 0, toM: 40_000 }] });
    expect(missingOf({ ...map, about: { kind: 'upload', token: 'other-token' } }, own)).toBeUndefined();
    expect(missingOf({ ...map, about: own.source }, own)).toMatchObject({ missingM: 40_000 });
  });

  it('is all of it where only the sample is open, and most of it on a file of another place', () => {
    const nowhere = missingOf(onSample, { ...own, followed: offMap });
    expect(nowhere && sayMissing(nowhere, 'metric')).toBe(
      'Nothing on your shelf covers this drive of 40.0 km: all of it is unknown.',
    );
    const half = { ...followed, match: { drivenM: 15_000, offMapM: 25_000, guessedM: 0 } };
    const file = { summary: {} as MapSummary, source: { kind: 'recent', id: 'somemap1' } } as const;
    const most = missingOf(file, { ...own, followed: half });
    expect(most && sayMissing(most, 'metric')).toContain('no roads under 25.0 km of this drive');
    expect(missingOf(file, own)).toBeUndefined();
  });

  it('is counted for the track that is driven, of a file with several', () => {
    const second = {
      ...followed,
      tracks: [track, track],
      lengthM: 9000,
      match: { drivenM: 7000, offMapM: 2000, guessedM: 0 },
    };
    const bare = [{ fromM: 0, toM: 30_000 }];
    expect(missingOf(onShelf({ bare }), { ...own, followed: second })).toMatchObject({
      missingM: 2000,
      lengthM: 9000,
    });
  });
});

const line = (queries: number): FetchPlan => ({
  by: 'line',
  host: 'roads.example',
  queries: 14,
  bytes: 4_200_000,
  seconds: 560,
  say: [],
  today: { queries, bytes: 900_000 },
});
const regions = (step: 'index' | 'sizes' | 'maps' | 'none', names: string[]): FetchPlan => ({
  by: 'region',
  host: 'maps.example',
  step,
  say: [],
  regions: names.map((name) => ({ id: name, name })),
});

describe('the ways to fetch', () => {
  it('begin with the line, but for a long drive and where its server was asked today', () => {
    expect(waysInOrder(150_000, line(0))).toEqual(['line', 'region']);
    expect(waysInOrder(150_001, line(0))).toEqual(['region', 'line']);
    expect(waysInOrder(40_000, line(14))).toEqual(['region', 'line']);
    expect(waysInOrder(40_000, undefined)).toEqual(['line', 'region']);
  });

  it('say how much, how long and from whom', () => {
    expect(sayPlan(line(0))).toEqual(['about 4.2 MB, about 9 minutes', 'from roads.example']);
    const names = ['Ahm', 'Behm', 'Cehm', 'Dehm', 'Ehm'];
    expect(sayPlan({ ...regions('maps', names), bytes: 31e6, seconds: 95 })).toEqual([
      'Ahm, Behm, Cehm and 2 more',
      'about 31 MB, about 2 minutes',
      'from maps.example',
    ]);
    expect(sayPlan(regions('sizes', ['Ahm']))).toContain('their sizes are asked for first');
    expect(sayPlan({ ...regions('none', []), say: ['No region holds it.'] })).toEqual([
      'No region holds it.',
    ]);
  });

  it('say what was asked of a server today', () => {
    expect(sayToday({ queries: 0, bytes: 0 })).toBe('nothing so far');
    expect(sayToday({ queries: 1, bytes: 120_000 })).toBe('1 question, 120 kB');
  });
});

it.each([
  [4, 'a few seconds left'],
  [40, 'less than a minute left'],
  [60, 'about 1 minute left'],
  [130, 'about 2 minutes left'],
  [3580, 'about 1 hour left'],
  [4900, 'about 1 hour 20 minutes left'],
])('%d seconds are "%s"', (seconds, say) => {
  expect(sayLeft(seconds)).toBe(say);
});

it('no time is told as sixty minutes', () => {
  const said = Array.from({ length: 3000 }, (_, i) => sayTime(50 + 7 * i));
  expect(said.filter((each) => /\b60 minutes|\b0 /.test(each))).toEqual([]);
});

describe('a map of the shelf', () => {
  const map: ShelfMap = {
    name: 'Vale',
    roads: 12_345,
    bytes: 41e6,
    dataDate: '2026-05-01',
    imported: '2026-06-02T10:00:00Z',
    sources: [{ name: 'vale.osm.pbf', sha256: '' }],
    state: 'ready',
    origin: 'file',
    mainRoadsOnly: false,
    area: { zoom: 12, tiles: [] },
  };

  it('says what it holds and where it came from', () => {
    expect(sayHolds(map)).toBe('12,345 roads, 41 MB');
    expect(sayHolds({ ...map, mainRoadsOnly: true })).toBe('12,345 roads, main roads alone, 41 MB');
    expect(sayHolds({ ...map, around: ['Oakham', 'Uppingham'] })).toBe(
      'Around Oakham and Uppingham: 12,345 roads, 41 MB',
    );
    expect(sayOrigin(map)).toBe('From vale.osm.pbf, taken in 2 June 2026');
    expect(sayOrigin({ ...map, origin: 'line' })).toBe('Fetched along a drive, 2 June 2026');
  });

  it('is doubtful when it is over six months old or has no date', () => {
    expect(sayAge(map, '2026-10-30T00:00:00Z').doubtful).toBe(false);
    expect(sayAge(map, '2026-11-02T00:00:00Z').doubtful).toBe(true);
    expect(sayAge({}, '2026-11-02T00:00:00Z')).toMatchObject({
      doubtful: true,
      say: expect.stringContaining('undated'),
    });
  });

  it('says in words where it lies, whose drawing a screen reader cannot show', () => {
    // a square of zoom 8 is 156.5 km wide at the equator: 40,075 km through 256
    const equator = {
      zoom: 8,
      tiles: [
        [128, 127],
        [129, 127],
      ] as [number, number][],
    };
    expect(sayArea(equator, 'metric')).toBe('About 314 km by 157 km round 0.7° N 1.4° E.');
    expect(sayArea({ zoom: 8, tiles: [] }, 'metric')).toBe('');
  });

  it('is named in the line at the foot with the date of the oldest', () => {
    const sources = [{ name: 'a', sha256: '', dataDate: '2026-05-01' }];
    const { maps } = shelf;
    expect(sayFromShelf({ maps, sources })).toBe('From your shelf: Vale, data of 2026-05-01');
    const several = { maps: ['Vale', 'Wold', 'Fen', 'Moor'], sources: [...sources, {}] };
    expect(sayFromShelf(several)).toBe('From your shelf: Vale, Wold and 2 more, its date is not known');
    expect(sayFromShelf({ maps: [], sources: [] })).toBe('From your shelf: nothing near this drive');
    // opened to plan on, about no drive: no data has been read yet
    expect(sayFromShelf({ maps, sources: [] })).toBe('From your shelf: Vale');
  });
});
