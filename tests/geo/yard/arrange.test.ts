import { describe, expect, it } from 'vitest';
import type { Verdict } from '../../../geo/report/level.ts';
import { type Arrangement, arrange, type RowCell } from '../../../geo/yard/arrange.ts';
import type { Cell } from '../../../geo/yard/cell.ts';

const drive = (id: string, name: string, lengthM: number) => ({ id, name, file: `${id}.gpx`, lengthM });
const DRIVES = [
  drive('a', 'Day 10 to Überdorf', 90_000),
  drive('b', 'Day 2', 40_000),
  drive('c', 'Coast', 60_000),
];

const stop = (road: string): Cell['stops'][number] => ({
  key: road,
  subject: 'height',
  kind: 'limit',
  road,
  at: { lat: 50, lon: 7 },
});
const cell = (vehicle: string, verdict: Verdict, count = 1, ...roads: string[]): RowCell => ({
  vehicle,
  cell: {
    verdict,
    counts: {
      barred: 0,
      tight: 0,
      unknown: 0,
      care: 0,
      ...(verdict === 'clear' ? {} : { [verdict]: count }),
    },
    stops: roads.map(stop),
    trouble: [],
  },
  stale: [],
  changes: [],
});
const CELLS: Record<string, readonly RowCell[]> = {
  a: [cell('high', 'barred', 1, 'Mill Lane'), cell('low', 'clear')],
  b: [cell('high', 'barred', 3, 'Church Lane'), cell('low', 'barred', 1, 'Church Lane')],
};

const all: Arrangement = { text: '', takes: 'any', order: 'name' };
const shown = (asked: Partial<Arrangement>) =>
  arrange(DRIVES, (id) => CELLS[id] ?? [], { ...all, ...asked }).map(({ id }) => id);

describe('the drives of the grid', () => {
  it('stand by name as people count, by length, or the worst first with the unchecked last', () => {
    expect(shown({})).toEqual(['c', 'b', 'a']);
    expect(shown({ order: 'length' })).toEqual(['a', 'c', 'b']);
    expect(shown({ order: 'worst' })).toEqual(['b', 'a', 'c']);
    expect(shown({ order: 'worst', vehicle: 'low' })).toEqual(['b', 'a', 'c']);
  });

  it('count by the length of the roads followed, once it is known, and as drawn until then', () => {
    const followed = (lengthM: number) => [
      { ...cell('low', 'clear'), cell: { ...cell('low', 'clear').cell, lengthM } },
    ];
    const cells: Record<string, readonly RowCell[]> = { b: followed(95_000), c: [cell('low', 'clear')] };
    const asked = (more: Partial<Arrangement>) =>
      arrange(DRIVES, (id) => cells[id] ?? [], { ...all, ...more }).map(({ id }) => id);
    expect(asked({ order: 'length' })).toEqual(['b', 'a', 'c']);
    expect(asked({ shortestM: 80_000 })).toEqual(['b', 'a']);
  });

  it('are found by name, file or the road that stops somebody, whatever the capitals and accents', () => {
    expect(shown({ text: 'uberdorf' })).toEqual(['a']);
    expect(shown({ text: 'c.gpx' })).toEqual(['c']);
    expect(shown({ text: 'church day' })).toEqual(['b']);
    expect(shown({ text: 'church coast' })).toEqual([]);
  });

  it('are those a vehicle can take: checked, and nothing bars it', () => {
    expect(shown({ takes: 'takes', vehicle: 'low' })).toEqual(['a']);
    expect(shown({ takes: 'barred', vehicle: 'low' })).toEqual(['b']);
    expect(shown({ takes: 'takes' })).toEqual(['a']);
    expect(shown({ longestM: 60_000 })).toEqual(['c', 'b']);
    expect(shown({ shortestM: 50_000, longestM: 60_000 })).toEqual(['c']);
    expect(shown({ near: new Set(['b', 'gone']) })).toEqual(['b']);
    expect(shown({ stoppedAt: 'Mill Lane' })).toEqual(['a']);
  });
});
