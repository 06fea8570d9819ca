import { describe, expect, it } from 'vitest';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { type At, densify, follow, mapOf, recorded, roadsDriven, sparse, track } from './sketch.ts';

const ONEWAY = { highway: 'secondary', oneway: 'yes' };

/** A road west to east in two ways, with a side road north from their joint. */
const tee = mapOf({ a: [0, 0], b: [500, 0], c: [1000, 0], d: [500, 400] }, [
  { id: 1, refs: ['a', 'b'] },
  { id: 2, refs: ['b', 'c'] },
  { id: 3, refs: ['d', 'b'] },
]);

describe('a planned drive', () => {
  it('runs along the ways it lies on, in the direction driven', () => {
    expect(
      follow(
        track([
          [10, 0],
          [500, 0],
          [500, 390],
        ]),
        tee,
      ),
    ).toBe('1+ 3-');
    expect(
      follow(
        track([
          [500, 390],
          [500, 0],
          [10, 0],
        ]),
        tee,
      ),
    ).toBe('3+ 1-');
  });

  it('begins and ends where its positions do', () => {
    const { legs, lengthM } = followRoads(
      track([
        [100, 0],
        [900, 0],
      ]),
      tee,
    );
    expect(lengthM).toBeCloseTo(800, 0);
    expect(legs).toHaveLength(2);
    expect(legs[0]).toMatchObject({ kind: 'stretch', fromM: 0, forward: true });
  });

  it('is the same simplified to its bends', () => {
    expect(
      follow(
        track(
          [
            [10, 0],
            [500, 0],
            [500, 390],
          ],
          1e9,
        ),
        tee,
      ),
    ).toBe('1+ 3-');
  });

  it('is the same drawn eight metres beside the road', () => {
    expect(
      follow(
        track([
          [10, -8],
          [508, -8],
          [508, 390],
        ]),
        tee,
      ),
    ).toBe('1+ 3-');
  });

  it('does not turn into a side road that its positions only brush', () => {
    const places: At[] = [
      [10, 0],
      [500, 0],
      [500, 14],
      [500, 0],
      [900, 0],
    ];
    expect(follow(track(places, 5), tee)).toBe('1+ 2+');
  });

  it('turns back in the middle of a road', () => {
    expect(
      follow(
        track([
          [10, 0],
          [300, 0],
          [20, 0],
        ]),
        tee,
      ),
    ).toBe('1+ 1-');
  });

  it('drives out and back into a side road longer than a stub', () => {
    expect(
      follow(
        track([
          [10, 0],
          [500, 0],
          [500, 200],
          [500, 0],
          [900, 0],
        ]),
        tee,
      ),
    ).toBe('1+ 3- 3+ 2+');
  });

  it('never turns where two roads cross without a common node', () => {
    const bridge = mapOf({}, [
      {
        id: 1,
        refs: [
          [0, 0],
          [1000, 0],
        ],
      },
      {
        id: 2,
        refs: [
          [500, -500],
          [500, 500],
        ],
      },
    ]);
    expect(
      follow(
        track([
          [10, 0],
          [990, 0],
        ]),
        bridge,
      ),
    ).toBe('1+');
    const turned = followRoads(
      track([
        [10, 0],
        [500, 0],
        [500, 490],
      ]),
      bridge,
    );
    expect(roadsDriven(turned, bridge)).not.toContain('1+ 2+');
    expect(turned.legs.some((leg) => leg.kind === 'offMap') || turned.doubtful.length > 0).toBe(true);
  });

  it('drives a loop as often as its positions do', () => {
    const square = mapOf({ a: [0, 0], b: [300, 0], c: [300, 300], d: [0, 300] }, [
      { id: 1, refs: ['a', 'b', 'c'] },
      { id: 2, refs: ['c', 'd', 'a'] },
    ]);
    const once: At[] = [
      [0, 0],
      [300, 0],
      [300, 300],
      [0, 300],
    ];
    expect(follow(track([...once, ...once, [0, 1]]), square)).toBe('1+ 2+ 1+ 2+');
  });
});

