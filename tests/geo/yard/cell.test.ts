import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../geo/report/finding.ts';
import type { Level } from '../../../geo/report/level.ts';
import { cellOf } from '../../../geo/yard/cell.ts';
import { staleOf } from '../../../geo/yard/made-of.ts';
import { mapKey } from '../../../geo/yard/map-key.ts';
import { sayStale } from '../../../geo/yard/say-cell.ts';
import { whatStopsMost } from '../../../geo/yard/stops-most.ts';

const height = (id: number, level: Level, limitM: number, spareM: number): Finding => ({
  id: `height:w${id}f`,
  level,
  subject: 'height',
  kind: 'limit',
  fromM: id,
  toM: id,
  at: { lat: 50, lon: 7 },
  road: `Bridge ${id}`,
  osm: [{ type: 'way', id }],
  tags: {},
  limit: { value: limitM, unit: 'm', asMapped: String(limitM) },
  spare: spareM,
  say: '',
  advice: '',
});

describe('a cell of the grid', () => {
  it('has the verdict, what is counted at each level, and what stops the vehicle', () => {
    const findings = [
      height(1, 'barred', 2.9, -0.15),
      height(2, 'tight', 3.1, 0.05),
      { ...height(3, 'barred', 2, -1), folded: true as const },
    ];
    expect(cellOf({ verdict: 'barred', findings })).toMatchObject({
      verdict: 'barred',
      counts: { barred: 1, tight: 1, unknown: 0, care: 0 },
      tightest: { finding: 'height:w1f', subject: 'height', spare: -0.15, unit: 'm' },
      stops: [{ key: 'height:way1', road: 'Bridge 1' }],
      trouble: [
        { level: 'barred', fromM: 1 },
        { level: 'tight', fromM: 2 },
      ],
    });
  });

  it('tells the smallest spare against its limit, of the worst level that has one', () => {
    const unknown: Finding = { ...height(9, 'unknown', 3, 0), spare: undefined, limit: undefined };
    const findings = [
      height(1, 'care', 3, 0),
      height(2, 'tight', 4, 0.2),
      height(3, 'tight', 3, 0.18),
      unknown,
    ];
    // 0.2 of 4 m is 5 %, 0.18 of 3 m is 6 %
    expect(cellOf({ verdict: 'tight', findings }).tightest?.finding).toBe('height:w2f');
    expect(cellOf({ verdict: 'unknown', findings: [unknown] })).not.toHaveProperty('tightest');
  });
});

describe('what stops most', () => {
  it('is the bridge that stops most drives and vehicles', () => {
    const stops = (...ids: number[]) =>
      cellOf({ verdict: 'barred', findings: ids.map((id) => height(id, 'barred', 2.9, -0.1)) });
    const most = whatStopsMost([
      { drive: 'a', vehicle: 'high', cell: stops(1, 2) },
      { drive: 'b', vehicle: 'high', cell: stops(2, 2) },
      { drive: 'b', vehicle: 'low', cell: stops(2) },
    ]);
    expect(most.map(({ place, cells, drives, vehicles }) => [place.key, cells, drives, vehicles])).toEqual([
      ['height:way2', 3, ['a', 'b'], ['high', 'low']],
      ['height:way1', 1, ['a'], ['high']],
    ]);
  });
});

describe('a cell is stale', () => {
  const was = { map: 'm', card: 'c', note: 'n', margin: 'g', drive: 'd' };

  it('where map, card, notes or margins are others', () => {
    expect(staleOf(was, was)).toEqual([]);
    expect(staleOf(was, { ...was, note: 'other', map: 'newer' })).toEqual(['map', 'note']);
    expect(staleOf(was, { ...was, card: 'longer', margin: 'wider' })).toEqual(['card', 'margin']);
  });

  it('where the leave time, the stops or the return hour are others: what it said is compared, not thrown away', () => {
    const day = { ...was, leave: 'l', day: 'd' };
    expect(staleOf(day, { ...day, leave: 'at night' })).toEqual(['leave']);
    expect(staleOf(day, { ...day, day: 'home by six' })).toEqual(['day']);
    expect(sayStale(['leave'])).toBe('Out of date, check again: since then the leave time is another');
  });

  it('and another altogether where the drive is', () => {
    expect(staleOf(was, { ...was, drive: 'other' })).toBeUndefined();
  });

  it('by the maps that lie where the drive does', () => {
    const part = (sha256: string, west: number, east: number) => ({
      source: { sha256 },
      box: { south: 50, north: 51, west, east },
    });
    const about = { south: 50.4, north: 50.6, west: 7, east: 7.2 };
    const key = mapKey([part('b', 6, 8), part('a', 7.1, 9)], about);
    expect(key).toBe('a b');
    expect(mapKey([part('far', 10, 11), part('a', 7.1, 9), part('b', 6, 8)], about)).toBe(key);
    expect(mapKey([part('b', 6, 8)], about)).not.toBe(key);
    // a drive across the antimeridian
    const across = { south: 50.4, north: 50.6, west: 179.9, east: 180.1 };
    expect(mapKey([part('west', 178, 180), part('east', -180, -179)], across)).toBe('east west');
  });
});
