import { describe, expect, it } from 'vitest';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { type At, follow, mapOf, roadsDriven, track } from './sketch.ts';

const ONEWAY = { highway: 'residential', oneway: 'yes' };

describe('a drive that breaks a rule', () => {
  /** North to a crossroads and left, which is forbidden; something else cuts the corner eight metres from it. */
  const corner = (tags: Record<string, string>) =>
    mapOf(
      { s: [0, -300], x: [0, 0], w: [-300, 0], n: [0, 300], a: [0, -8], b: [-8, 0] },
      [
        { id: 1, refs: ['s', 'a', 'x'] },
        { id: 2, refs: ['x', 'b', 'w'] },
        { id: 3, refs: ['x', 'n'] },
        { id: 9, refs: ['a', 'b'], tags },
      ],
      [{ from: 1, via: 'x', to: 2, tags: { restriction: 'no_left_turn' } }],
    );
  const left: At[] = [
    [0, -290],
    [0, 0],
    [-290, 0],
  ];

  it.each([
    ['a cycleway', { highway: 'cycleway' }],
    ['a footway', { highway: 'footway', footway: 'crossing' }],
    ['a road for buses', { highway: 'service', access: 'no', bus: 'yes' }],
    ['an open service road', { highway: 'service' }],
  ])('is followed round a forbidden turn and not led off over %s that cuts the corner', (_, tags) => {
    const map = corner(tags);
    const drive = followRoads(track(left), map);
    expect(roadsDriven(drive, map)).toBe('1+ 2+');
    expect(drive.brokenTurns).toHaveLength(1);
  });

  it('keeps to the line where it turns back against a sign, though the other carriageway lies near', () => {
    const map = mapOf(
      { a: [0, 0], m: [500, 0], b: [1000, 0], c: [1000, 12], n: [500, 12], d: [0, 12] },
      [
        { id: 1, refs: ['a', 'm'], tags: ONEWAY },
        { id: 2, refs: ['m', 'b'], tags: ONEWAY },
        { id: 3, refs: ['c', 'n'], tags: ONEWAY },
        { id: 4, refs: ['n', 'd'], tags: ONEWAY },
        { id: 5, refs: ['m', 'n'] },
      ],
      [{ from: 1, via: 5, to: 4, tags: { restriction: 'no_u_turn' } }],
    );
    const drive = followRoads(
      track([
        [10, 0],
        [500, 0],
        [500, 12],
        [10, 12],
      ]),
      map,
    );
    expect(roadsDriven(drive, map)).toBe('1+ 5+ 4+');
    expect(drive.brokenTurns).toHaveLength(1);
  });

  it('is followed against a one-way where it is drawn, with the right carriageway six metres away', () => {
    const map = mapOf({ z: [-300, 0], a: [0, 0], b: [600, 0], y: [900, 0] }, [
      { id: 1, refs: ['z', 'a'] },
      { id: 2, refs: ['a', [30, -3], [570, -3], 'b'], tags: ONEWAY },
      { id: 3, refs: ['b', [570, 3], [30, 3], 'a'], tags: ONEWAY },
      { id: 4, refs: ['b', 'y'] },
    ]);
    const wrong = track([
      [890, 0],
      [600, 0],
      [570, -3],
      [30, -3],
      [0, 0],
      [-290, 0],
    ]);
    expect(follow(wrong, map)).toBe('4- 2- 1-');
  });
});

describe('roads closed to motor traffic', () => {
  /** An open street, and a carriageway for buses beside it. */
  const beside = (apartM: number, tags: Record<string, string>) =>
    mapOf({ a: [0, 0], b: [1000, 0] }, [
      { id: 1, refs: ['a', 'b'], tags: { highway: 'tertiary' } },
      { id: 2, refs: ['a', [20, apartM], [980, apartM], 'b'], tags },
    ]);
  const BUSES = { highway: 'service', access: 'no', bus: 'yes' };
  const along = (y: number) =>
    track([
      [0, 0],
      [20, y],
      [980, y],
      [1000, 0],
    ]);

  it.each([
    ['service road for buses', BUSES],
    ['busway', { highway: 'busway' }],
    ['street closed to motor vehicles', { highway: 'residential', motor_vehicle: 'no' }],
  ] as const)('do not draw a line from the open road beside it: %s', (_, tags) => {
    for (const y of [5, 8]) expect(follow(along(y), beside(9, tags)), `${y} m off`).toBe('1+');
  });

  it('are followed where the line is clearly theirs, and without doubt', () => {
    const drive = followRoads(along(25), beside(25, BUSES));
    expect(roadsDriven(drive, beside(25, BUSES))).toBe('2+');
    expect(drive.doubtful).toEqual([]);
  });

  it('are in doubt where an open road fits nearly as well', () => {
    const drive = followRoads(along(15), beside(21, BUSES));
    expect(roadsDriven(drive, beside(21, BUSES))).toBe('2+');
    expect(drive.doubtful).toHaveLength(1);
  });
});
