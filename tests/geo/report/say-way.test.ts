import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../geo/report/finding.ts';
import {
  sayBy,
  sayExtra,
  sayExtraShort,
  sayLeaves,
  sayOnWay,
  sayStillBarred,
  sayTightest,
  sayWaysFound,
} from '../../../geo/report/say-way.ts';

const cost = (extraS: number, extraM: number) => ({ extraS, extraM });

describe('what a way costs', () => {
  it.each([
    [240, 2100, '4 minutes more, 2.1 km longer'],
    [60, 300, '1 minute more, 300 m longer'],
    [-180, -800, '3 minutes less, 800 m shorter'],
    [420, -1200, '7 minutes more, but 1.2 km shorter'],
    [-90, 500, '2 minutes less, but 500 m longer'],
    [20, 1500, '1.5 km longer, in about the same time'],
    [300, 30, '5 minutes more, about as far'],
    [0, 0, 'about as long as the drive’s own road'],
    [3 * 3600, 90_000, '3 h 0 min more, 90.0 km longer'],
  ])('%i s and %i m are told as: %s', (s, m, says) => {
    expect(sayExtra(cost(s, m), 'metric')).toBe(says);
  });

  it('is told in miles where those were chosen', () => {
    expect(sayExtra(cost(240, 3219), 'imperial')).toBe('4 minutes more, 2.0 mi longer');
  });

  it('is told with how much of the drive it takes the place of', () => {
    expect(sayLeaves({ fromM: 2171, toM: 13_673 }, 'metric')).toBe(
      'Off the drive at 2.2 km, back on it at 13.7 km',
    );
    expect(sayLeaves({ fromM: 48_859, toM: 49_283 }, 'imperial')).toMatch(/ mi, back on it at .* mi$/);
  });

  it('is told short, with its sign, for drawings', () => {
    expect(sayExtraShort(cost(240, 2100), 'metric')).toEqual(['+4 min', '+2.1 km']);
    expect(sayExtraShort(cost(-240, -2100), 'both')).toEqual(['−4 min', '−2.1 km']);
    expect(sayExtraShort(cost(4, 4), 'metric')).toEqual(['±0 min', '±0']);
  });
});

describe('the roads of a way', () => {
  const road = (lengthM: number, called: { ref?: string; name?: string } = {}) => ({
    way: 1,
    forward: true,
    fromM: 0,
    toM: lengthM,
    ...called,
  });

  it('are named by their longest four, in the order driven, a number before a name', () => {
    const roads = [
      road(300, { ref: 'B188', name: 'High Street' }),
      road(40, { name: 'Cut' }),
      road(900),
      road(200, { name: 'Mill Lane' }),
      road(400, { ref: 'B188' }),
      road(100, { ref: 'L282' }),
      road(80, { name: 'Ford Road' }),
    ];
    expect(sayBy({ roads })).toBe('by B188, Mill Lane, L282 and Ford Road');
  });

  it('are not named where the map has no names', () => {
    expect(sayBy({ roads: [road(500)] })).toBeUndefined();
  });
});

describe('the least room on a way', () => {
  const tightest = (spare: number, unit: string) => ({
    tightest: { subject: 'height' as const, kind: 'posted' as never, spare, unit, say: '' },
  });

  it('is rounded against the driver, and said to be over where it is', () => {
    expect(sayTightest(tightest(0.459, 'm'), 'metric')).toBe('height, 0.45 m to spare');
    expect(sayTightest(tightest(-0.051, 'm'), 'metric')).toBe('height, 0.06 m over');
    expect(sayTightest(tightest(120, 'kg'), 'metric')).toBe('height, 120 kg to spare');
  });

  it('is nothing where no limit is mapped', () => {
    expect(sayTightest({}, 'metric')).toBeUndefined();
  });
});

describe('what stands on a way', () => {
  const none = { barred: 0, tight: 0, unknown: 0, care: 0 } as const;

  it('is counted by its worst level, the others after it', () => {
    expect(sayOnWay({ verdict: 'tight', counts: { ...none, tight: 1, unknown: 2, care: 3 } })).toBe(
      ' at 1 place, also 2 unknown and 3 take care',
    );
    expect(sayOnWay({ verdict: 'care', counts: { ...none, care: 3 } })).toBe(' at 3 places');
  });

  it('is nothing where nothing mapped stops it', () => {
    expect(sayOnWay({ verdict: 'clear', counts: none })).toBe('');
  });
});

describe('what a screen reader hears', () => {
  it('is how many ways there are, past what, and what the first costs', () => {
    const ways = [cost(240, 2100), cost(300, 3000)];
    expect(sayWaysFound(ways, 'Mill Lane bridge', 'metric')).toBe(
      '2 ways past Mill Lane bridge: the first 4 minutes more, 2.1 km longer.',
    );
    expect(sayWaysFound(ways.slice(1), 'Mill Lane', 'metric')).toBe(
      'One way past Mill Lane: 5 minutes more, 3.0 km longer.',
    );
    expect(sayWaysFound([], 'Mill Lane', 'metric')).toBe('No way past Mill Lane was found.');
  });
});

it('a way past one of several bars names those that still bar the drive, and none that its own stretch leaves out', () => {
  const bar = (id: string, fromM: number, road?: string) =>
    ({ id, level: 'barred', subject: 'width', kind: 'gap', fromM, road }) as unknown as Finding;
  const bars = [bar('a', 2200, 'Tanner Row'), bar('b', 3000), bar('c', 7100, 'Oxholt Bridge')];
  const way = { findingIds: ['a'], fromM: 2000, toM: 4000 };
  expect(sayStillBarred(way, bars, 'metric')).toBe('Still barred at Oxholt Bridge, 7.1 km');
  expect(sayStillBarred({ ...way, toM: 8000 }, bars, 'metric')).toBeUndefined();
});

describe('figures that are rarer', () => {
  it('a way that is shorter and takes as long says so, and is drawn in feet and miles alone where those were chosen', () => {
    expect(sayExtra(cost(10, -1500), 'metric')).toBe('1.5 km shorter, in about the same time');
    expect(sayExtraShort(cost(240, 3219), 'imperial')).toEqual(['+4 min', '+2.0 mi']);
  });

  it('of many places that still bar, four are named and the rest counted; a road without a name goes by its subject', () => {
    const bars = Array.from({ length: 6 }, (_, i) => ({
      id: `b${i}`,
      level: 'barred',
      subject: 'height',
      kind: 'limit',
      fromM: 10_000 + 1000 * i,
      ...(i === 0 ? {} : { road: `Mill Lane ${i}` }),
    })) as unknown as Finding[];
    expect(sayStillBarred({ findingIds: ['own'], fromM: 0, toM: 500 }, bars, 'metric')).toBe(
      'Still barred at height, 10.0 km, Mill Lane 1, 11.0 km, Mill Lane 2, 12.0 km, Mill Lane 3, 13.0 km and 2 other places',
    );
  });
});
