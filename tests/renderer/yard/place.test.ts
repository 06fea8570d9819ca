import { describe, expect, it } from 'vitest';
import { layOf } from '../../../renderer/yard/grid/lay.ts';
import { columnsInSight, placeAfter, rowsInSight } from '../../../renderer/yard/grid/place.ts';

const extent = { rows: 5000, columns: 12, page: 10 };
const press = (key: string, row: number, column: number, ctrlKey = false) =>
  placeAfter({ key, ctrlKey, altKey: false, metaKey: false }, { row, column }, extent);

describe('the keyboard in the grid', () => {
  it('goes from cell to cell, and up to the vehicles’ heads', () => {
    expect(press('ArrowDown', 0, 3)).toEqual({ row: 1, column: 3 });
    expect(press('ArrowUp', 0, 3)).toEqual({ row: -1, column: 3 });
    expect(press('ArrowUp', -1, 3)).toEqual({ row: -1, column: 3 });
    expect(press('ArrowRight', 4, 12)).toEqual({ row: 4, column: 12 });
    expect(press('ArrowLeft', 4, 1)).toEqual({ row: 4, column: 0 });
  });

  it('goes to the ends of a row, of the grid, and by pages', () => {
    expect(press('End', 4, 1)).toEqual({ row: 4, column: 12 });
    expect(press('End', 4, 1, true)).toEqual({ row: 4999, column: 12 });
    expect(press('Home', 4, 7, true)).toEqual({ row: 0, column: 0 });
    expect(press('PageDown', 4995, 1)).toEqual({ row: 4999, column: 1 });
    expect(press('PageUp', 3, 1)).toEqual({ row: 0, column: 1 });
    expect(press('a', 0, 0)).toBeUndefined();
  });
});

describe('the columns that are drawn', () => {
  const lay = { headPx: 320, cellPx: 88 };
  it('are all where they have room, else those in sight and a few beside them', () => {
    expect(columnsInSight({ leftPx: 0, widthPx: 1440 }, lay, 12)).toEqual({ from: 0, to: 12 });
    expect(columnsInSight({ leftPx: 0, widthPx: 1440 }, lay, 50)).toEqual({ from: 0, to: 16 });
    expect(columnsInSight({ leftPx: 1760, widthPx: 1440 }, lay, 50)).toEqual({ from: 18, to: 36 });
    expect(columnsInSight({ leftPx: 9999, widthPx: 1440 }, lay, 50).to).toBe(50);
  });
});

describe('how drives and vehicles lie', () => {
  it('fills the width: the columns first, then the drives’ own', () => {
    for (const vehicles of [9, 10, 11, 12, 40])
      for (const widthPx of [700, 1000, 1440, 2000]) {
        const { headPx, cellPx } = layOf(widthPx, 1440, vehicles);
        expect(cellPx).toBeGreaterThanOrEqual(88);
        expect(cellPx).toBeLessThanOrEqual(120);
        expect(headPx).toBeGreaterThanOrEqual(320);
        // wider than the grid only where columns are as narrow as they become, narrower only where all are full
        const spare = widthPx - headPx - vehicles * cellPx;
        if (spare < 0) expect(cellPx).toBe(88);
        if (spare > 0) expect([headPx, cellPx]).toEqual([440, 120]);
      }
  });
});

describe('the rows that are drawn', () => {
  it('are those in sight and a few beside them, of thousands', () => {
    expect(rowsInSight({ topPx: 52_000, heightPx: 520, rowPx: 52 }, 5000)).toEqual({ from: 996, to: 1014 });
    expect(rowsInSight({ topPx: 0, heightPx: 520, rowPx: 52 }, 3)).toEqual({ from: 0, to: 3 });
    // scrolled further than a shorter list reaches
    expect(rowsInSight({ topPx: 52_000, heightPx: 520, rowPx: 52 }, 3)).toEqual({ from: 0, to: 3 });
  });

  it('have room for each vehicle’s mark where they are a list', () => {
    expect(layOf(1200, 1200, 40)).toMatchObject({ narrow: false, rowPx: 52 });
    expect(layOf(390, 390, 12).rowPx - layOf(390, 390, 8).rowPx).toBe(
      layOf(390, 390, 8).rowPx - layOf(390, 390, 4).rowPx,
    );
    expect(layOf(390, 390, 12).rowPx).toBeGreaterThan(layOf(390, 390, 8).rowPx);
  });
});
