import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../geo/report/report.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { swing } from '../../../../geo/rules/corners/swing.ts';
import { turn } from '../../../../geo/rules/corners/turn.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { ask, COACHBUILT } from '../../../support/ask.ts';
import { driveOn, type Step, type TestMap, type TestWay, testMap } from '../../../support/drive-on.ts';

/** The 7.4 m coach-built of the turning cases: 4.035 m wheelbase, 2.42 m behind it, full lock 4.985 m. */
const LONG: VehicleCard = {
  ...COACHBUILT,
  name: '7.4 m coach-built',
  widthM: 2.32,
  lengthM: 7.4,
  wheelbaseM: 4.035,
  frontOverhangM: 0.945,
  rearOverhangM: 2.42,
  rearAxleRadiusMinM: 4.985,
};
const VAN: VehicleCard = {
  ...COACHBUILT,
  name: '6.0 m panel van',
  widthM: 2.05,
  lengthM: 6,
  wheelbaseM: 4.035,
  frontOverhangM: 0.95,
  rearOverhangM: 1.015,
  rearAxleRadiusMinM: 4.985,
};

type Spot = readonly [number, number];
const road = (id: number, places: readonly Spot[], tags: Tags): TestWay => ({
  id,
  nodes: places.map(([x, y]) => `${x / 100},${y / 100}`),
  tags,
});

/** From the west to a crossing, with roads on to the north (left) and to the south (right). */
const crossing = (from: Tags, into: Tags) =>
  testMap([
    road(
      1,
      [
        [-100, 0],
        [0, 0],
      ],
      from,
    ),
    road(
      2,
      [
        [0, 0],
        [100, 0],
      ],
      from,
    ),
    road(
      3,
      [
        [0, 0],
        [0, 100],
      ],
      { name: 'North', ...into },
    ),
    road(
      4,
      [
        [0, 0],
        [0, -100],
      ],
      { name: 'South', ...into },
    ),
  ]);

function both(map: TestMap, steps: readonly Step[], card = LONG, country = 'GB'): Finding[] {
  const drive = driveOn(map, steps);
  return [...ask(turn, map, drive, card, { country }), ...ask(swing, map, drive, card, { country })];
}
const rooms = (found: readonly Finding[]) =>
  found.map(({ subject, turn: t }) => `${subject} ${t?.side} ${t?.room}`);

const [LEFT, RIGHT] = [
  [1, 3],
  [1, 4],
] as const;
const STREET: Tags = { highway: 'residential' };

