import { describe, expect, it } from 'vitest';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import type { Tags, TurnRestriction } from '../../../geo/roads/roads.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';
import { road, waysRoundOn } from '../../support/way-round/ask-ways.ts';

/** A street of three pieces, the middle one closed to motor vehicles. */
const STREET = [
  road(1, ['0,0', '5,0']),
  road(2, ['5,0', '12,0'], { motor_vehicle: 'no' }),
  road(3, ['12,0', '20,0']),
];
const ALONG = [1, 2, 3];
const NIGHT = { 'motor_vehicle:conditional': 'no @ (22:00-06:00)' };
/** A short way round that is closed by night, and a long one that never is. */
const SHORT = road(5, ['5,0', '5,2', '12,2', '12,0'], NIGHT);
const LONG = road(6, ['5,0', '5,-9', '12,-9', '12,0']);

function taken(
  ways: Parameters<typeof waysRoundOn>[0],
  leave?: string,
  restrictions: readonly TurnRestriction[] = [],
  nodeTags: Readonly<Record<string, Tags>> = {},
) {
  const map = testMap(ways, nodeTags);
  const roads = { ...map.roads, restrictions };
  const leaving = leave === undefined ? undefined : readLeaving(leave, driveOn(map, ALONG), map.roads, 'DE');
  if (leaving?.ok === false) throw new Error(leaving.error.message);
  const found = waysRoundOn(ways, ALONG, nodeTags, {
    country: 'DE',
    roads,
    ...(leaving && { leaving: leaving.value }),
  });
  return { ...found, ids: found.waysRound.map(({ roads }) => roads.map(({ way }) => way)) };
}

describe('a way that hangs on the clock', () => {
  it('is taken where it is open when the vehicle comes', () => {
    expect(taken([...STREET, SHORT, LONG], '2027-06-15T12:00').ids[0]).toEqual([5]);
  });

  it('is not where it is closed then, nor a few minutes before it closes', () => {
    expect(taken([...STREET, SHORT, LONG], '2027-06-15T23:00').ids).toEqual([[6]]);
    expect(taken([...STREET, SHORT, LONG], '2027-06-15T21:55').ids).toEqual([[6]]);
  });

  it('is open where nobody says when the drive sets off, and what it hangs on is told; the sure way is offered too', () => {
    const { waysRound, ids } = taken([...STREET, SHORT, LONG]);
    const short = waysRound[ids.findIndex(([way]) => way === 5)];
    expect(short?.findings.map(({ subject }) => subject)).toContain('access');
    expect(ids).toContainEqual([6]);
  });
});

describe('a way by ferry', () => {
  const FERRY = {
    id: 7,
    nodes: ['5,0', '12,0'],
    tags: { route: 'ferry', motor_vehicle: 'yes', duration: '00:30' },
  };

  it('is taken only where no road leads round', () => {
    expect(taken([...STREET, LONG, FERRY]).ids).toEqual([[6]]);
    expect(taken([...STREET, FERRY]).ids).toEqual([[7]]);
  });

  it('takes the time its timetable says', () => {
    const [way] = taken([...STREET, FERRY]).waysRound;
    expect(way?.extraS).toBeGreaterThan(30 * 60 - 120);
    expect(way?.extraS).toBeLessThan(75 * 60);
  });

  it('is none where the map does not say that vehicles are carried', () => {
    const onFoot = { ...FERRY, tags: { route: 'ferry', foot: 'yes', motor_vehicle: 'no' } };
    const { waysRound, noWayRound } = taken([...STREET, onFoot]);
    expect(waysRound).toEqual([]);
    expect(noWayRound).toHaveLength(1);
  });
});

