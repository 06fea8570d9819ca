import { describe, expect, it } from 'vitest';
import { loadResult } from '../../../geo/load/load-result.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { mapWithSurroundings } from '../../support/ask-around.ts';
import { COACH_BUILT as CARD } from '../../support/coach-built.ts';
import { driveOn, type TestWay, testMap } from '../../support/drive-on.ts';
import { road, waysRoundOn } from '../../support/way-round/ask-ways.ts';
import { endsWhereverCancelled } from '../../support/way-round/cancelled.ts';

/** A street of four pieces, the third under a bridge of 2.5 m. */
const STREET = [
  road(1, ['0,0', '5,0']),
  road(2, ['5,0', '10,0']),
  road(3, ['10,0', '12,0'], { maxheight: '2.5' }),
  road(4, ['12,0', '20,0']),
];
const ALONG = [1, 2, 3, 4];

/** The same street with its third piece closed to motor vehicles. */
function closedStreet() {
  return STREET.map((way) => (way.id === 3 ? { ...way, tags: { ...way.tags, motor_vehicle: 'no' } } : way));
}

describe('a way past a bar', () => {
  it('leaves the drive before it and meets it behind, and is told with what it costs', () => {
    const { waysRound, noWayRound } = waysRoundOn(
      [...STREET, road(5, ['5,0', '5,3', '12,3', '12,0'])],
      ALONG,
    );
    expect(noWayRound).toEqual([]);
    expect(waysRound).toHaveLength(1);
    const [way] = waysRound;
    expect(way?.fromM).toBeCloseTo(500, -1);
    expect(way?.toM).toBeCloseTo(1200, -1);
    expect(way?.lengthM).toBeCloseTo(1300, -1);
    expect(way?.extraM).toBeCloseTo(600, -1);
    expect(way?.roads).toMatchObject([{ way: 5, forward: true, fromM: 0 }]);
    expect(way?.path).toHaveLength(4);
    expect(way?.verdict).not.toBe('barred');
    expect(way?.extraS).toBeGreaterThan(0);
  });

  it('is told twice where the quickest one drops much of the drive: another keeps most of it', () => {
    const ways = [
      road(1, ['0,0', '5,0']),
      road(2, ['5,0', '5,28', '5,30']),
      road(3, ['5,30', '12,30'], { maxheight: '2.5' }),
      road(4, ['12,30', '12,28', '12,0']),
      road(5, ['12,0', '20,0']),
      road(6, ['5,0', '12,0']),
      road(7, ['5,28', '5,26', '12,26', '12,28']),
    ];
    const { waysRound } = waysRoundOn(ways, [1, 2, 3, 4, 5]);
    expect(waysRound.map(({ roads }) => roads.map(({ way }) => way))).toEqual([[6], [7]]);
    expect(waysRound.map(({ fromM, toM }) => Math.round((toM - fromM) / 100))).toEqual([67, 11]);
  });

  it('is no road at all where the drive goes into a closed street and out again: the place of that is its path', () => {
    const spur = road(6, ['5,0', '5,3', '6,3', '5,0'], { motor_vehicle: 'no' });
    const { waysRound } = waysRoundOn([...STREET.slice(0, 2), spur], [1, 6, 2]);
    expect(waysRound).toMatchObject([{ lengthM: 0, roads: [] }]);
    expect(waysRound[0]?.path).toHaveLength(1);
    expect(waysRound[0]?.toM).toBeGreaterThan((waysRound[0]?.fromM ?? 0) + 600);
  });

  it('is not the nearer road where that is barred too', () => {
    const { waysRound } = waysRoundOn(
      [
        ...STREET,
        road(5, ['5,0', '5,1', '12,1', '12,0'], { maxweight: '2.8' }),
        road(6, ['5,0', '5,-4', '12,-4', '12,0']),
      ],
      ALONG,
    );
    expect(waysRound.map(({ roads }) => roads.map(({ way }) => way))).toEqual([[6]]);
  });

  it('does not lead through ground that only those who go there may enter', () => {
    const zone = road(5, ['5,0', '5,3', '12,3', '12,0'], { access: 'destination' });
    const { waysRound, noWayRound } = waysRoundOn(
      [...closedStreet(), { ...zone, tags: { ...zone.tags, name: 'Dell' } }],
      ALONG,
    );
    expect(waysRound).toEqual([]);
    expect(noWayRound).toMatchObject([{ kind: 'cut off' }]);
    expect(noWayRound[0]?.why).toContain('Dell');
  });

  it('passes two bars close together at once', () => {
    const tight = [
      ...STREET.slice(0, 3),
      road(4, ['12,0', '14,0'], { maxwidth: '1.9' }),
      road(7, ['14,0', '20,0']),
    ];
    const { waysRound } = waysRoundOn([...tight, road(5, ['5,0', '5,3', '14,3', '14,0'])], [1, 2, 3, 4, 7]);
    expect(waysRound).toHaveLength(1);
    expect(waysRound[0]?.findingIds).toHaveLength(2);
  });

  it('is neither the road that the firm measured as too low, nor barred by what it measured as high enough', () => {
    const ways = [
      ...STREET,
      road(5, ['5,0', '5,1', '12,1', '12,0']),
      road(6, ['5,0', '5,-4', '12,-4', '12,0']),
    ];
    const measured = (heightM: number) => {
      const { lat, lon } = testMap(ways).roads.nodes;
      const corner = 6;
      const note = {
        id: 'n1',
        at: { lat: lat[corner]!, lon: lon[corner]! },
        osm: { type: 'way' as const, id: 5 },
        say: 'Branch',
        heightM,
      };
      const { waysRound } = waysRoundOn(ways, ALONG, {}, { localNotes: [note] });
      return waysRound.map(({ roads }) => roads.map(({ way }) => way));
    };
    expect(measured(4)[0]).toEqual([5]);
    expect(measured(2.5)).toEqual([[6]]);
  });

  it('turns round only where the map has room for it', () => {
    // the way round begins behind the drive's start: it has to turn
    const ways = [
      road(1, ['3,0', '5,0']),
      road(8, ['0,0', '3,0']),
      ...STREET.slice(1),
      road(9, ['5,0', '5,-2']),
      road(5, ['0,0', '0,3', '12,3', '12,0']),
    ];
    expect(waysRoundOn(ways, ALONG).noWayRound).toMatchObject([{ kind: 'no room to turn' }]);
    const { waysRound } = waysRoundOn(ways, ALONG, { '5,-2': { highway: 'turning_circle' } });
    expect(waysRound.map(({ roads }) => roads.map(({ way }) => way))).toEqual([[9, 9, 1, 8, 5]]);
  });
});