describe('turns at junctions', () => {
  it('a left turn into a 2.6 m lane needs the whole road for a 7.4 m coach-built', () => {
    const [left] = both(crossing(STREET, STREET), LEFT);
    expect(left).toMatchObject({ level: 'care', subject: 'turn', road: 'North' });
    expect(left?.turn).toMatchObject({
      kind: 'junction',
      side: 'left',
      driveSide: 'left',
      entry: { laneM: 2.6, roadM: 5.5, from: 'default' },
      room: 'whole road',
    });
    expect(left?.say).toMatch(
      /^Left turn of 90°: keep 50 cm free to the right for the tail\. It takes the whole road; on that sweep the tail swings out up to \d+ cm.*, with the wheel hard over up to 50 cm\./,
    );
    expect(left?.say).toMatch(/usual figures stand in: lane 2\.6 m, kerb radius 6 m\.$/);
  });

  it('is told in inches and feet where those are read, the same figure everywhere', () => {
    const map = crossing(STREET, STREET);
    const drive = driveOn(map, LEFT);
    const [found] = ask(turn, map, drive, LONG, { country: 'GB', units: 'imperial' });
    expect(found?.say).toMatch(/^Left turn of 90°: keep 20 in free to the right for the tail\./);
    expect(found?.say).toMatch(/usual figures stand in: lane 8\.5 ft, kerb radius 19\.7 ft\.$/);
    expect(`${found?.say}${found?.advice}`).not.toMatch(/\d (c?m|km)\b/);
    expect(ask(turn, map, drive, LONG, { country: 'GB' })[0]?.say).toContain('keep 50 cm free');
  });

  it('turned across the oncoming lane there is room', () => {
    expect(rooms(both(crossing(STREET, STREET), RIGHT))).toEqual([]);
  });

  it('driving on the right, it is the right turn that needs the room', () => {
    expect(rooms(both(crossing(STREET, STREET), RIGHT, LONG, 'DE'))).toEqual(['turn right whole road']);
    const [right] = both(crossing(STREET, STREET), RIGHT, LONG, 'DE');
    expect(right?.turn?.swing.side).toBe('left');
    expect(right?.turn?.driveSide).toBe('right');
  });

  it('the same corner mirrored has the same widths to the other side, and the kerbs of its own country', () => {
    const narrow = { ...STREET, width: '5.2' };
    const left = both(crossing(narrow, narrow), LEFT, LONG, 'IE')[0]?.turn;
    const right = both(crossing(narrow, narrow), RIGHT, LONG, 'DE')[0]?.turn;
    expect([left?.side, right?.side]).toEqual(['left', 'right']);
    expect(left?.entry).toEqual(right?.entry);
    expect([left?.kerbRadiusM, right?.kerbRadiusM]).toEqual([4.5, 3]);
  });

  it('between main roads of mapped width with round kerbs nothing is said of a short van', () => {
    const wide = { highway: 'secondary', width: '7.3' };
    expect(both(crossing(wide, wide), LEFT, VAN)).toEqual([]);
    expect(both(crossing(wide, wide), RIGHT, VAN)).toEqual([]);
  });

  it('a gentle turn, going straight on, a straight motorway and a slip road have none', () => {
    const map = testMap([
      road(
        1,
        [
          [-500, 0],
          [0, 0],
        ],
        { highway: 'motorway', oneway: 'yes', lanes: '2' },
      ),
      road(
        2,
        [
          [0, 0],
          [100, 20],
          [200, 60],
        ],
        { highway: 'motorway_link', oneway: 'yes' },
      ),
      road(
        3,
        [
          [0, 0],
          [500, 0],
        ],
        { highway: 'motorway', oneway: 'yes', lanes: '2' },
      ),
    ]);
    expect(both(map, [1, 3])).toEqual([]);
    expect(both(map, [1, 2])).toEqual([]);
    expect(both(crossing(STREET, STREET), [1, 2])).toEqual([]);
  });

  it('between lanes mapped too narrow for one sweep a long vehicle backs up once: tight, never barred', () => {
    const lane = { highway: 'unclassified', width: '3' };
    const [found] = both(crossing(lane, lane), LEFT);
    expect(found).toMatchObject({ level: 'tight', subject: 'turn', kind: 'back up once' });
    expect(found?.turn).toMatchObject({ room: 'back up', rearAxleRadiusM: 4.99 });
    expect(found?.say).toMatch(
      /^Left turn of 90°: keep 50 cm free to the right for the tail, and be ready to back up once\. On the road widths mapped no single sweep keeps the whole body 15 cm inside the kerbs; with the wheel hard over the tail swings out up to 50 cm/,
    );
    expect(found?.say).not.toContain('Not mapped');
    expect(found?.say).toContain('For the tail, usual figures stand in for what is not mapped: ');
    expect(found?.folded).toBeUndefined();
  });

  it('a second go that only usual widths ask for is said with its doubt, and not shown for a service road', () => {
    const [found] = both(crossing({ highway: 'service' }, { highway: 'service' }), LEFT);
    expect(found).toMatchObject({ level: 'care', kind: 'second go' });
    expect(found?.say).toMatch(/may need a second go, unless there is more room than usual/);
    expect(found?.folded).toBe(true);
  });

  it('an estimated width, or one of the two roads alone, leaves it at care', () => {
    const lane = { highway: 'unclassified', width: '3' };
    const estimated = { highway: 'unclassified', est_width: '3' };
    for (const [from, into] of [
      [estimated, estimated],
      [lane, { highway: 'service', lanes: '1' }],
    ] as const)
      expect(both(crossing(from, into), LEFT)).toMatchObject([{ level: 'care', kind: 'second go' }]);
  });

  it('each way of needing room has its kind, and is care', () => {
    expect(both(crossing(STREET, STREET), LEFT)).toMatchObject([{ level: 'care', kind: 'whole road' }]);
  });

  it('on a parking aisle every width is a guess, and nothing is said', () => {
    const aisle = { highway: 'service', service: 'parking_aisle' };
    expect(both(crossing(aisle, aisle), LEFT)).toEqual([]);
  });

  it('figures are told to 5 cm, with gentle under plan under worst', () => {
    const { swing: tail } = both(crossing(STREET, STREET), LEFT)[0]?.turn ?? {};
    expect(tail?.gentleM).toBeLessThan(tail?.planM ?? 0);
    expect(tail?.planFromM).toBeLessThanOrEqual(tail?.planM ?? 0);
    expect(tail?.planM).toBeLessThanOrEqual(tail?.planToM ?? 0);
    expect(tail?.planM).toBeLessThan(tail?.worstM ?? 0);
    expect(tail?.worstM).toBeCloseTo(0.459, 3);
  });
});