describe('roundabouts and one-ways', () => {
  const round: At[] = Array.from({ length: 12 }, (_, k) => {
    const angle = (k * Math.PI) / 6;
    return [500 + 25 * Math.cos(angle), 25 * Math.sin(angle)];
  });
  const names = Object.fromEntries(round.map((at, k) => [`r${k}`, at]));
  // closed at its north-east, so that a drive from west to east by the south passes neither end by chance
  const order = [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 0, 1, 2].map((k) => `r${k}`);
  const roundabout = mapOf({ ...names, w: [0, 0], e: [1000, 0] }, [
    { id: 1, refs: ['w', 'r6'] },
    { id: 2, refs: order, tags: { highway: 'secondary', junction: 'roundabout' } },
    { id: 3, refs: ['r0', 'e'] },
  ]);

  it('goes round a roundabout the way it is driven', () => {
    const south = [6, 7, 8, 9, 10, 11, 0].map((k) => round[k] as At);
    expect(follow(track([[10, 0], ...south, [990, 0]]), roundabout)).toBe('1+ 2+ 3+');
  });

  it('splits the way where a closed way is driven past its first node', () => {
    const wholeRound = [6, 7, 8, 9, 10, 11, 0, 1, 2, 3, 4, 5, 6].map((k) => round[k] as At);
    const drive = followRoads(track([[10, 0], ...wholeRound, [10, 0]]), roundabout);
    expect(roadsDriven(drive, roundabout)).toBe('1+ 2+ 2+ 1-');
    for (const leg of drive.legs)
      if (leg.kind === 'stretch' && leg.forward) expect(leg.alongToM).toBeGreaterThan(leg.alongFromM);
  });

  const carriageways = (apartM: number) =>
    mapOf({ a: [0, 0], b: [2000, 0], c: [2000, apartM], d: [0, apartM] }, [
      { id: 1, refs: ['a', 'b'], tags: ONEWAY },
      { id: 2, refs: ['c', 'd'], tags: ONEWAY },
    ]);

  it('keeps to the carriageway of its direction when drawn down the middle', () => {
    expect(
      follow(
        track([
          [10, 6],
          [1990, 6],
        ]),
        carriageways(12),
      ),
    ).toBe('1+');
    expect(
      follow(
        track([
          [1990, 6],
          [10, 6],
        ]),
        carriageways(12),
      ),
    ).toBe('2+');
  });

  it('is followed against a one-way where no other road fits, without doubt', () => {
    const drive = followRoads(
      track([
        [1990, 0],
        [10, 0],
      ]),
      carriageways(80),
    );
    expect(roadsDriven(drive, carriageways(80))).toBe('1-');
    expect(drive.doubtful).toEqual([]);
  });

  it('is in doubt against a one-way beside a carriageway of its direction', () => {
    const drive = followRoads(
      track([
        [1990, 0],
        [10, 0],
      ]),
      carriageways(20),
    );
    expect(roadsDriven(drive, carriageways(20))).toBe('1-');
    expect(drive.doubtful).toHaveLength(1);
  });

  it('goes on round rather than back where positions are few', () => {
    const fixes: At[] = [
      [300, 0],
      [400, 0],
      [470, -2],
      [500, -26],
      [528, 2],
      [505, 24],
      [470, 5],
      [400, 0],
      [300, 0],
    ];
    expect(follow(recorded(fixes), roundabout)).toBe('1+ 2+ 2+ 1-');
  });
});

