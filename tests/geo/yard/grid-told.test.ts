import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../geo/yard/cell.ts';
import { gridCsv, gridTold } from '../../../geo/yard/grid-told.ts';
import { sayCell, sayNoCell, sayTightest, spareFigure } from '../../../geo/yard/say-cell.ts';
import { sayLimit } from '../../../geo/yard/say-limit.ts';

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
      'Out of date, check again: since then the maps of the shelf there changed and the card was changed; it said nothing mapped stops it',
    );
  });

  it('says kilograms, slopes and angles with their unit, all rounded against the driver', () => {
    const tightest = (subject: 'mass' | 'slope' | 'ground', spare: number, unit: 'kg' | '%' | 'deg') =>
      ({ finding: 'x', subject, spare, unit }) as const;
    const told = (cell: Partial<Cell>) => [
      spareFigure({ ...low, ...cell }, 'metric'),
      sayTightest({ ...low, ...cell }, 'metric'),
    ];
    expect(told({ tightest: tightest('mass', -40.2, 'kg') })).toEqual(['−41 kg', 'weight: 41 kg over']);
    expect(told({ tightest: tightest('slope', 1.58, '%') })).toEqual(['1.5 %', 'slope: 1.5 % to spare']);
    expect(told({ tightest: tightest('ground', -0.04, 'deg') })).toEqual(['−0.1°', 'ground: 0.1° over']);
    expect(spareFigure(free, 'metric')).toBe('');
    expect(spareFigure(low, 'imperial')).toBe('−0\'9"');
  });

  it('says why an empty place is empty', () => {
    expect(sayNoCell(undefined)).toBe('not checked yet');
    expect(sayNoCell('The file is no GPX.')).toBe('could not be checked: the file is no GPX.');
  });
});

describe('a limit in a table', () => {
  it('has its unit, and the sign’s own text where that is another', () => {
    // 9'6" is 114 in, 2.8956 m
    expect(sayLimit({ value: 2.8956, unit: 'm', asMapped: `9'6"` }, 'metric')).toBe(`2.89 m, mapped as 9'6"`);
    expect(sayLimit({ value: 3.2, unit: 'm', asMapped: '3.2' }, 'metric')).toBe('3.20 m');
    expect(sayLimit({ value: 3.2, unit: 'm', asMapped: ' ' }, 'metric')).toBe('3.20 m');
    expect(sayLimit({ value: 3500, unit: 'kg', asMapped: '3.5' }, 'metric')).toBe('3500 kg, mapped as 3.5');
    expect(sayLimit({ value: 12, unit: '%', asMapped: '12%' }, 'metric')).toBe('12 %, mapped as 12%');
    expect(sayLimit({ value: 8, unit: 'deg', asMapped: '8.0°' }, 'metric')).toBe('8.0°');
  });
});