describe('why there is no way past a bar', () => {
  it('names the limit that would have to give, and by how much', () => {
    const low = road(5, ['5,0', '5,3', '12,3', '12,0'], { maxheight: '3.0' });
    const { noWayRound } = waysRoundOn([...STREET, low], ALONG);
    expect(noWayRound).toMatchObject([
      { kind: 'limits', gives: [{ of: 'road', osm: [{ type: 'way' }], subject: 'height', unit: 'm' }] },
    ]);
  });

  it('names the rack where the vehicle passes without it', () => {
    const short = road(3, ['10,0', '12,0'], { maxlength: '7.5' });
    const { noWayRound } = waysRoundOn(
      [...STREET.slice(0, 2), short, ...STREET.slice(3)],
      ALONG,
      {},
      {
        card: { ...CARD, rack: { lengthM: 0.6, widthM: 2, fitted: true } },
      },
    );
    expect(noWayRound).toMatchObject([
      { kind: 'limits', gives: [{ of: 'vehicle', osm: [], subject: 'length' }] },
    ]);
  });

  it('says that the drive itself begins or ends barred', () => {
    const first = waysRoundOn(STREET, [3, 4]).noWayRound;
    expect(first).toMatchObject([{ kind: 'start or end barred' }]);
    expect(waysRoundOn(STREET, [1, 2, 3]).noWayRound).toMatchObject([{ kind: 'start or end barred' }]);
  });

  it('says that no other road is there, or that the map ends', () => {
    const closed = closedStreet();
    expect(waysRoundOn(closed, ALONG).noWayRound).toMatchObject([{ kind: 'cut off' }]);
    const leaving = [
      ...closed,
      road(7, ['5,0', '5,9'], { highway: 'primary' }),
      road(8, ['12,9', '12,0'], { highway: 'primary' }),
    ];
    expect(waysRoundOn(leaving, ALONG).noWayRound).toMatchObject([{ kind: 'edge of the map' }]);
  });
});

describe('a search for ways that is cancelled', () => {
  it('ends in whatever phase it is: finding ways, or finding why there is none', () => {
    const round = road(5, ['5,0', '5,3', '12,3', '12,0']);
    endsWhereverCancelled((lookUp) => waysRoundOn([...STREET, round], ALONG, {}, { lookUp }));
    endsWhereverCancelled((lookUp) => waysRoundOn(STREET, ALONG, {}, { lookUp }));
  });
});

