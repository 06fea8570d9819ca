import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../geo/report/finding.ts';
import {
  sayBy,
  sayExtra,
  sayExtraShort,
  sayLeaves,
  sayTightest,
  sayWayItself,
  sayWaysFound,
} from '../../../../geo/report/ways/say-way.ts';

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

  it('are said to have no name where the map has none, and to be none where a loop is left out', () => {
    expect(sayBy({ roads: [road(500)] })).toBe('by roads without a name');
    expect(sayBy({ roads: [] })).toContain('leaves out a loop');
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

describe('what is met on a way itself', () => {
  const none = { barred: 0, tight: 0, unknown: 0, care: 0 } as const;
  const bridge = { folded: true, level: 'unknown', kind: 'bridge above', subject: 'height' };
  const findings = [bridge, bridge] as unknown as Finding[];

  it('is counted by its worst level, the others after it', () => {
    expect(
      sayWayItself({ verdict: 'tight', counts: { ...none, tight: 1, unknown: 2, care: 3 }, findings: [] }),
    ).toBe('The way itself: tight at 1 place, also 2 unknown and 3 take care.');
    expect(sayWayItself({ verdict: 'care', counts: { ...none, care: 3 }, findings: [] })).toBe(
      'The way itself: take care at 3 places.',
    );
  });

  it('tells of bridges that nobody measured where nothing mapped stops it', () => {
    expect(sayWayItself({ verdict: 'clear', counts: none, findings })).toBe(
      'The way itself: nothing mapped stops it. 2 bridges without a height: read the signs.',
    );
    expect(sayWayItself({ verdict: 'clear', counts: none, findings: [] })).toBe(
      'The way itself: nothing mapped stops it.',
    );
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

describe('figures that are rarer', () => {
  it('a way that is shorter and takes as long says so, and is drawn in feet and miles alone where those were chosen', () => {
    expect(sayExtra(cost(10, -1500), 'metric')).toBe('1.5 km shorter, in about the same time');
    expect(sayExtraShort(cost(240, 3219), 'imperial')).toEqual(['+4 min', '+2.0 mi']);
  });
});
