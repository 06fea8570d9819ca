import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../geo/yard/cell.ts';
import { gridCsv, gridTold } from '../../../geo/yard/grid-told.ts';
import { sayCell } from '../../../geo/yard/say-cell.ts';

const low: Cell = {
  verdict: 'barred',
  counts: { barred: 2, tight: 1, unknown: 0, care: 0 },
  tightest: { finding: 'height:w1f', subject: 'height', spare: -0.213, unit: 'm' },
  stops: [],
  trouble: [],
};
const free: Cell = {
  verdict: 'clear',
  counts: { barred: 0, tight: 0, unknown: 0, care: 0 },
  stops: [],
  trouble: [],
};
const grid = {
  drives: [
    { id: 'd2', name: '=HYPERLINK("http://x")' },
    { id: 'd1', name: 'To the coast, by the mill' },
  ],
  vehicles: [{ id: 'v', name: 'High one' }],
  cells: [
    { drive: 'd1', vehicle: 'v', cell: free, stale: ['map' as const, 'note' as const] },
    { drive: 'd2', vehicle: 'v', cell: low, stale: [] },
  ],
};

describe('a grid told', () => {
  it('has its cells drive by drive, and nothing that is not known', () => {
    const { cells } = gridTold(grid);
    expect(cells).toEqual([
      { drive: 'd2', vehicle: 'v', verdict: 'barred', counts: low.counts, tightest: low.tightest },
      { drive: 'd1', vehicle: 'v', verdict: 'clear', counts: free.counts, stale: ['map', 'note'] },
    ]);
  });

  // RFC 4180; what a spreadsheet would run is text
  it('is a table for a spreadsheet, without formulas', () => {
    expect(gridCsv(grid).split('\r\n')).toEqual([
      'drive,drive id,vehicle,vehicle id,stale,verdict,barred,tight,unknown,care,tightest,spare,unit',
      '"\'=HYPERLINK(""http://x"")",d2,High one,v,,barred,2,1,0,0,height,-0.213,m',
      '"To the coast, by the mill",d1,High one,v,map note,clear,0,0,0,0,,,',
      '',
    ]);
  });

  it('says a cell in words, rounded against the driver', () => {
    expect(sayCell({ cell: low, stale: [], changes: [1] }, 'metric')).toBe(
      'Barred; 2 barred and 1 tight; height: 0.22 m over; 1 changed since it was seen',
    );
  });

  it('tells the doubt about an old answer before the answer', () => {
    expect(sayCell({ cell: free, stale: ['map', 'card'] }, 'metric')).toBe(
      'Out of date, check again: since then the map was renewed and the card was changed; it said nothing mapped stops it',
    );
  });
});