describe('roads side by side', () => {
  const beside = (apartM: number, highway: string) =>
    mapOf({ a: [0, 0], b: [1000, 0] }, [
      { id: 1, refs: ['a', 'b'], tags: { highway: 'secondary' } },
      { id: 2, refs: ['a', [10, apartM], [990, apartM], 'b'], tags: { highway } },
    ]);

  it('is on the road and not on the pavement beside it, though drawn a little to that side', () => {
    expect(
      follow(
        track([
          [0, 0],
          [10, 5],
          [990, 5],
          [1000, 0],
        ]),
        beside(4, 'footway'),
      ),
    ).toBe('1+');
  });

  it('is on the path where it truly runs on a path fifteen metres away', () => {
    expect(
      follow(
        track([
          [0, 0],
          [10, 15],
          [990, 15],
          [1000, 0],
        ]),
        beside(15, 'path'),
      ),
    ).toBe('2+');
  });

  it('tells a service road from the road it runs along', () => {
    expect(
      follow(
        track([
          [0, 0],
          [10, 15],
          [990, 15],
          [1000, 0],
        ]),
        beside(15, 'service'),
      ),
    ).toBe('2+');
    expect(
      follow(
        track([
          [0, 0],
          [1000, 0],
        ]),
        beside(15, 'service'),
      ),
    ).toBe('1+');
  });

  it('tells them apart by the drawn line when only the ends are given', () => {
    expect(
      follow(
        track(
          [
            [0, 0],
            [10, 15],
            [990, 15],
            [1000, 0],
          ],
          1e9,
        ),
        beside(15, 'service'),
      ),
    ).toBe('2+');
    expect(
      follow(
        track(
          [
            [0, 0],
            [1000, 0],
          ],
          1e9,
        ),
        beside(15, 'service'),
      ),
    ).toBe('1+');
  });
});

describe('where the map has no road', () => {
  // the road is missing from 600 to 1000; another way round exists
  const broken = mapOf(
    { a: [0, 0], b: [600, 0], c: [1000, 0], d: [1600, 0], e: [600, 300], f: [1000, 300] },
    [
      { id: 1, refs: ['a', 'b'] },
      { id: 2, refs: ['c', 'd'] },
      { id: 3, refs: ['b', 'e', 'f', 'c'] },
    ],
  );

  it('is off the map over a missing piece of road and is not led round it', () => {
    const drive = followRoads(
      track([
        [10, 0],
        [1590, 0],
      ]),
      broken,
    );
    expect(roadsDriven(drive, broken)).toBe('1+ off 2+');
    const off = drive.legs[1];
    expect(off?.kind === 'offMap' && off.toM - off.fromM).toBeCloseTo(400, -1);
    expect(drive.lengthM).toBeCloseTo(1580, 0);
  });

  it('is off the map there when simplified to its ends', () => {
    expect(
      follow(
        track(
          [
            [10, 0],
            [600, 0],
            [1000, 0],
            [1590, 0],
          ],
          1e9,
        ),
        broken,
      ),
    ).toBe('1+ off 2+');
  });

  it('starts in a yard and ends on a pitch away from the road', () => {
    const drive = followRoads(
      track([
        [100, 200],
        [100, 0],
        [400, 0],
        [400, -80],
      ]),
      broken,
    );
    expect(roadsDriven(drive, broken)).toBe('off 1+ off');
    expect(drive.lengthM).toBeCloseTo(580, -1);
  });

  it('is off the map from end to end where there is no road at all', () => {
    expect(
      follow(
        track([
          [0, 5000],
          [800, 5000],
        ]),
        broken,
      ),
    ).toBe('off');
  });

  it('has a gap between two segments and drives nothing there', () => {
    const drive = followRoads(
      track([
        [
          [10, 0],
          [200, 0],
        ],
        [
          [400, 0],
          [590, 0],
        ],
      ]),
      broken,
    );
    expect(roadsDriven(drive, broken)).toBe('1+ gap 1+');
    expect(drive.lengthM).toBeCloseTo(380, 0);
    expect(drive.legs[1]).toMatchObject({ kind: 'gap', straightM: expect.closeTo(200, 0) });
  });

  it('has no gap between segments that share a position', () => {
    expect(
      follow(
        track([
          [
            [10, 0],
            [200, 0],
          ],
          [
            [200, 0],
            [590, 0],
          ],
        ]),
        broken,
      ),
    ).toBe('1+');
  });

  it('takes the ferry that joins two shores', () => {
    const shores = mapOf({ a: [0, 0], b: [500, 0], c: [3500, 0], d: [4000, 0] }, [
      { id: 1, refs: ['a', 'b'] },
      { id: 2, refs: ['b', [2000, 300], 'c'], tags: { route: 'ferry' } },
      { id: 3, refs: ['c', 'd'] },
    ]);
    expect(
      follow(
        track(
          [
            [10, 0],
            [500, 0],
            [2000, 300],
            [3500, 0],
            [3990, 0],
          ],
          50,
        ),
        shores,
      ),
    ).toBe('1+ 2+ 3+');
    expect(
      follow(
        track(
          [
            [10, 0],
            [500, 0],
            [2000, 120],
            [3500, 0],
            [3990, 0],
          ],
          50,
        ),
        shores,
      ),
    ).toBe('1+ 2+ 3+');
    expect(
      follow(
        sparse([
          [10, 0],
          [3990, 0],
        ]),
        shores,
      ),
    ).toBe('1+ 2+ 3+');
  });
});

