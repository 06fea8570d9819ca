import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../geo/report/report.ts';
import { saySlight } from '../../../geo/report/say-slight.ts';
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

describe('a verdict that rests on what is folded away alone', () => {
  it('is told by what it is: bridges over a main road without a height', () => {
    expect(saySlight(bridges(1), 'unknown')).toBe('one bridge over the road without a mapped height');
    expect(saySlight(bridges(1, 3), 'unknown')).toBe('2 bridges over the road without a mapped height');
  });

  it('tunnels, buildings, bits off the map, breaks and the rest each by their name', () => {
    const findings = [
      ...bridges(1, 3),
      ...askAround(roofed, [road({ highway: 'primary', tunnel: 'yes' })]),
      ...askAround(bridgeAbove, [MAIN, area(9, 2, -1, 2.2, 1, { building: 'yes' })]),
      made(),
      made({ kind: 'gap in the route' }),
      made({ subject: 'width', kind: 'unreadable' }),
    ];
    expect(saySlight(findings, 'unknown')).toBe(
      '2 bridges over the road without a mapped height, one tunnel without a mapped height, one building drawn over the road, one short bit off the mapped roads, one short break in the route and one limit whose figures leave the vehicle free',
    );
  });

  it('is not told where one of that level is shown, or the verdict is another', () => {
    expect(saySlight([...bridges(1), shown({})], 'unknown')).toBeUndefined();
    expect(saySlight([...bridges(1), shown({ level: 'care' })], 'unknown')).toBeDefined();
    expect(saySlight(bridges(1), 'care')).toBeUndefined();
    expect(saySlight([], 'clear')).toBeUndefined();
  });

  it('of any other level is counted', () => {
    const cares = [
      made({ level: 'care', subject: 'slope', kind: 'climb' }),
      made({ level: 'care', subject: 'narrow', kind: 'bus' }),
    ];
    expect(saySlight(cares, 'care')).toBe('2 places of little weight');
  });
});
