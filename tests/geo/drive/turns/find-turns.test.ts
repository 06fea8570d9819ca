import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findTurns } from '../../../../geo/drive/turns/find-turns.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { driveOn, type Step, type TestMap, type TestWay, testMap } from '../../../support/drive-on.ts';

/** Places in metres, so that corners can be drawn closely. */
const at = (...places: readonly (readonly [number, number])[]) =>
  places.map(([x, y]) => `${x / 100},${y / 100}`);

const road = (id: number, places: readonly (readonly [number, number])[], tags: Tags = {}): TestWay => ({
  id,
  nodes: at(...places),
  tags: { highway: 'residential', ...tags },
});

const turnsOn = (map: TestMap, steps: readonly Step[]) =>
  findTurns(driveOn(map, steps), map.roads).map(
    ({ kind, part, side, turnDeg }) =>
      `${kind}${part === undefined ? '' : ` ${part}`} ${side} ${Math.round(turnDeg / 5) * 5}`,
  );

/** Points of an arc round a centre, from one angle to another, degrees. */
const arc = (x: number, y: number, r: number, from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => {
    const a = ((from + ((to - from) * i) / count) * Math.PI) / 180;
    return [x + r * Math.cos(a), y + r * Math.sin(a)] as const;
  });

describe('turns at junctions', () => {
  const cross = testMap([
    road(
      1,
      [
        [-100, 0],
        [0, 0],
      ],
      { name: 'West' },
    ),
    road(
      2,
      [
        [0, 0],
        [100, 0],
      ],
      { name: 'East' },
    ),
    road(
      3,
      [
        [0, 0],
        [0, 100],
      ],
      { name: 'North' },
    ),
    road(
      4,
      [
        [0, -100],
        [0, 0],
      ],
      { name: 'South' },
    ),
  ]);

  it('leaving one road for another is a turn, going straight over none', () => {
    expect(turnsOn(cross, [1, 3])).toEqual(['junction left 90']);
    expect(turnsOn(cross, [1, -4])).toEqual(['junction right 90']);
    expect(turnsOn(cross, [1, 2])).toEqual([]);
  });

  it('a slight fork is none, an acute one is the sharper turn', () => {
    const fork = testMap([
      road(1, [
        [-100, 0],
        [0, 0],
      ]),
      road(
        2,
        [
          [0, 0],
          [100, 0],
        ],
        { name: 'On' },
      ),
      road(
        3,
        [
          [0, 0],
          [100, 50],
        ],
        { name: 'Slight' },
      ),
      road(
        4,
        [
          [0, 0],
          [-100, 50],
        ],
        { name: 'Back' },
      ),
    ]);
    expect(turnsOn(fork, [1, 3])).toEqual([]);
    expect(turnsOn(fork, [1, 4])).toEqual(['junction left 155']);
  });

  it('the angle is that of the roads, not of a kink drawn right at the node', () => {
    const kinked = testMap([
      road(
        1,
        [
          [-100, 0],
          [-4, 0],
          [0, 3],
        ],
        { name: 'A' },
      ),
      road(
        2,
        [
          [0, 3],
          [0, 100],
        ],
        { name: 'B' },
      ),
      road(
        3,
        [
          [0, 3],
          [100, 3],
        ],
        { name: 'C' },
      ),
    ]);
    expect(turnsOn(kinked, [1, 2])).toEqual(['junction left 90']);
  });

  it('a carriageway that splits round an island makes no turn of its own', () => {
    const island = testMap([
      road(
        1,
        [
          [-100, 0],
          [-6, 0],
        ],
        { highway: 'secondary', ref: 'B1' },
      ),
      road(
        2,
        [
          [-6, 0],
          [0, -4],
        ],
        { highway: 'secondary', ref: 'B1', oneway: 'yes' },
      ),
      road(
        3,
        [
          [0, -4],
          [6, 0],
        ],
        { highway: 'secondary', ref: 'B1', oneway: 'yes' },
      ),
      road(
        4,
        [
          [6, 0],
          [-6, 0],
        ],
        { highway: 'secondary', ref: 'B1', oneway: 'yes' },
      ),
      road(
        5,
        [
          [6, 0],
          [100, 0],
        ],
        { highway: 'secondary', ref: 'B1' },
      ),
    ]);
    expect(turnsOn(island, [1, 2, 3, 5])).toEqual([]);
  });

  it('a turn drawn in two over the middle of a split road is one', () => {
    const split = testMap([
      road(
        1,
        [
          [0, -100],
          [0, 0],
        ],
        { name: 'Side' },
      ),
      road(
        2,
        [
          [0, 0],
          [-5, 6],
        ],
        { name: 'Side' },
      ),
      road(
        3,
        [
          [-5, 6],
          [-100, 6],
        ],
        { highway: 'secondary' },
      ),
      road(
        4,
        [
          [100, 6],
          [-5, 6],
        ],
        { highway: 'secondary' },
      ),
      road(
        5,
        [
          [-100, 0],
          [0, 0],
        ],
        { highway: 'secondary' },
      ),
    ]);
    expect(turnsOn(split, [1, 2, 3])).toEqual(['junction left 90']);
  });

  it('the way onto a slip road and off it again is none; a square corner off it is one', () => {
    const slip = testMap([
      road(
        1,
        [
          [-200, 0],
          [0, 0],
        ],
        { highway: 'motorway', oneway: 'yes' },
      ),
      road(
        2,
        [
          [0, 0],
          [60, -40],
          [160, -60],
        ],
        { highway: 'motorway_link', oneway: 'yes' },
      ),
      road(
        3,
        [
          [0, 0],
          [300, 0],
        ],
        { highway: 'motorway', oneway: 'yes' },
      ),
      road(
        4,
        [
          [160, -160],
          [160, -60],
        ],
        { highway: 'primary' },
      ),
      road(
        5,
        [
          [160, -60],
          [160, 100],
        ],
        { highway: 'primary' },
      ),
    ]);
    expect(turnsOn(slip, [1, 2, 5])).toEqual(['junction left 100']);
    expect(turnsOn(slip, [1, 3])).toEqual([]);
  });

  it('a straight motorway, a gentle bend and a drive off the map have none', () => {
    const long = testMap([
      road(1, arc(0, 0, 150, 0, 90, 30), { highway: 'motorway', oneway: 'yes' }),
      road(2, arc(0, 0, 40, 0, 140, 20), { highway: 'motorway_link', oneway: 'yes' }),
    ]);
    expect(turnsOn(long, [1])).toEqual([]);
    expect(turnsOn(long, [2])).toEqual([]);
    expect(turnsOn(long, [{ offMapM: 100 }])).toEqual([]);
  });

  it('nothing is turned where a drive breaks off or a ferry lands', () => {
    const landing = testMap([
      road(1, [
        [-100, 0],
        [0, 0],
      ]),
      { id: 2, nodes: at([0, 0], [0, 100]), tags: { route: 'ferry' } },
    ]);
    expect(turnsOn(landing, [1, 2])).toEqual([]);
  });
});

