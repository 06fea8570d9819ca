import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../geo/report/finding.ts';
import { driveByWays, type WayOnDrive } from '../../../../geo/report/ways/drive-by-ways.ts';
import { sayDriveByWays } from '../../../../geo/report/ways/say-drive-by-ways.ts';

const found = (id: string, fromM: number, more: Partial<Finding> = {}) =>
  ({
    id,
    level: 'barred',
    subject: 'width',
    kind: 'gap',
    fromM,
    toM: fromM,
    osm: [{ type: 'way', id: fromM }],
    ...more,
  }) as Finding;
const BRIDGE = { level: 'unknown', subject: 'height', kind: 'bridge above', folded: true } as const;
const way = (findingIds: string[], fromM: number, toM: number, findings: Finding[] = []): WayOnDrive => ({
  findingIds,
  fromM,
  toM,
  findings,
});
const DRIVE = [
  found('a', 2200, { road: 'Tanner Row' }),
  found('b', 3000),
  found('c', 7100, { road: 'Oxholt Bridge' }),
];

const said = (...by: Parameters<typeof driveByWays>) => sayDriveByWays(driveByWays(...by), 'metric');

describe('a drive by a way round', () => {
  it('is barred still by what lies off the way, and that is named first', () => {
    expect(said(DRIVE, [way(['a'], 2000, 4000)])).toEqual({
      verdict: 'barred',
      say: 'Still barred: Oxholt Bridge at 7.1 km. Do not drive it like this.',
      folded: undefined,
    });
  });

  it('is free of what several ways pass together', () => {
    const ways = [way(['c'], 7000, 8000), way(['a', 'b'], 2000, 4000)];
    expect(said(DRIVE, ways).verdict).toBe('clear');
  });

  it('tells of bridges without a height on the way and beside it as of those of any drive', () => {
    const findings = [found('a', 2200), found('seen', 9000, BRIDGE)];
    const by = way(['a'], 2000, 4000, [found('new', 100, BRIDGE)]);
    expect(said(findings, [by])).toMatchObject({
      verdict: 'clear',
      say: '2 bridges without a height: read the signs.',
    });
    const care = found('bend', 300, { level: 'care', subject: 'swing', kind: 'tail' as never });
    expect(said(findings, [way(['a'], 2000, 4000, [care])])).toMatchObject({
      verdict: 'care',
      say: 'Nothing mapped stops it. Drive with care at one place.',
      folded: 'One bridge without a height: read the signs.',
    });
  });

  it('still meets what begins before the way or ends behind it, once', () => {
    const zone = found('zone', 1000, {
      toM: 3000,
      subject: 'zone',
      level: 'care',
      osm: [{ type: 'way', id: 7 }],
    });
    const own = { ...zone, fromM: 0, toM: 400 };
    const { findings } = driveByWays([zone, found('a', 3500)], [way(['a'], 2000, 4000, [own])]);
    expect(findings.map(({ id }) => id)).toEqual(['zone']);
  });

  it('does not keep folded what was folded beside a place that the way goes past', () => {
    const folded = found('again', 9000, { folded: true });
    expect(driveByWays([found('first', 2500), folded], [way(['first'], 2000, 4000)]).verdict).toBe('barred');
  });

  it('has its findings where they are placed, in that order', () => {
    const ways = [way(['a', 'b'], 2000, 4000, [found('new', 700, { level: 'care' })])];
    const place = (finding: Finding, on?: WayOnDrive) => ({
      ...finding,
      fromM: finding.fromM + (on === undefined ? 500 : on.fromM),
    });
    expect(driveByWays(DRIVE, ways, place).findings.map(({ id, fromM }) => [id, fromM])).toEqual([
      ['new', 2700],
      ['c', 7600],
    ]);
  });

  it('names four places that still bar and counts the rest; a road without a name goes by its subject', () => {
    const bars = Array.from({ length: 6 }, (_, i) =>
      found(`b${i}`, 10_000 + 1000 * i, i === 0 ? { subject: 'height' } : { road: `Mill Lane ${i}` }),
    );
    expect(said(bars, [way(['own'], 0, 500)]).say).toBe(
      'Still barred: height at 10.0 km, Mill Lane 1 at 11.0 km, Mill Lane 2 at 12.0 km, Mill Lane 3 at 13.0 km and 2 other places. Do not drive it like this.',
    );
  });
});
