import { describe, expect, it } from 'vitest';
import { namePlace, namePlaceInLine } from '../../../geo/report/name-place.ts';
import type { Finding } from '../../../geo/report/report.ts';

const finding = (from: Partial<Finding> = {}): Finding => ({
  id: 'width:n1',
  level: 'barred',
  subject: 'width',
  kind: 'limit',
  fromM: 2210,
  toM: 2210,
  at: { lat: 50, lon: 7 },
  osm: [],
  tags: {},
  say: '',
  advice: '',
  ...from,
});

const TOO_WIDE: Partial<Finding> = {
  road: 'Tanner Row',
  limit: { value: 2, unit: 'm', asMapped: '2' },
  vehicle: { value: 2.35, unit: 'm', what: 'body' },
  spare: -0.35,
};

describe('the name of a place', () => {
  it('is its level and subject, the figure that decides, road and kilometre', () => {
    expect(namePlaceInLine(finding(TOO_WIDE), 'metric')).toBe(
      'Barred width: 0.35 m over, Tanner Row, 2.2 km',
    );
    expect(namePlace(finding({ ...TOO_WIDE, level: 'tight', spare: 0.1 }), 'metric').figure).toBe(
      '0.10 m spare',
    );
  });

  it('of the map itself says what is wrong with it', () => {
    expect(
      namePlaceInLine(
        finding({ level: 'unknown', subject: 'map', kind: 'off the map', toM: 3000 }),
        'metric',
      ),
    ).toBe('Unknown off the map: for 790 m, 2.2 km');
  });

  it('does not take the way between guesses for guessed', () => {
    const guesses = finding({ level: 'unknown', subject: 'map', kind: 'guessed', toM: 15_000 });
    expect(namePlaceInLine(guesses, 'metric')).toBe('Unknown road guessed: 2.2 km');
  });

  it('makes up neither a figure nor a road where none is mapped', () => {
    expect(namePlaceInLine(finding({ subject: 'access', kind: 'closed' }), 'metric')).toBe(
      'Barred access: 2.2 km',
    );
    expect(
      namePlaceInLine(finding({ level: 'unknown', subject: 'height', kind: 'bridge above' }), 'metric'),
    ).toBe('Unknown height: no figure, 2.2 km');
  });
});