describe('bends', () => {
  it('a square corner of a lane is one; of a main road it is a slip of the drawing', () => {
    const corner = (highway: string) =>
      turnsOn(
        testMap([
          road(
            1,
            [
              [-100, 0],
              [0, 0],
              [0, 100],
            ],
            { highway },
          ),
        ]),
        [1],
      );
    expect(corner('unclassified')).toEqual(['bend left 90']);
    expect(corner('trunk')).toEqual([]);
  });

  it('a bend drawn round with a wide radius is none', () => {
    const map = testMap([road(1, [[-100, -18], ...arc(0, 0, 18, -90, 0, 12), [18, 100]])]);
    expect(turnsOn(map, [1])).toEqual([]);
  });

  it('the way up to a roundabout is not turned by the ring behind it', () => {
    const map = testMap([
      road(1, [
        [-100, 0],
        [-32, 0],
        [-24, 6],
      ]),
      road(2, arc(0, 0, 24.7, 166, -20, 20), { junction: 'roundabout' }),
      road(3, [
        [23.2, -8.4],
        [100, -20],
      ]),
    ]);
    expect(turnsOn(map, [1, 2]).filter((turn) => !turn.startsWith('roundabout'))).toEqual([]);
  });

  it('a hairpin drawn place by place is measured along its middle line', () => {
    const map = testMap([
      road(1, [[-100, -9], ...arc(0, 0, 9, -90, 90, 8), [-100, 9]], { highway: 'tertiary' }),
    ]);
    const [hairpin, ...others] = findTurns(driveOn(map, [1]), map.roads);
    expect(others).toEqual([]);
    expect(hairpin).toMatchObject({ kind: 'bend', side: 'left' });
    expect(hairpin?.turnDeg).toBeGreaterThan(150);
    expect(hairpin?.drawnRadiusM).toBeCloseTo(9, 1);
  });

  it('a hairpin of three places is one, and not measured', () => {
    const map = testMap([
      road(
        1,
        [
          [-100, -8],
          [0, -8],
          [4.5, -0.2],
          [0, 7.6],
          [-100, 7.6],
        ],
        { highway: 'tertiary' },
      ),
    ]);
    const [hairpin] = findTurns(driveOn(map, [1]), map.roads);
    expect(hairpin).toMatchObject({ kind: 'bend', side: 'left', unmeasured: true });
  });
});