describe('a drive barred where little can be done', () => {
  it('on its ferry goes round by road, or is told why not', () => {
    const ferry = {
      id: 2,
      nodes: ['5,0', '12,0'],
      tags: { route: 'ferry', motor_vehicle: 'yes', maxheight: '2.5' },
    };
    const ways = [road(1, ['0,0', '5,0']), ferry, road(3, ['12,0', '20,0'])];
    expect(
      waysRoundOn([...ways, LONG], ALONG).waysRound.map(({ roads }) => roads.map(({ way }) => way)),
    ).toEqual([[6]]);
    const { waysRound, noWayRound } = waysRoundOn(ways, ALONG);
    expect(waysRound).toEqual([]);
    expect(noWayRound).toMatchObject([{ kind: 'limits' }]);
  });

  it('on every road out of the yard is told what would have to give', () => {
    const yard = road(1, ['0,0', '5,0'], { highway: 'service' });
    const out = [2, 8].map((id) => road(id, ['5,0', id === 2 ? '12,0' : '5,6'], { maxheight: '2.8' }));
    const { waysRound, noWayRound } = waysRoundOn(
      [yard, ...out, road(3, ['12,0', '20,0']), road(9, ['5,6', '12,6', '12,0'])],
      ALONG,
    );
    expect(waysRound).toEqual([]);
    expect(noWayRound).toMatchObject([{ kind: 'limits', gives: [{ subject: 'height' }] }]);
  });

  it('within its first or its last metre begins or ends there', () => {
    const gate = { '0,0': { maxheight: '2.5' } };
    const open = STREET.map((way) => (way.id === 2 ? road(2, ['5,0', '12,0']) : way));
    const first = waysRoundOn(open, ALONG, gate);
    const last = waysRoundOn(open, ALONG, { '20,0': { maxheight: '2.5' } });
    for (const { waysRound, noWayRound } of [first, last])
      expect([waysRound, noWayRound]).toMatchObject([[], [{ kind: 'start or end barred' }]]);
  });
});

describe('a way that a forbidden turn stands in the way of', () => {
  const short = road(5, ['5,0', '5,2', '12,2', '12,0']);
  const forbids = (tags: Tags): TurnRestriction => ({
    id: 77,
    from: [1],
    to: [5],
    viaNodes: [1002],
    viaWays: [],
    tags: { type: 'restriction', ...tags },
  });
  /** The second node of the street is node 1002 of the map: there the short way leaves it. */
  const idsWith = (tags: Tags, leave?: string) => taken([...STREET, short, LONG], leave, [forbids(tags)]).ids;
  const BY_NIGHT = { 'restriction:conditional': 'no_left_turn @ (22:00-06:00)' };

  it('is not taken while the turn is forbidden, and is at any other time', () => {
    expect(idsWith({ restriction: 'no_left_turn' })).toEqual([[6]]);
    expect(idsWith({})[0]).toEqual([5]);
    expect(idsWith(BY_NIGHT, '2027-06-15T12:00')[0]).toEqual([5]);
    expect(idsWith(BY_NIGHT, '2027-06-15T23:00')).toEqual([[6]]);
    expect(idsWith(BY_NIGHT, '2027-06-15T21:55')).toEqual([[6]]);
  });

  it('is offered with a sure one beside it where nobody can tell whether the turn is forbidden', () => {
    expect(idsWith(BY_NIGHT)).toContainEqual([6]);
    expect(
      idsWith({ 'restriction:conditional': 'no_left_turn @ (sometimes)' }, '2027-06-15T12:00'),
    ).toContainEqual([6]);
  });
});

describe('a way over a gate that is shut by night', () => {
  it('is taken by day and not by night', () => {
    const gate = {
      '5,2': { barrier: 'gate', motor_vehicle: 'yes', 'motor_vehicle:conditional': 'no @ (22:00-06:00)' },
    };
    const open = road(5, ['5,0', '5,2', '12,2', '12,0']);
    const ids = (leave: string) => taken([...STREET, open, LONG], leave, [], gate).ids;
    expect(ids('2027-06-15T12:00')).toContainEqual([5]);
    expect(ids('2027-06-15T23:00')).toEqual([[6]]);
  });
});