describe('a sparse route', () => {
  const grid = mapOf(
    { a: [0, 0], b: [1000, 0], c: [1000, 1000], d: [0, 1000], e: [-2000, 0], f: [3000, 1000] },
    [
      { id: 1, refs: ['e', 'a'] },
      { id: 2, refs: ['a', 'b', 'c'] },
      { id: 3, refs: ['a', 'd', [0, 1050], 'c'] },
      { id: 4, refs: ['c', 'f'] },
    ],
  );

  it('is filled in along roads and says where another road may be meant', () => {
    const drive = followRoads(
      sparse([
        [-1500, 0],
        [2500, 1000],
      ]),
      grid,
    );
    expect(roadsDriven(drive, grid)).toBe('1+ 2+ 4+');
    expect(drive.guessed).toHaveLength(1);
    expect(drive.guessed[0]?.fromM).toBeCloseTo(1500, 0);
    expect(drive.guessed[0]?.toM).toBeCloseTo(3500, 0);
  });

  it('is certain where only one road leads there', () => {
    expect(
      followRoads(
        sparse([
          [-1500, 0],
          [-200, 0],
        ]),
        grid,
      ).guessed,
    ).toEqual([]);
  });

  it('is not certain where the only way is a long way round: a road may be missing', () => {
    const horseshoe = mapOf({ a: [0, 0], b: [0, 1500], c: [600, 1500], d: [600, 0] }, [
      { id: 1, refs: ['a', 'b', 'c', 'd'] },
    ]);
    const drive = followRoads(
      sparse([
        [0, 10],
        [600, 10],
      ]),
      horseshoe,
    );
    expect(drive.legs.some((leg) => leg.kind === 'offMap') || drive.guessed.length === 1).toBe(true);
  });

  it('is certain where its points are close', () => {
    const drive = followRoads(
      track(
        [
          [-1500, 0],
          [1000, 0],
          [1000, 1000],
          [2500, 1000],
        ],
        100,
      ),
      grid,
    );
    expect(drive.guessed).toEqual([]);
  });
});

describe('a recorded drive', () => {
  it('is not thrown off the road by a slip of the receiver', () => {
    const fixes = densify(
      [
        [10, 0],
        [900, 0],
      ],
      12,
    ).map(([x, y], i): At => (i > 30 && i < 34 ? [x, y + 140] : [x, y + 3 * Math.sin(i)]));
    const drive = followRoads(recorded(fixes), tee);
    expect(roadsDriven(drive, tee)).toBe('1+ 2+');
    expect(drive.doubtful.length).toBeGreaterThan(0);
  });

  it('stands still at a light without driving back and forth', () => {
    const fixes: At[] = densify(
      [
        [10, 0],
        [480, 0],
      ],
      12,
    );
    for (let i = 0; i < 60; i++) fixes.push([480 + 9 * Math.sin(i * 1.7), 6 * Math.cos(i * 2.3)]);
    fixes.push(
      ...densify(
        [
          [480, 0],
          [950, 0],
        ],
        12,
      ),
    );
    expect(follow(recorded(fixes), tee)).toBe('1+ 2+');
  });
});

