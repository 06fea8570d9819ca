import { describe, expect, it } from 'vitest';
import { isSettled, saySettledCount } from '../../../geo/report/is-settled.ts';
import type { Finding } from '../../../geo/report/report.ts';
import { sayFolded, sayFoldedPlaces } from '../../../geo/report/say-slight.ts';
import { bridgeAbove } from '../../../geo/rules/overhead/bridge-above.ts';
import { roofed } from '../../../geo/rules/overhead/roofed.ts';
import { across, area, askAround, road } from '../../support/ask-around.ts';

const MAIN = road({ highway: 'primary' });
const BRIDGE = { highway: 'unclassified', bridge: 'yes', layer: '1' };

const bridges = (...xs: number[]) =>
  askAround(bridgeAbove, [MAIN, ...xs.map((x, i) => across(7 + i, x, BRIDGE))]);
const made = (from: Partial<Finding> = {}): Finding => ({
  id: 'map:off:50.00000,7.00000',
  level: 'unknown',
  subject: 'map',
  kind: 'off the map',
  fromM: 0,
  toM: 50,
  at: { lat: 50, lon: 7 },
  osm: [],
  tags: {},
  say: '',
  advice: '',
  folded: true,
  ...from,
});

function shown(from: Partial<Finding>): Finding {
  const { folded: _, ...rest } = made(from);
  return rest;
}

describe('what is folded away', () => {
  it('is counted in one line: bridges over a main road without a height', () => {
    expect(sayFolded(bridges(1))).toBe('One bridge without a height: read the signs.');
    expect(sayFolded(bridges(1, 3))).toBe('2 bridges without a height: read the signs.');
  });

  it('tunnels, buildings, bits off the map, breaks and the rest each by their name', () => {
    const findings = [
      ...bridges(1, 3),
      ...askAround(roofed, [road({ highway: 'primary', tunnel: 'yes' })]),
      ...askAround(bridgeAbove, [MAIN, area(9, 2, -1, 2.2, 1, { building: 'yes' })]),
      made(),
      made({ kind: 'gap in the route' }),
      made({ subject: 'width', kind: 'unreadable' }),
      made({ subject: 'slope', kind: 'climb', level: 'care' }),
      made({ subject: 'narrow', kind: 'bus', level: 'care' }),
    ];
    expect(sayFolded(findings)).toBe(
      '2 bridges without a height, one tunnel without a height, one building drawn over the road, one short bit off the map, one short break in the route, one limit that does not seem to bind this vehicle and 2 other minor places: read the signs.',
    );
  });

  it('asks for no sign where none could settle it', () => {
    expect(sayFolded([made(), made({ level: 'care', subject: 'slope', kind: 'climb' })])).toBe(
      'One short bit off the map and one other minor place.',
    );
  });

  it('tells what may stop the vehicle by its name: corners beyond the worst, places met again', () => {
    expect(
      sayFolded([
        made({ level: 'tight', subject: 'turn', kind: 'back up once' }),
        made({ level: 'tight', subject: 'turn', kind: 'back up once' }),
        made({ level: 'tight', subject: 'ground', kind: 'soft' }),
      ]),
    ).toBe('2 further corners where it has to back up once and one place told above and met again.');
  });

  it('is not what is shown, and nothing is said of nothing', () => {
    expect(sayFolded([...bridges(1), shown({})])).toBe(sayFolded(bridges(1)));
    expect(sayFolded([shown({})])).toBeUndefined();
    expect(sayFolded([])).toBeUndefined();
  });
});

describe('what is folded though it may stop the vehicle', () => {
  const corner = { level: 'tight', subject: 'turn', kind: 'back up once' } as const;

  it('is told with every place: each road once, with its kilometres in driving order', () => {
    const findings = [
      made({ subject: 'height', kind: 'bridge above', fromM: 700, road: 'Mill Lane' }),
      made({ ...corner, fromM: 2100 }),
      made({ subject: 'height', kind: 'bridge above', fromM: 2500, road: 'A7' }),
      made({ subject: 'height', kind: 'bridge above', fromM: 3400, road: 'Mill Lane' }),
    ];
    expect(sayFoldedPlaces(findings, 'metric')).toEqual([
      'Bridges without a height (read the signs): Mill Lane at 0.7 km, 3.4 km; A7 at 2.5 km.',
      'Further corner where it has to back up once: a road without a name at 2.1 km.',
    ]);
  });

  it('leaves out what has a number, what only asks for care, and what the firm’s own note settles', () => {
    expect(
      sayFoldedPlaces(
        [shown(corner), made({ level: 'care', subject: 'slope', kind: 'climb' }), made({ note: 'n1' })],
        'metric',
      ),
    ).toEqual([]);
  });
});

describe('what the firm’s own notes settle', () => {
  it('is folded, counted as one or as several, and nothing where there is none', () => {
    const limit = { value: 3.4, unit: 'm', asMapped: '3.4' } as const;
    const settled = { folded: true, note: 'n1', limit } as const;
    expect(isSettled(made(settled))).toBe(true);
    for (const less of [{ folded: false }, { note: undefined }, { limit: undefined }])
      expect(isSettled({ ...made(), ...settled, ...less } as Finding)).toBe(false);
    expect([0, 1, 2].map(saySettledCount)).toEqual([
      '',
      '1 settled by the firm’s own note',
      '2 settled by the firm’s own notes',
    ]);
  });
});
