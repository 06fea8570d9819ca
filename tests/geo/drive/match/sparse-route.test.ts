import { describe, expect, it } from 'vitest';
import type { Drive } from '../../../../geo/drive/drive.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { type At, follow, mapOf, sparse } from './sketch.ts';

const MAIN = { highway: 'secondary', maxspeed: '80' };
const LANE = { highway: 'unclassified', maxspeed: '30' };

/** Guessed spans of a drive in whole hundreds of metres. */
function guessed(drive: Drive): [number, number][] {
  return drive.guessed.map(({ fromM, toM }) => [Math.round(fromM / 100), Math.round(toM / 100)]);
}

/** Two ways from b to c: 2 all but straight through, 3 round by the north; a stem before and after. Metres. */
function twoWays({ through, round, farM = 600 }: { through: Tags; round: Tags; farM?: number }) {
  return mapOf({ a: [-1000, 0], b: [0, 0], c: [2000, 0], d: [3000, 0], e: [0, farM], f: [2000, farM] }, [
    { id: 1, refs: ['a', 'b'], tags: MAIN },
    { id: 2, refs: ['b', [1000, -300], 'c'], tags: through },
    { id: 3, refs: ['b', 'e', 'f', 'c'], tags: round },
    { id: 4, refs: ['c', 'd'], tags: MAIN },
  ]);
}
const ENDS: At[] = [
  [-500, 0],
  [2500, 0],
];

describe('between far points the drive takes the quickest way', () => {
  it('goes round by the main road rather than straight through by a slow lane', () => {
    expect(follow(sparse(ENDS), twoWays({ through: LANE, round: MAIN }))).toBe('1+ 3+ 4+');
    expect(follow(sparse(ENDS), twoWays({ through: MAIN, round: MAIN }))).toBe('1+ 2+ 4+');
  });

  it.each<[string, Tags]>([
    ['a private road', { ...MAIN, access: 'private' }],
    ['a footpath', { highway: 'footway' }],
    ['a track', { highway: 'track' }],
    ['a road that is one-way the other way', { ...MAIN, oneway: '-1' }],
  ])('does not cut through by %s', (_, through) => {
    expect(follow(sparse(ENDS), twoWays({ through, round: MAIN }))).toBe('1+ 3+ 4+');
  });

  it('takes the way with fewer turns of two as long', () => {
    // 2 is one corner, 3 a staircase of the same length
    const roads = mapOf(
      {
        a: [-1000, 0],
        b: [0, 0],
        k: [1500, 0],
        c: [1500, 1500],
        d: [1500, 2500],
        s: [500, 500],
        t: [1000, 1000],
      },
      [
        { id: 1, refs: ['a', 'b'] },
        { id: 2, refs: ['b', 'k', 'c'] },
        { id: 3, refs: ['b', [0, 500], 's'] },
        { id: 5, refs: ['s', [500, 1000], 't'] },
        { id: 6, refs: ['t', [1000, 1500], 'c'] },
        { id: 7, refs: ['s', [700, 300]] },
        { id: 8, refs: ['t', [1200, 800]] },
        { id: 4, refs: ['c', 'd'] },
      ],
    );
    const route = sparse([
      [-500, 0],
      [1500, 2000],
    ]);
    expect(follow(route, roads)).toBe('1+ 2+ 4+');
  });

  it('passes a point on the road it lies on, though one fifteen metres away would be quicker', () => {
    // the point lies just past the junction in a side road that comes back to the main road farther on
    const roads = mapOf({ a: [-1000, -400], b: [0, 0], c: [800, -100], d: [2000, -600] }, [
      { id: 1, refs: ['a', 'b'], tags: MAIN },
      { id: 2, refs: ['b', 'c'], tags: MAIN },
      { id: 3, refs: ['b', [0, 200], [800, 200], 'c'], tags: MAIN },
      { id: 4, refs: ['c', 'd'], tags: MAIN },
    ]);
    const route = sparse([
      [-800, -320],
      [0, 15],
      [1700, -475],
    ]);
    expect(follow(route, roads)).toBe('1+ 3+ 4+');
  });
});

describe('what is guessed between far points', () => {
  it('is the piece in whose stead another way is nearly as quick, and no more', () => {
    const drive = followRoads(sparse(ENDS), twoWays({ through: MAIN, round: MAIN }));
    expect(guessed(drive)).toEqual([[5, 26]]);
  });

  it('is nothing where the other way takes far longer', () => {
    expect(guessed(followRoads(sparse(ENDS), twoWays({ through: MAIN, round: LANE })))).toEqual([]);
    expect(guessed(followRoads(sparse(ENDS), twoWays({ through: MAIN, round: MAIN, farM: 3000 })))).toEqual(
      [],
    );
  });

  it('is nothing where the other way is for others', () => {
    for (const round of [{ highway: 'footway' }, { ...MAIN, motor_vehicle: 'no' }, { ...MAIN, oneway: '-1' }])
      expect(guessed(followRoads(sparse(ENDS), twoWays({ through: MAIN, round })))).toEqual([]);
  });

  it('is the whole of a ring that a point on it may be driven round in either direction', () => {
    const ring = mapOf({ a: [0, -3000], b: [0, 0] }, [
      { id: 1, refs: ['a', 'b'] },
      { id: 2, refs: ['b', [800, 0], [800, 800], [-800, 800], [-800, 0], 'b'] },
    ]);
    const drive = followRoads(
      sparse([
        [0, -2600],
        [0, 800],
        [0, -2800],
      ]),
      ring,
    );
    // in by 2600 m of the stem, round by 4800 m of ring, out by 2800 m
    expect(Math.round(drive.lengthM / 100)).toBe(102);
    expect(guessed(drive)).toEqual([[26, 74]]);
  });
});