describe('turn restrictions', () => {
  const no = (restriction: string, more = {}) =>
    mapOf(
      { a: [0, 0], b: [500, 0], c: [1000, 0], d: [500, 400] },
      [
        { id: 1, refs: ['a', 'b'] },
        { id: 2, refs: ['b', 'c'] },
        { id: 3, refs: ['b', 'd'] },
      ],
      [{ from: 1, via: 'b', to: restriction.startsWith('only') ? 2 : 3, tags: { restriction, ...more } }],
    );
  const left = track([
    [10, 0],
    [500, 0],
    [500, 390],
  ]);

  it('lists a forbidden turn that is driven all the same', () => {
    for (const map of [no('no_left_turn'), no('only_straight_on')]) {
      const drive = followRoads(left, map);
      expect(roadsDriven(drive, map)).toBe('1+ 3+');
      expect(drive.brokenTurns).toHaveLength(1);
      expect(drive.brokenTurns[0]?.atM).toBeCloseTo(490, 0);
    }
  });

  it('lists a forbidden turning back though the last position falls a little short of the junction', () => {
    const map = mapOf(
      { a: [0, 0], b: [500, 0], c: [1000, 0] },
      [
        { id: 1, refs: ['a', 'b'] },
        { id: 2, refs: ['b', 'c'] },
      ],
      [{ from: 1, via: 'b', to: 1, tags: { restriction: 'no_u_turn' } }],
    );
    const turningAt = (x: number) =>
      followRoads(
        track([
          [10, 0],
          [x, 0],
          [10, 0],
        ]),
        map,
      ).brokenTurns.length;
    expect(turningAt(499)).toBe(1);
    expect(turningAt(400)).toBe(0);
  });

  it('lists none where the turn is allowed, or the restriction is for others', () => {
    expect(
      followRoads(
        track([
          [10, 0],
          [990, 0],
        ]),
        no('no_left_turn'),
      ).brokenTurns,
    ).toEqual([]);
    expect(followRoads(left, no('no_left_turn', { except: 'motor_vehicle' })).brokenTurns).toEqual([]);
  });

  it('lists a turn forbidden by way of another road', () => {
    const map = mapOf(
      { a: [0, 0], b: [500, 0], c: [1000, 0], d: [500, 30], e: [0, 30] },
      [
        { id: 1, refs: ['a', 'b'] },
        { id: 2, refs: ['b', 'd'] },
        { id: 3, refs: ['d', 'e'] },
        { id: 4, refs: ['b', 'c'] },
      ],
      [{ from: 1, via: 2, to: 3, tags: { restriction: 'no_u_turn' } }],
    );
    const drive = followRoads(
      track([
        [10, 0],
        [500, 0],
        [500, 30],
        [10, 30],
      ]),
      map,
    );
    expect(roadsDriven(drive, map)).toBe('1+ 2+ 3+');
    expect(drive.brokenTurns).toHaveLength(1);
  });
});

describe('a line against a one-way', () => {
  const street = mapOf({ a: [0, 0], b: [400, 0], c: [900, 0], d: [0, 60], e: [900, 60] }, [
    { id: 1, refs: ['a', 'b'] },
    { id: 2, refs: ['b', 'c'], tags: ONEWAY },
    { id: 3, refs: ['a', 'd', 'e', 'c'] },
  ]);

  it('is followed though a legal way lies one street on, dense or simplified', () => {
    for (const stepM of [15, 1e9])
      expect(
        follow(
          track(
            [
              [890, 0],
              [400, 0],
              [10, 0],
            ],
            stepM,
          ),
          street,
        ),
      ).toBe('2- 1-');
  });

  it('is not followed between sparse points: nobody drew it', () => {
    expect(
      follow(
        sparse([
          [899, 30],
          [1, 30],
        ]),
        street,
      ),
    ).not.toContain('2-');
  });
});

describe('a drive that ends at a junction', () => {
  it('does not drive the road that its last position touches by a few centimetres, nor its first', () => {
    const map = mapOf({ a: [0, 0], b: [500, 0], c: [900, 0], d: [-400, 0] }, [
      { id: 1, refs: ['a', 'b'] },
      { id: 2, refs: ['b', 'c'], tags: { highway: 'residential', access: 'private' } },
      { id: 3, refs: ['d', 'a'], tags: { highway: 'residential', access: 'private' } },
    ]);
    const drive = followRoads(
      track([
        [-0.7, 0],
        [500.7, 0],
      ]),
      map,
    );
    expect(roadsDriven(drive, map)).toBe('1+');
    expect(drive.lengthM).toBeCloseTo(500, 3);
  });
});