describe('roundabouts', () => {
  const ring = (radius: number, turnSign: 1 | -1) =>
    testMap([
      road(
        1,
        [
          [-100, 0],
          [-radius, 0],
        ],
        { name: 'West' },
      ),
      road(2, arc(0, 0, radius, 180, 180 + turnSign * 180, 12), { junction: 'roundabout' }),
      road(3, arc(0, 0, radius, 0, turnSign * 180, 12), { junction: 'roundabout' }),
      road(
        4,
        [
          [radius, 0],
          [100, 0],
        ],
        { name: 'East' },
      ),
    ]);

  it('a small one is driven onto, round and off: its exit is a flick of its own', () => {
    // left-hand traffic goes round to the right
    expect(turnsOn(ring(12, -1), [1, 2, 4])).toEqual([
      'roundabout entry left 45',
      'roundabout ring right 180',
      'roundabout exit left 45',
    ]);
  });

  it('right-hand traffic has the same mirrored', () => {
    expect(turnsOn(ring(12, 1), [1, 2, 4])).toEqual([
      'roundabout entry right 45',
      'roundabout ring left 180',
      'roundabout exit right 45',
    ]);
  });

  it('its radius is that of the whole ring, however it is cut into ways', () => {
    const map = ring(12, -1);
    const round = findTurns(driveOn(map, [1, 2, 4]), map.roads).find(({ part }) => part === 'ring');
    expect(round?.drawnRadiusM).toBeCloseTo(12, 1);
  });

  it('a mini-roundabout is the node that one turns at', () => {
    const mini = testMap(
      [
        road(1, [
          [-100, 0],
          [0, 0],
        ]),
        road(
          2,
          [
            [0, 0],
            [100, 0],
          ],
          { name: 'On' },
        ),
        road(
          3,
          [
            [0, 0],
            [0, -100],
          ],
          { name: 'Right' },
        ),
      ],
      { '0,0': { highway: 'mini_roundabout' } },
    );
    expect(turnsOn(mini, [1, 3])).toEqual(['mini-roundabout right 90']);
    expect(turnsOn(mini, [1, 2])).toEqual([]);
  });
});

describe('turning back', () => {
  it('out and back on one road is a turn of 180°', () => {
    const map = testMap([
      road(1, [
        [-100, 0],
        [0, 0],
      ]),
    ]);
    const [turn, ...others] = findTurns(driveOn(map, [1, -1]), map.roads);
    expect(others).toEqual([]);
    expect(turn).toMatchObject({ kind: 'u-turn', turnDeg: 180 });
  });
});

/** A road of legs that each turn by some angle, every leg a way with a side road at its end. */
const legs = fc.array(
  fc.record({
    turn: fc.integer({ min: -14, max: 14 }).map((tens) => 10 * tens + 3),
    lengthM: fc.integer({ min: 60, max: 200 }),
  }),
  { minLength: 1, maxLength: 6 },
);

function zigzag(list: readonly { turn: number; lengthM: number }[], mirror: 1 | -1, cut: boolean) {
  const places: [number, number][] = [[0, 0]];
  let heading = 0;
  for (const { turn, lengthM } of list) {
    const [x, y] = places.at(-1) as [number, number];
    places.push([x + lengthM * Math.cos(heading), y + mirror * lengthM * Math.sin(heading)]);
    heading += (turn * Math.PI) / 180;
  }
  const [x, y] = places.at(-1) as [number, number];
  places.push([x + 80 * Math.cos(heading), y + mirror * 80 * Math.sin(heading)]);
  const ways: TestWay[] = [];
  const steps: number[] = [];
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [places[i - 1] as [number, number], places[i] as [number, number]];
    const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
    const tags = { name: `Leg ${i}` };
    if (cut) ways.push(road(10 * i, [a, middle], tags), road(10 * i + 1, [middle, b], tags));
    else ways.push(road(10 * i, [a, middle, b], tags));
    steps.push(10 * i, ...(cut ? [10 * i + 1] : []));
    ways.push(road(10 * i + 2, [b, [b[0] + 3 * i, b[1] + 5000 + i]], { name: 'Side' }));
  }
  const map = testMap(ways);
  const back = steps.map((step) => -step).reverse();
  return {
    turns: findTurns(driveOn(map, steps), map.roads),
    back: findTurns(driveOn(map, back), map.roads),
  };
}

const shape = (turns: ReturnType<typeof findTurns>) =>
  turns.map(({ kind, side, turnDeg, fromM }) => [kind, side, Math.round(turnDeg), Math.round(fromM)]);

describe('any road', () => {
  it('mirrored has the same turns to the other side', () => {
    fc.assert(
      fc.property(legs, (list) => {
        const other = zigzag(list, -1, false).turns.map((turn) => ({
          ...turn,
          side: turn.side === 'left' ? ('right' as const) : ('left' as const),
        }));
        expect(shape(other)).toEqual(shape(zigzag(list, 1, false).turns));
      }),
      { numRuns: 150 },
    );
  });

  it('cut into more ways has the same turns', () => {
    fc.assert(
      fc.property(legs, (list) => {
        expect(shape(zigzag(list, 1, true).turns)).toEqual(shape(zigzag(list, 1, false).turns));
      }),
      { numRuns: 150 },
    );
  });

  it('driven the other way has as many turns, each to the other side', () => {
    fc.assert(
      fc.property(legs, (list) => {
        const { turns, back } = zigzag(list, 1, false);
        const there = turns.map(({ side, turnDeg }) => [side, Math.round(turnDeg)]);
        const again = back.map(({ side, turnDeg }) => [
          side === 'left' ? 'right' : 'left',
          Math.round(turnDeg),
        ]);
        expect(again.reverse()).toEqual(there);
      }),
      { numRuns: 150 },
    );
  });
});