describe('the tail', () => {
  it('turning right out of a narrow road in its own lane, it goes over the nearside kerb', () => {
    const [found, ...others] = both(
      crossing({ highway: 'tertiary', width: '4.9' }, { ...STREET, width: '6.5' }),
      RIGHT,
    );
    expect(others).toEqual([]);
    expect(found).toMatchObject({ subject: 'swing', kind: 'kerb', level: 'care' });
    expect(found?.turn?.swing.side).toBe('left');
    expect(found?.say).toMatch(
      /to the left .* \((\d+) cm over the edge of the road where it starts \d+ cm from it\)/,
    );
    expect(found?.advice).toMatch(/left mirror.*stands at the edge of the road/);
  });

  it('that stays within its lane is no finding', () => {
    expect(
      both(crossing({ highway: 'primary', width: '7.3' }, { highway: 'primary', width: '7.3' }), RIGHT),
    ).toEqual([]);
  });

  it('one corner is one finding', () => {
    for (const steps of [LEFT, RIGHT]) {
      const found = both(crossing({ highway: 'tertiary', width: '4.9' }, { ...STREET, width: '5' }), steps);
      expect(found.length).toBe(1);
    }
  });
});

describe('circles', () => {
  const mini = (tags: Tags = {}) =>
    testMap(
      [
        road(
          1,
          [
            [-100, 0],
            [0, 0],
          ],
          STREET,
        ),
        road(
          2,
          [
            [0, 0],
            [0, -100],
          ],
          { ...STREET, name: 'South' },
        ),
      ],
      { '0,0': { highway: 'mini_roundabout', ...tags } },
    );

  it('right round a mini-roundabout of no mapped size is near full lock, and the assumption is named', () => {
    const [found] = both(mini(), [1, 2]);
    expect(found).toMatchObject({ level: 'care', subject: 'swing', kind: 'circle' });
    expect(found?.turn).toMatchObject({ kind: 'mini-roundabout', circleM: 18, room: 'own lane' });
    expect(found?.turn?.rearAxleRadiusM).toBeCloseTo(6, 1);
    expect(found?.say).toMatch(/mini-roundabout 18 m across/);
  });

  it('its diameter is taken where it is mapped', () => {
    expect(both(mini({ diameter: '28' }), [1, 2])).toEqual([]);
    expect(both(mini({ diameter: '1400' }), [1, 2])[0]?.say).toContain(
      '("diameter=1400" is mapped, and not believed)',
    );
    expect(both(mini({ diameter: '14' }), [1, 2])[0]?.turn).toMatchObject({
      circleM: 14,
      room: 'back up',
      assumed: [],
    });
  });

  it('turning back on a street takes a second go; in a wide turning place it does not', () => {
    const end = (tags: Tags) =>
      both(
        testMap(
          [
            road(
              1,
              [
                [-100, 0],
                [0, 0],
              ],
              STREET,
            ),
          ],
          { '0,0': tags },
        ),
        [1, -1],
      )[0];
    expect(end({})?.turn).toMatchObject({ kind: 'u-turn', side: 'right', circleM: 5.5, room: 'back up' });
    expect(end({ highway: 'turning_circle', diameter: '25' })).toBeUndefined();
  });
});

describe('of many corners', () => {
  it('the worst five are shown, the others folded, and one met again is no news', () => {
    const lane = { highway: 'unclassified', width: '3' };
    const ways: TestWay[] = [];
    for (let i = 0; i < 8; i++) {
      const [x, y] = [100 * Math.ceil(i / 2), 100 * Math.floor(i / 2)];
      const next: Spot = i % 2 === 0 ? [x + 100, y] : [x, y + 100];
      ways.push(road(i + 1, [[x, y], next], { ...lane, name: `Lane ${i}` }));
    }
    const there = ways.map(({ id }) => id);
    const found = both(testMap(ways), there);
    expect(found.length).toBe(7);
    expect(found.filter(({ folded }) => !folded).length).toBe(5);
    const again = both(crossing(lane, lane), [1, 3, { gapM: 50 }, 1, 3]);
    expect(again.map(({ folded }) => folded ?? false)).toEqual([false, true]);
    expect(new Set(again.map(({ id }) => id)).size).toBe(2);
  });
});