describe('what cuts the drive off', () => {
  const among = (ways: readonly TestWay[]) => waysRoundOn(ways, ALONG).noWayRound[0];

  it('is a river or a railway that lies between, by its name where it has one', () => {
    const across = (tags: Tags): TestWay => ({ id: 9, nodes: ['10,-9', '10,9'], tags, around: true });
    // nobody may go straight on from the second piece into the third
    const open = [
      road(1, ['0,0', '5,0']),
      road(2, ['5,0', '10,0']),
      road(3, ['10,0', '12,0']),
      road(4, ['12,0', '20,0']),
    ];
    const tags = { type: 'restriction', restriction: 'no_straight_on' };
    const why = (line: Tags) => {
      const map = mapWithSurroundings([...open, across(line)]);
      const node = map.roads.ways.refs[map.roads.ways.start[2] ?? 0] ?? 0;
      const [id, lat, lon] = [
        map.roads.nodes.id[node] ?? 0,
        map.roads.nodes.lat[node] ?? 0,
        map.roads.nodes.lon[node] ?? 0,
      ];
      const restriction = { id: 1, from: [2], to: [3], viaNodes: [id], viaWays: [], tags };
      const drive = driveOn(map, ALONG, { brokenTurns: [{ atM: 1000, restriction, lat, lon }] });
      const roads = { ...map.roads, restrictions: [restriction] };
      return waysRoundOn(open, ALONG, {}, { roads, drive }).noWayRound[0]?.why;
    };
    expect(why({ waterway: 'river', name: 'Ouse' })).toBe(
      'There is none: Ouse (a river) lies between, and no other road across it is mapped.',
    );
    expect(why({ waterway: 'canal' })).toContain(': a canal lies between');
    expect(why({ railway: 'rail' })).toContain(': a railway lies between');
    expect(why({ waterway: 'ditch' })).toContain(
      'no other road on the map leads from before it to behind it',
    );
    expect(why({ railway: 'abandoned' })).toContain('no other road on the map leads');
  });

  it('is every road across, when all are closed: three are named', () => {
    const closed = [3, 4, 5, 6, 7].map((y, i) =>
      road(20 + i, ['5,0', `5,${y}`, `12,${y}`, '12,0'], {
        access: 'private',
        ...(i > 0 && { name: `Lane ${i}` }),
      }),
    );
    const found = among([...closedStreet(), ...closed]);
    expect(found?.kind).toBe('cut off');
    expect(found?.why).toContain('a residential without a name');
    expect(found?.why).toMatch(/ and \d more\)\.$/);
  });

  it('may be a weight: the plate’s limit by its road, the load’s by what has to come off', () => {
    const weak = (maxweight: string) => [
      ...STREET.slice(0, 2),
      road(3, ['10,0', '12,0'], { maxweight, name: 'Mill Lane' }),
      ...STREET.slice(3),
    ];
    const gives = among(weak('3'))?.gives;
    expect(gives).toMatchObject([{ of: 'road', subject: 'mass', unit: 'kg' }]);
    expect(gives?.[0]?.say).toMatch(/^The mass limit of 3 on Mill Lane is short by \d+ kg\.$/);
  });
});

it('an overloaded vehicle is told what has to come off where a lighter one finds a way', () => {
  const ways = [
    road(1, ['0,0', '5,0']),
    road(2, ['5,0', '12,0'], { maxweight: '3.5' }),
    road(3, ['12,0', '20,0']),
  ];
  const card = { ...CARD, grossKg: 3400, unladenKg: 2900 };
  const load = loadResult(card, [{ name: 'Tiles', massKg: 700, xM: 2, kind: 'thing' }]);
  if (!load.ok) throw new Error(load.error.message);
  const overKg = Math.round(load.value.grossKg - card.grossKg);
  const heavy = waysRoundOn(ways, [1, 2, 3], {}, { country: 'GB', card, load: load.value });
  expect(overKg).toBeGreaterThan(100);
  expect(heavy.waysRound).toEqual([]);
  expect(heavy.noWayRound).toMatchObject([
    { kind: 'limits', gives: [{ of: 'vehicle', subject: 'mass', unit: 'kg' }] },
  ]);
  expect(heavy.noWayRound[0]?.why).toMatch(
    /^There is none for the vehicle as it is\. .* kg have to come off, water first\.$/,
  );
});
