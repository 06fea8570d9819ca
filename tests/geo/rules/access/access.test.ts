import { describe, expect, it } from 'vitest';
import { given } from '../../../../geo/given.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { access } from '../../../../geo/rules/access/access.ts';
import { sayAccess, sayBrokenTurn, sayDoubt, saySomeLanes } from '../../../../geo/rules/access/say-access.ts';
import { map } from '../../../../geo/rules/road/map.ts';
import type { Access, AccessDoubt } from '../../../../geo/tags/access.ts';
import type { Reach } from '../../../../geo/tags/conditional/context.ts';
import type { LaneLimit } from '../../../../geo/tags/lanes.ts';
import type { TurnRule } from '../../../../geo/tags/turn-restriction.ts';
import { ask, askDrive, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { driveOn, testMap } from '../../../support/drive-on.ts';

/** Three roads in a row, the tags on the middle one (2) or on an end (1, 3). */
function threeRoads(tags: Partial<Record<1 | 2 | 3, Tags>>) {
  const way = (id: 1 | 2 | 3, nodes: string[]) => ({
    id,
    nodes,
    tags: { highway: 'residential', ...tags[id] },
  });
  return testMap([way(1, ['0,0', '3,0']), way(2, ['3,0', '6,0']), way(3, ['6,0', '9,0'])]);
}

function through(tags: Tags): string[] {
  return askDrive(access, threeRoads({ 2: tags }), [1, 2, 3]).map((finding) => finding.level);
}

function atTheEnd(tags: Tags): string[] {
  return askDrive(access, threeRoads({ 3: tags }), [1, 2, 3]).map((finding) => finding.level);
}

describe('access', () => {
  it.each<[string, string[], string[]]>([
    ['no', ['barred'], ['barred']],
    ['private', ['barred'], ['unknown']],
    ['permit', ['barred'], ['unknown']],
    ['delivery', ['barred'], ['unknown']],
    ['agricultural', ['barred'], ['unknown']],
    ['forestry', ['barred'], ['unknown']],
    ['destination', ['barred'], []],
    ['customers', ['barred'], []],
    ['discouraged', ['tight'], ['care']],
    ['local', ['unknown'], ['unknown']],
    ['yes', [], []],
    ['permissive', [], []],
    ['designated', [], []],
  ])('%s is %j passing through and %j at the drive’s end', (value, passing, within) => {
    expect(through({ motor_vehicle: value })).toEqual(passing);
    expect(atTheEnd({ motor_vehicle: value })).toEqual(within);
    expect(askDrive(access, threeRoads({ 1: { access: value } }), [1, 2, 3]).map((one) => one.level)).toEqual(
      within,
    );
  });

  it('for residents is forgiven only within the unbroken run at an end', () => {
    const destination = { vehicle: 'destination' };
    const ends = threeRoads({ 2: destination, 3: { access: 'private' } });
    expect(askDrive(access, ends, [1, 2, 3]).map((one) => one.level)).toEqual(['unknown']);
    const broken = threeRoads({ 1: destination, 2: {}, 3: destination });
    expect(askDrive(access, broken, [1, 2, 3])).toEqual([]);
    expect(askDrive(access, broken, [2, 3, -3, -2]).map((one) => one.level)).toEqual(['barred']);
  });

  it('at an end is not lost to a last road whose own access nobody can tell', () => {
    const square = { highway: 'pedestrian', access: 'customers' };
    const yard = threeRoads({ 2: { highway: 'service', access: 'private' }, 3: square });
    expect(askDrive(access, yard, [1, 2, 3]).map((one) => one.level)).toEqual(['unknown', 'unknown']);
  });

  it('at an end is not lost by a short start off the road, and is by a long one', () => {
    const roads = threeRoads({ 1: { access: 'customers' } });
    expect(askDrive(access, roads, [{ offMapM: 60 }, 1, 2, 3])).toEqual([]);
    expect(askDrive(access, roads, [{ offMapM: 2000 }, 1, 2, 3])[0]?.level).toBe('barred');
  });

  it('over several ways in a row is one finding with its span and every way', () => {
    const roads = threeRoads({ 1: { access: 'no' }, 2: { access: 'no' } });
    const findings = askDrive(access, roads, [1, 2, 3]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      id: 'access:w1f,w2f',
      fromM: 0,
      osm: [
        { type: 'way', id: 1 },
        { type: 'way', id: 2 },
      ],
    });
    expect(findings[0]?.toM).toBeCloseTo(600, 0);
  });

  it('met twice is two findings, the second with its pass', () => {
    const loop = testMap([
      { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential', access: 'no' } },
      { id: 2, nodes: ['3,0', '3,3', '0,0'], tags: { highway: 'residential' } },
    ]);
    expect(askDrive(access, loop, [1, 2, 1, 2]).map((one) => one.id)).toEqual(['access:w1f', 'access:w1f#2']);
    expect(askDrive(access, loop, [1, 2, 1, 2])).toEqual(askDrive(access, loop, [1, 2, 1, 2]));
  });

  it.each(['footway', 'cycleway', 'pedestrian', 'busway', 'construction'])('bars a %s', (highway) => {
    expect(through({ highway })).toEqual(['barred']);
    expect(through({ highway, motor_vehicle: 'yes' })).toEqual([]);
  });

  it('of a closed road is unknown where another road fits the drive about as well, and says so', () => {
    const roads = threeRoads({ 2: { highway: 'busway' } });
    const doubtful = driveOn(roads, [1, 2, 3], { doubtful: [{ fromM: 310, toM: 590 }] });
    const [said] = ask(access, roads, doubtful);
    expect(said).toMatchObject({ level: 'unknown', kind: 'closed', wants: 'route' });
    expect(said?.say).toContain('another road fits the route about as well');
    const brushed = driveOn(roads, [1, 2, 3], { doubtful: [{ fromM: 310, toM: 350 }] });
    expect(ask(access, roads, brushed)[0]?.level).toBe('barred');
  });

  it('of one direction binds in that direction', () => {
    expect(askRoad(access, { 'motor_vehicle:backward': 'no' })).toEqual([]);
    expect(askRoad(access, { 'motor_vehicle:backward': 'no' }, { backward: true })[0]?.level).toBe('barred');
  });

  it('of lorries, buses, caravans and bicycles is none of ours', () => {
    expect(through({ hgv: 'no', goods: 'no', tourist_bus: 'no', caravan: 'no', bicycle: 'no' })).toEqual([]);
  });

  it('of lorries binds a motorhome over 3.5 t or not as the country’s law has it', () => {
    const heavy = { ...COACHBUILT, grossKg: 3850 };
    const where = (country: string, card = heavy) =>
      askDrive(access, threeRoads({ 2: { hgv: 'no' } }), [1, 2, 3], card, { country });
    // Germany's sign 253 names every motor vehicle over 3.5 t but cars and buses (StVO Anlage 2)
    expect(where('DE')).toMatchObject([{ level: 'barred', tags: { hgv: 'no' } }]);
    expect(where('DE')[0]?.say).toContain('bind a motorhome over 3.5 t in Germany');
    expect(where('DE', COACHBUILT)).toEqual([]);
    // Great Britain: a motor caravan is no goods vehicle (Traffic Signs Manual chapter 3)
    expect(where('GB')).toEqual([]);
    // Belgium: royal decree of 30 July 2022
    expect(where('BE')).toEqual([]);
    // United States: by state and town, not read
    expect(where('US')).toMatchObject([{ level: 'unknown' }]);
  });

  it('of lorries by the hour is judged so too where it binds', () => {
    const heavy = { ...COACHBUILT, grossKg: 3850 };
    const roads = threeRoads({ 2: { 'hgv:conditional': 'no @ (22:00-06:00)' } });
    const at = (leaveAt?: string) =>
      askDrive(access, roads, [1, 2, 3], heavy, { country: 'DE', ...given({ leaveAt }) }).map(
        (one) => one.level,
      );
    expect(at('2027-06-16T23:00')).toEqual(['barred']);
    expect(at('2027-06-16T12:00')).toEqual([]);
    expect(at()).toEqual(['unknown']);
  });

  it('of lorries is unknown for a motorhome over 3.5 t where the country is not known', () => {
    const heavy = { ...COACHBUILT, grossKg: 3850 };
    expect(askDrive(access, threeRoads({ 2: { hgv: 'no' } }), [1, 2, 3], heavy)[0]?.level).toBe('unknown');
    expect(askDrive(access, threeRoads({ 2: { hgv: 'designated' } }), [1, 2, 3], heavy)).toEqual([]);
    const say = (country?: string) =>
      askRoad(access, { hgv: 'no' }, { card: heavy, ...given({ country }) })[0]?.say;
    expect(say()).toMatch(/over 3\.5 t here is not known: the country is not known\.$/);
    expect(say('TR')).toMatch(/over 3\.5 t in Turkey is not known\.$/);
  });

  it.each(['acess', 'Access', 'motorvehicle', 'motor_vehcile', 'vehcle', 'motorvehicle:forward'])(
    'with %s=no is unknown, since no such key is known, and lifts nothing',
    (key) => {
      expect(through({ [key]: 'no' })).toEqual(['unknown']);
      expect(through({ [key]: 'yes' })).toEqual([]);
      expect(through({ [key]: 'no', motor_vehicle: 'no' })).toEqual(['barred']);
      expect(through({ [key]: 'yes', motor_vehicle: 'no' })).toEqual(['unknown']);
    },
  );

  it('misspelt for the other direction or for others says nothing of this drive', () => {
    expect(through({ 'motorvehicle:backward': 'no' })).toEqual([]);
    expect(through({ 'acess:hgv': 'no', 'acess:bicycle': 'no' })).toEqual([]);
  });

  it.each(['motorcycle', 'motor_bicycle', 'bicycle', 'process', 'address', 'vehicle_gate'])(
    'with %s=no says nothing of motorhomes',
    (key) => expect(through({ [key]: 'no' })).toEqual([]),
  );

  it('with motorcar=no and no word on motorhomes is unknown, and barred where more is said', () => {
    expect(through({ motorcar: 'no' })).toEqual(['unknown']);
    expect(through({ motorcar: 'no', motor_vehicle: 'yes' })).toEqual([]);
    expect(through({ motorcar: 'no', access: 'private' })).toEqual(['barred']);
  });

  it.each(['destination', 'private', 'forestry', 'agricultural', 'permit', 'customers', 'delivery', 'no'])(
    'with motorcar=%s on an open road leaves the same doubt as motorcar=no',
    (value) => {
      expect(through({ motorcar: value })).toEqual(['unknown']);
      expect(through({ 'motorcar:both_ways': value })).toEqual(['unknown']);
      expect(through({ 'motorcar:forward': value })).toEqual(['unknown']);
      expect(through({ motorcar: value, motor_vehicle: 'yes' })).toEqual([]);
      expect(through({ motorcar: value, access: 'no' })).toEqual(['barred']);
    },
  );

  it('with motorcar=destination is open to who goes there', () => {
    expect(atTheEnd({ motorcar: 'destination' })).toEqual([]);
    expect(atTheEnd({ motorcar: 'private' })).toEqual(['unknown']);
  });

  it('with no lane for motor cars leaves the same doubt, with one lane for them none', () => {
    expect(through({ oneway: 'yes', 'motorcar:lanes': 'no|no' })).toEqual(['unknown']);
    expect(through({ oneway: 'yes', 'motorcar:lanes': 'no|yes' })).toEqual([]);
  });

  it('for both ways is read as the plain key, conditions and lorries too', () => {
    expect(through({ 'motor_vehicle:both_ways': 'no' })).toEqual(['barred']);
    expect(through({ 'motor_vehicle:both_ways:conditional': 'no @ (22:00-05:00)' })).toEqual(['unknown']);
    const heavy = { ...COACHBUILT, grossKg: 3850 };
    expect(askRoad(access, { 'hgv:both_ways': 'no' }, { card: heavy })[0]?.kind).toBe('lorries');
    // the lane between the directions, to turn left from
    expect(through({ 'motor_vehicle:lanes:both_ways': 'no' })).toEqual([]);
  });

  it('under hours is unknown without a leave time, which it wants, and lifts no ban for certain', () => {
    const [finding] = askRoad(access, { 'motor_vehicle:conditional': 'no @ (22:00-05:00)' });
    expect(finding).toMatchObject({
      level: 'unknown',
      wants: 'time',
      kind: 'closed',
      tags: { 'motor_vehicle:conditional': 'no @ (22:00-05:00)' },
      advice: 'Give a leave time, or pass outside these hours.',
    });
    expect(finding?.say).toContain('22:00 to 05:00');
    expect(through({ motor_vehicle: 'no', 'motor_vehicle:conditional': 'yes @ (Su)' })).toEqual(['unknown']);
    expect(through({ motor_vehicle: 'no', 'access:conditional': 'yes @ (Su)' })).toEqual(['barred']);
    expect(through({ motor_vehicle: 'yes', 'access:conditional': 'no @ (Su)' })).toEqual([]);
  });

  it('under hours among stray semicolons is judged, and under what no one can read is unknown as mapped', () => {
    const under = (condition: string, leaveAt: string) =>
      askDrive(
        access,
        threeRoads({ 2: { 'motor_vehicle:conditional': `no @ (${condition})` } }),
        [1, 2, 3],
        COACHBUILT,
        { leaveAt },
      );
    const stray = `${'; '.repeat(40)}22:00-03:00`;
    expect(under(stray, '2027-06-16T23:00')).toMatchObject([{ level: 'barred' }]);
    expect(under(stray, '2027-06-16T12:00')).toEqual([]);
    const [endless] = under('520788; 21:57+21:57+', '2027-06-16T12:00');
    expect(endless).toMatchObject({ level: 'unknown', wants: 'sign' });
    expect(endless?.say).toContain('520788; 21:57+21:57+');
  });

  it('by lane is a folded care that names the open lane, and a bar where no lane is open', () => {
    const [bus] = askRoad(access, { 'access:lanes': 'no|' });
    expect(bus).toMatchObject({ level: 'care', folded: true, advice: 'Keep to the right lane.' });
    expect(bus?.say).toContain('the left lane is closed');
    expect(askRoad(access, { 'access:lanes': 'no|no' })[0]).toMatchObject({ level: 'barred' });
    expect(askRoad(access, { 'access:lanes': 'no|perhaps' })[0]).toMatchObject({ level: 'unknown' });
    expect(askRoad(access, { motor_vehicle: 'no', 'motor_vehicle:lanes': 'no|yes' })).toMatchObject([
      { level: 'care', kind: 'lane', advice: 'Keep to the right lane.' },
    ]);
    expect(askRoad(access, { motor_vehicle: 'no', 'motor_vehicle:lanes': 'no|yes' })[0]).not.toHaveProperty(
      'folded',
    );
  });

  it('that somebody must grant is unknown where the drive ends, and wants a permission', () => {
    for (const value of ['private', 'permit', 'delivery', 'forestry'])
      expect(askDrive(access, threeRoads({ 3: { access: value } }), [1, 2, 3])).toMatchObject([
        { level: 'unknown', wants: 'permission' },
      ]);
    expect(askDrive(access, threeRoads({ 2: { access: 'local' } }), [1, 2, 3])).toMatchObject([
      { level: 'unknown', wants: 'sign', kind: 'unclear' },
    ]);
    expect(askRoad(access, { 'motor_vehicle:conditional': 'no @ delivery' })).toMatchObject([
      { level: 'unknown', wants: 'permission' },
    ]);
  });

  it('that may be advised against at some hours is no more than unknown', () => {
    const roads = threeRoads({ 2: { 'motor_vehicle:conditional': 'discouraged @ (22:00-06:00)' } });
    const at = (leaveAt?: string) => askDrive(access, roads, [1, 2, 3], COACHBUILT, given({ leaveAt }));
    expect(at()).toMatchObject([{ level: 'unknown', wants: 'time', kind: 'unsuitable' }]);
    expect(at('2027-06-16T23:00')).toMatchObject([{ level: 'tight', kind: 'unsuitable' }]);
  });

  it('by lane under hours is the same, judged at the minute of passing', () => {
    const tags = { 'motor_vehicle:lanes:conditional': 'no|yes @ (Mo-Fr 07:00-19:00)' };
    const at = (leaveAt: string) => askRoad(access, tags, { leaveAt }).map((one) => one.level);
    expect(at('2027-06-16T09:00')).toEqual(['care']);
    expect(at('2027-06-16T20:00')).toEqual([]);
    expect(askRoad(access, tags)).toMatchObject([{ level: 'care', folded: true }]);
  });
});

describe('a one-way road', () => {
  it('driven against is barred, along is free', () => {
    expect(askRoad(access, { oneway: 'yes' })).toEqual([]);
    expect(askRoad(access, { oneway: 'yes' }, { backward: true })[0]).toMatchObject({
      level: 'barred',
      tags: { oneway: 'yes' },
    });
    expect(askRoad(access, { oneway: '-1' })[0]?.level).toBe('barred');
    expect(askRoad(access, { oneway: '-1' }, { backward: true })).toEqual([]);
    expect(askRoad(access, { junction: 'roundabout' }, { backward: true })[0]?.level).toBe('barred');
  });

  it('for everyone but motor vehicles is free', () => {
    expect(askRoad(access, { oneway: 'yes', 'oneway:motor_vehicle': 'no' }, { backward: true })).toEqual([]);
  });

  it('driven against where the match is in doubt is a question of the map', () => {
    const roads = threeRoads({ 2: { oneway: '-1' } });
    const drive = driveOn(roads, [1, 2, 3], { doubtful: [{ fromM: 290, toM: 610 }] });
    expect(ask(access, roads, drive)).toEqual([]);
    expect(ask(map, roads, drive)).toMatchObject([
      { level: 'unknown', subject: 'map', id: 'map:w2f:oneway' },
    ]);
    const elsewhere = driveOn(roads, [1, 2, 3], { doubtful: [{ fromM: 0, toM: 290 }] });
    expect(ask(access, roads, elsewhere)[0]?.level).toBe('barred');
  });

  it('driven against where the road was filled in is a question of the map', () => {
    const roads = threeRoads({ 2: { oneway: '-1' } });
    const drive = driveOn(roads, [1, 2, 3], { guessed: [{ fromM: 200, toM: 700 }] });
    expect(ask(access, roads, drive)).toEqual([]);
    expect(ask(map, roads, drive).map((one) => one.id)).toContain('map:w2f:oneway');
  });

  it('that turns by the hour is unknown', () => {
    expect(askRoad(access, { oneway: 'reversible' })[0]?.level).toBe('unknown');
  });

  it('that turns by hours which are mapped is judged at the minute of passing', () => {
    const tags = { oneway: 'yes', 'oneway:conditional': '-1 @ (06:00-09:00)' };
    const along = (leaveAt?: string) => askRoad(access, tags, leaveAt ? { leaveAt } : {})[0]?.level;
    const against = (leaveAt: string) => askRoad(access, tags, { backward: true, leaveAt })[0]?.level;
    expect([along('2027-06-16T08:00'), along('2027-06-16T10:00'), along()]).toEqual([
      'barred',
      undefined,
      'unknown',
    ]);
    expect(askRoad(access, tags)[0]).toMatchObject({ kind: 'one-way', wants: 'time' });
    expect([against('2027-06-16T08:00'), against('2027-06-16T10:00')]).toEqual([undefined, 'barred']);
    expect(askRoad(access, tags, { leaveAt: '2027-06-16T08:00' })).toMatchObject([
      { opensAt: '2027-06-16T09:00' },
    ]);
    expect(askRoad(access, tags, { backward: true, leaveAt: '2027-06-16T10:00' })).toMatchObject([
      { opensAt: '2027-06-17T06:00' },
    ]);
  });
});

describe('a forbidden turn', () => {
  const roads = threeRoads({});
  function turn(tags: Tags, leaveAt?: string) {
    const restriction = { id: 77, from: [1], to: [2], viaNodes: [1002], viaWays: [], tags };
    return ask(
      access,
      roads,
      driveOn(roads, [1, 2, 3], { brokenTurns: [{ atM: 300, restriction, lat: 50, lon: 7 }] }),
      COACHBUILT,
      given({ leaveAt }),
    );
  }

  it('that is driven is barred', () => {
    expect(turn({ type: 'restriction', restriction: 'no_left_turn' })).toMatchObject([
      {
        id: 'access:r77',
        level: 'barred',
        osm: [{ type: 'relation', id: 77 }],
        tags: { restriction: 'no_left_turn' },
      },
    ]);
  });

  it('for lorries, or with motorhomes excepted, is none', () => {
    expect(turn({ 'restriction:hgv': 'no_left_turn' })).toEqual([]);
    expect(turn({ restriction: 'no_left_turn', except: 'motor_vehicle' })).toEqual([]);
  });

  it('under hours is judged at the minute of the turn, and unknown without a leave time', () => {
    const tags = { 'restriction:conditional': 'no_left_turn @ (07:00-09:00)' };
    expect(turn(tags)[0]).toMatchObject({ level: 'unknown', kind: 'turn restriction', wants: 'time' });
    expect(turn(tags, '2027-06-16T08:00')[0]).toMatchObject({
      level: 'barred',
      say: 'The turn driven here is forbidden (no left turn). It holds 07:00 to 09:00.',
      advice: 'Plan the drive without this turn. Free from 09:00.',
      opensAt: '2027-06-16T09:00',
    });
    expect(turn(tags, '2027-06-16T10:00')).toEqual([]);
    expect(
      turn({ restriction: 'no_left_turn', 'restriction:conditional': 'none @ (Su)' }, '2027-06-16T10:00'),
    ).toMatchObject([
      { level: 'barred', tags: { restriction: 'no_left_turn' }, opensAt: '2027-06-20T00:00' },
    ]);
    expect(turn({ 'restriction:conditional': 'no_left_turn @ soon' })[0]?.level).toBe('unknown');
  });

  it('of heavy vehicles is judged on the card', () => {
    expect(turn({ 'restriction:conditional': 'no_left_turn @ (weight>7.5)' })).toEqual([]);
    expect(turn({ 'restriction:conditional': 'no_left_turn @ (weight>3)' })[0]?.level).toBe('barred');
  });
});

describe('access in words', () => {
  const access = (part: Partial<Access>): Access =>
    ({ key: 'access', text: 'x', meaning: 'unknown', rank: 1, ...part }) as Access;
  const say = (part: Partial<Access>, reach: Reach = 'through') =>
    sayAccess(access(part), reach, { highway: 'residential' });

  it('says whom a road is closed to, and for whom else it is', () => {
    expect(say({ meaning: 'open', text: 'yes' })).toBe('Open (access=yes).');
    expect(say({ meaning: 'no', key: 'motorhome', text: 'no' })).toBe('Closed to motorhomes (motorhome=no).');
    expect(say({ meaning: 'no', key: 'tourist_bus', text: 'no' })).toBe(
      'Closed to motor vehicles (tourist_bus=no).',
    );
    expect(say({ meaning: 'no', key: 'motor_vehicle:forward', text: 'no' })).toBe(
      'Closed to motor vehicles (motor_vehicle:forward=no).',
    );
    expect(say({ meaning: 'permit', text: 'permit' })).toBe(
      'With a permit only (access=permit), and the drive passes through.',
    );
    expect(say({ meaning: 'permit', text: 'agricultural;forestry' }, 'within')).toBe(
      'For agricultural or forestry traffic only (access=agricultural;forestry), the drive starts or ends there.',
    );
    expect(say({ meaning: 'destination', text: 'customers' }, 'within')).toContain('For customers only');
    expect(say({ meaning: 'destination', text: 'destination' })).toContain('No through traffic');
  });

  it('says what of it is not known', () => {
    expect(say({ key: 'route', text: 'ferry' })).toBe(
      'The map does not say whether this ferry takes motor vehicles.',
    );
    expect(say({ key: 'highway', text: 'path' })).toBe(
      'The map does not say who may drive here (highway=path).',
    );
    expect(say({ key: 'motorcar', text: 'yes' })).toBe('motorcar=yes is mapped, and nothing for motorhomes.');
    expect(say({ key: 'vehicle', text: 'perhaps' })).toBe(
      '"vehicle=perhaps" is no access value that is understood.',
    );
  });

  it('says why a tag does not settle it', () => {
    const doubt = (binding: AccessDoubt['binding'], meant?: string) =>
      sayDoubt({ key: 'acces', text: 'no', binding, ...(meant && { meant }) } as AccessDoubt);
    expect(doubt('condition')).toContain('holds under a condition');
    expect(doubt('lane')).toContain('differs from lane to lane');
    expect(doubt('motorcar')).toContain('nothing for motorhomes');
    expect(doubt('misspelt', 'access')).toBe(
      '"acces=no" is mapped, and there is no such key: "access" was likely meant.',
    );
  });

  it('of lanes says which are closed and which to keep to', () => {
    const lanes = {
      boundLanes: 'lanes 1 and 2',
      boundAt: [1, 2],
      freeLanes: 'lane 3',
      freeAt: [3],
    } as unknown as LaneLimit;
    expect(saySomeLanes({ key: 'access:lanes', text: 'no|no|yes' }, lanes)).toEqual({
      say: 'Not all lanes are for us: lanes 1 and 2 are closed ("access:lanes=no|no|yes").',
      advice: 'Keep to lane 3.',
    });
    expect(
      saySomeLanes(
        { key: 'k', text: 't' },
        { ...lanes, boundAt: [1], boundLanes: 'lane 1', freeAt: [2, 3], freeLanes: 'lanes 2 and 3' },
      ),
    ).toEqual({
      say: 'Not all lanes are for us: lane 1 is closed ("k=t").',
      advice: 'Keep to one of lanes 2 and 3.',
    });
  });

  it('of a turn that is not settled asks for the sign', () => {
    expect(
      sayBrokenTurn({
        rule: 'no_left_turn',
        binds: 'unsure',
        key: 'restriction',
        text: 'no_left',
      } as unknown as TurnRule),
    ).toEqual({
      say: 'A turn restriction is mapped here and not settled ("restriction=no_left").',
      advice: 'Look for the sign before turning.',
    });
  });
});

describe('access by lane that nobody can read, or that others than motor vehicles are meant by', () => {
  const said = (tags: Record<string, string>, options: Parameters<typeof askRoad>[2] = {}) =>
    askRoad(access, tags, options).map(({ level, kind, wants, folded }) =>
      [level, kind, wants, folded && 'folded'].filter(Boolean).join(' '),
    );
  const heavyInGermany = { country: 'DE', card: { ...COACHBUILT, grossKg: 4250 } };

  it('is unknown and asks for the sign, by itself and under a condition', () => {
    expect(said({ 'motor_vehicle:lanes': 'foo|foo' })).toEqual(['unknown lane sign']);
    expect(said({ 'motor_vehicle:lanes:conditional': 'no|no @ (sometimes)' })).toEqual(['unknown lane sign']);
    expect(
      said({ 'motor_vehicle:lanes': 'yes|no', 'motor_vehicle:lanes:conditional': 'no|no @ (sometimes)' }),
    ).toEqual(['unknown lane sign']);
  });

  it('is nothing where no lane is closed at any hour, and a folded care where one may be', () => {
    expect(said({ 'motor_vehicle:lanes:conditional': 'yes|yes @ (22:00-06:00)' })).toEqual([]);
    expect(said({ 'motor_vehicle:lanes:conditional': 'yes|no @ (22:00-06:00)' })).toEqual([
      'care lane folded',
    ]);
  });

  it('of lorries binds a heavy motorhome where the country’s signs do, and says so', () => {
    expect(said({ 'hgv:lanes': 'yes|yes' }, heavyInGermany)).toEqual([]);
    expect(said({ 'hgv:lanes': 'no|yes' }, heavyInGermany)).toEqual(['care lane folded']);
    expect(said({ 'hgv:lanes': 'no|no' }, heavyInGermany)).toEqual(['barred lane']);
    expect(said({ 'hgv:lanes': 'no|no' }, { country: 'DE' })).toEqual([]);
  });

  it('of lorries in words of no meaning, or under hours without a leave time, is unknown', () => {
    expect(said({ hgv: 'foo' }, heavyInGermany)).toEqual(['unknown lorries sign']);
    expect(said({ 'hgv:conditional': 'no @ (sometimes)' }, heavyInGermany)).toEqual(['unknown lorries sign']);
    const byNight = { hgv: 'yes', 'hgv:conditional': 'no @ (22:00-06:00)' };
    expect(said(byNight, heavyInGermany)).toEqual(['unknown lorries time']);
    expect(said(byNight, { ...heavyInGermany, leaveAt: '2027-06-16T09:00' })).toEqual([]);
  });
});
