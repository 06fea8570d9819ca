import { describe, expect, it } from 'vitest';
import { crossingApart, stubsApart, townsApart } from '../../../../../geo/drive/strip/paper/thin-out.ts';

describe('what stands closer than ink can', () => {
  it('side roads: the main one stays, each side for itself', () => {
    const stubs = [
      { atM: 0, side: 'left', main: false },
      { atM: 20, side: 'left', main: true },
      { atM: 21, side: 'right', main: false },
      { atM: 30, side: 'left', main: false },
    ] as const;
    expect(stubsApart(stubs, 0.1).map(({ atM }) => atM)).toEqual([0, 20, 21]);
  });

  it('bridges: the first stays, and every one that carries a height', () => {
    const bridges = [{ atM: 0 }, { atM: 10 }, { atM: 12, height: '3.2 m' }, { atM: 400 }];
    expect(crossingApart(bridges, 0.1).map(({ atM }) => atM)).toEqual([0, 12, 400]);
  });

  it('towns: the larger stays, wherever it stands', () => {
    const towns = [
      { atM: 0, name: 'Hamlet', size: 1 },
      { atM: 100, name: 'Town', size: 3 },
      { atM: 900, name: 'Village', size: 2 },
    ] as const;
    expect(townsApart(towns, 0.1).map(({ name }) => name)).toEqual(['Town', 'Village']);
  });
});
