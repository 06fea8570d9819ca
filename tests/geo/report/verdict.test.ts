import { describe, expect, it } from 'vitest';
import { LEVELS, type Level, VERDICTS } from '../../../geo/report/level.ts';
import type { Finding } from '../../../geo/report/report.ts';
import { liesElsewhere, sayOverall, sayVerdict } from '../../../geo/report/say-verdict.ts';
import { decidingPlaces, verdictOf } from '../../../geo/report/verdict.ts';

const finding = (level: Level, folded?: true): Finding => ({
  id: `map:${level}`,
  level,
  subject: 'map',
  kind: 'off the map',
  fromM: 0,
  toM: 50,
  at: { lat: 50, lon: 7 },
  osm: [],
  tags: {},
  say: '',
  advice: '',
  ...(folded ? { folded } : {}),
});

describe('the verdict', () => {
  it('is the worst level among the findings', () => {
    expect(verdictOf([finding('care'), finding('tight'), finding('unknown')])).toBe('tight');
    for (const level of LEVELS) expect(verdictOf([finding('care'), finding(level)])).toBe(level);
  });

  it('is not coloured by what is folded', () => {
    expect(verdictOf([finding('unknown', true), finding('care')])).toBe('care');
    expect(verdictOf([finding('unknown', true), finding('care', true)])).toBe('clear');
  });

  it('is clear where there is nothing', () => {
    expect(verdictOf([])).toBe('clear');
  });
});

describe('the places that decide', () => {
  const findings = [
    finding('care'),
    finding('barred'),
    finding('tight'),
    finding('barred', true),
    finding('barred'),
  ];

  it('are those of the verdict’s level in driving order, the folded ones left out', () => {
    expect(decidingPlaces(findings, 'barred')).toEqual([findings[1], findings[4]]);
    expect(decidingPlaces(findings, 'tight')).toEqual([findings[2]]);
  });

  it('leave out what is guessed: a sentence tells it as a whole', () => {
    const guess = { ...finding('unknown'), kind: 'guessed' as const };
    expect(decidingPlaces([guess, finding('unknown')], 'unknown')).toEqual([finding('unknown')]);
  });

  it('are none where nothing stops the vehicle', () => {
    expect(decidingPlaces(findings, 'care')).toEqual([]);
    expect(decidingPlaces([], 'clear')).toEqual([]);
  });
});

describe('the verdict in words', () => {
  it('says of a drive with minor places alone what they are, and of an empty one that it is no promise', () => {
    const bridge = { ...finding('unknown', true), kind: 'bridge above' as const, subject: 'height' as const };
    expect(sayVerdict({ verdict: 'clear', findings: [bridge, bridge] })).toBe(
      '2 bridges without a height: read the signs.',
    );
    expect(sayVerdict({ verdict: 'clear', findings: [] })).toMatch(/no promise/);
  });

  it('never calls a drive safe', () => {
    for (const verdict of VERDICTS)
      expect(sayVerdict({ verdict, findings: [] })).not.toMatch(/safe|fine|\bok\b/i);
  });

  it('counts the places of its level, the folded ones left out', () => {
    const findings = [finding('unknown'), finding('unknown'), finding('unknown', true), finding('care')];
    expect(sayVerdict({ verdict: 'unknown', findings })).toBe(
      'Nothing mapped bars it, but at 2 places nothing says whether it gets through. Find out before you drive it.',
    );
    const long = { ...finding('unknown'), fromM: 500, toM: 11_000 };
    expect(sayVerdict({ verdict: 'unknown', findings: [long, { ...long, toM: 2_000 }] }, 'metric')).toContain(
      'at 2 places, 10.5 km in all, nothing says',
    );
    expect(sayVerdict({ verdict: 'care', findings })).toBe(
      'Nothing mapped stops it. Drive with care at one place.',
    );
  });
});

it('of a drive that the map has no roads under nothing is said but that nothing is checked', () => {
  const route = { name: '', file: 'a.gpx', lengthM: 5000, segments: 1, positions: 9 };
  const of = { verdict: 'unknown' as const, findings: [], route };
  expect(sayOverall({ ...of, match: { drivenM: 0, offMapM: 5000, guessedM: 0 } })).toMatch(
    /^The map has no roads under this drive, so nothing on it is checked/,
  );
  expect(sayOverall({ ...of, match: { drivenM: 5000, offMapM: 0, guessedM: 0 } })).toMatch(
    /^Nothing mapped bars it/,
  );
});

describe('a map of another place', () => {
  it('has next to none of the drive on its roads', () => {
    expect(liesElsewhere({ drivenM: 0 }, 5000)).toBe(true);
    expect(liesElsewhere({ drivenM: 99 }, 5000)).toBe(true);
  });

  it('is not told of a drive that lies half off the roads, nor of one without length', () => {
    expect(liesElsewhere({ drivenM: 2500 }, 5000)).toBe(false);
    expect(liesElsewhere({ drivenM: 0 }, 0)).toBe(false);
  });
});
