import { describe, expect, it } from 'vitest';
import { type CheckInput, checkDrive } from '../../../../geo/check.ts';
import type { DayPlan } from '../../../../geo/day/plan.ts';
import type { ServiceOnWay, ServicesFound } from '../../../../geo/day/service.ts';
import { servicesFoundSchema } from '../../../../geo/day/service.ts';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { readLeaving } from '../../../../geo/drive/times/leaving.ts';
import { timesOf } from '../../../../geo/drive/times/times-of.ts';
import { drivenAt } from '../../../../geo/drive/times/timetable.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import type { ServiceKind } from '../../../../geo/services/kinds.ts';
import { pointsIn } from '../../../../geo/services/points-in.ts';
import { canopyOf } from '../../../../geo/services/say-point.ts';
import { servicesNear } from '../../../../geo/wayround/stop/services-near.ts';
import { routeWithWay } from '../../../../geo/wayround/take-way.ts';
import { COACHBUILT } from '../../../support/ask.ts';
import { NORTH_M, type Planted, placeAt, twoRoads } from '../../../support/day/two-roads.ts';
import { seeded } from '../../../support/random-drives.ts';
import { endsWhereverCancelled } from '../../../support/way-round/cancelled.ts';

/** Along the southern road from 250 m to 5,750 m. */
function southRoute(): Route {
  const places = Array.from({ length: 56 }, (_, i) => placeAt(250 + 100 * i, 0));
  const segment = {
    lat: Float64Array.from(places, ({ lat }) => lat),
    lon: Float64Array.from(places, ({ lon }) => lon),
    timeMs: new Float64Array(places.length).fill(Number.NaN),
  };
  return { name: 'South', kind: 'track', number: 1, segments: [segment] };
}

/** A drive on its roads, checked. */
function checkOf(roads: Roads, route: Route, leaveAt: string, day?: DayPlan): CheckInput {
  const drive = followRoads(route, roads);
  const leaving = readLeaving(leaveAt, drive, roads);
  if (!leaving.ok) throw new Error(leaving.error.message);
  return {
    route,
    file: 'south.gpx',
    drive,
    roads,
    card: COACHBUILT,
    leaving: leaving.value,
    ...(day && { day }),
    program: 'test',
    made: '2027-01-01T00:00:00Z',
  };
}

const LEAVE_AT = '2027-06-16T09:00';

function findOn(planted: Planted, wanted: readonly ServiceKind[], day?: DayPlan): ServicesFound {
  const roads = twoRoads(planted);
  const check = checkOf(roads, southRoute(), LEAVE_AT, day);
  const found = servicesNear({ check, report: checkDrive(check), points: pointsIn(roads), wanted });
  return servicesFoundSchema.parse(found);
}

const DUMP = { amenity: 'sanitary_dump_station', 'sanitary_dump_station:basin': 'yes' };
const PUMPS = { amenity: 'fuel', name: 'Pumps' };

describe('places to see to the tanks', () => {
  it('are reached by a way off the drive and back, with the minutes it costs', () => {
    const { services, not } = findOn({ points: [{ eastM: 3250, northM: NORTH_M + 15, tags: DUMP }] }, [
      'cassette',
    ]);
    expect(not).toEqual([]);
    const [one] = services;
    expect(one?.offers).toEqual([{ kind: 'cassette', is: 'yes' }]);
    expect(one?.way?.extraM).toBeCloseTo(2 * NORTH_M, -1);
    expect(one?.extraS).toBeGreaterThan(30);
    expect(one?.arriveAt).toMatch(/^2027-06-16T09:0\d\+01:00$/);
  });

  it('need no way where the drive goes by', () => {
    const { services } = findOn({ points: [{ eastM: 3250, northM: 12, tags: PUMPS }] }, ['fuel']);
    expect(services[0]).toMatchObject({ extraS: 0, name: 'Pumps' });
    expect(services[0]).not.toHaveProperty('way');
    expect(services[0]?.stop.atM).toBeCloseTo(3000, -1);
  });

  it('come by the least detour first', () => {
    const points = [
      { eastM: 2250, northM: NORTH_M + 10, tags: { ...PUMPS, name: 'Off' } },
      { eastM: 4250, northM: 10, tags: { ...PUMPS, name: 'On' } },
    ];
    expect(findOn({ points }, ['fuel']).services.map(({ name }) => name)).toEqual(['On', 'Off']);
  });

  it('are not reached under a low bridge, and the way takes another cross road', () => {
    const points = [{ eastM: 3250, northM: NORTH_M + 15, tags: DUMP }];
    const low = { maxheight: '2.5' };
    const leftOut = (cross: Planted['cross']) => {
      const way = findOn({ points, ...(cross && { cross }) }, ['cassette']).services[0]?.way;
      return way && Math.round((way.toM - way.fromM) / 500);
    };
    expect([leftOut({}), leftOut({ 6: low }), leftOut({ 6: low, 7: low })]).toEqual([1, 2, 3]);
    const cut = Object.fromEntries(Array.from({ length: 13 }, (_, i) => [i, low]));
    const { services, not } = findOn({ points, cross: cut }, ['cassette']);
    expect(services).toEqual([]);
    expect(not[0]?.why).toMatch(/no road|leads this vehicle/i);
  });

  it('lie within roads for customers, which those who stop may use', () => {
    const points = [{ eastM: 3250, northM: NORTH_M + 15, tags: DUMP }];
    const { services } = findOn({ points, north: { 6: { access: 'customers' } } }, ['cassette']);
    expect(services).toHaveLength(1);
    expect(services[0]?.way?.verdict).not.toBe('barred');
  });

  it('say what is not mapped, and leave out what the map says no to', () => {
    const bare = { amenity: 'sanitary_dump_station' };
    const { services } = findOn({ points: [{ eastM: 3250, northM: 15, tags: bare }] }, [
      'cassette',
      'grey water',
    ]);
    expect(services[0]?.offers.map(({ is }) => is)).toEqual(['unknown', 'unknown']);
    expect(services[0]?.say.join(' ')).toContain('Whether a cassette can be emptied is not mapped');
    expect(services[0]?.say.join(' ')).toContain('Its hours are not mapped');
    const none = {
      ...bare,
      'sanitary_dump_station:basin': 'no',
      'sanitary_dump_station:chemical_toilet': 'no',
    };
    expect(findOn({ points: [{ eastM: 3250, northM: 15, tags: none }] }, ['cassette']).services).toEqual([]);
  });

  it('are told with why where no road by them will do', () => {
    const why = (northM: number, tags: Record<string, string> = {}) => {
      const north = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [i, tags]));
      return findOn({ points: [{ eastM: 3250, northM, tags: DUMP }], north }, ['cassette']).not[0]?.why;
    };
    const away = (m: number) =>
      `The nearest road that is open to this vehicle and leads on lies ${m} m away.`;
    expect(why(NORTH_M + 300)).toBe(away(300));
    expect(why(-250)).toBe(away(250));
    // the northern road closed, the next is a cross road
    expect(why(NORTH_M + 15, { motor_vehicle: 'no' })).toBe(away(250));
    expect(why(NORTH_M + 15, { highway: 'motorway' })).toBe(
      'Only the motorway beside it is on the map, where nobody may stop.',
    );
  });

  it('under a tight bridge are told with what is tight on the way there', () => {
    const tight = { 6: { maxheight: '3.15' }, 7: { maxheight: '3.15' } };
    const north = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [i, { maxheight: '3.15' }]));
    const { services } = findOn(
      { points: [{ eastM: 3250, northM: NORTH_M + 15, tags: DUMP }], cross: tight, north },
      ['cassette'],
    );
    expect(services[0]?.say.join(' ')).toMatch(/On the way there: /);
  });

  it('are refused where nobody may enter, or the roof over the pumps is too low', () => {
    const why = (tags: Record<string, string>) =>
      findOn({ points: [{ eastM: 3250, northM: 15, tags: { ...PUMPS, ...tags } }] }, ['fuel']).not[0]?.why;
    expect(why({ access: 'private' })).toContain('Private');
    expect(why({ maxheight: '2.9' })).toContain('Too low: roof over the pumps 2.90 m');
    const roof = { building: 'roof', maxheight: '2.8' };
    expect(canopyOf({ ...PUMPS, maxheight: '3.5' }, { needsM: 3.1, marginM: 0.1, roof })).toMatchObject({
      fits: false,
      say: expect.stringContaining('2.80 m'),
    });
    const fits = findOn({ points: [{ eastM: 3250, northM: 15, tags: { ...PUMPS, maxheight: '3.2' } }] }, [
      'fuel',
    ]);
    expect(fits.services[0]?.say[0]).toContain('Tight: roof over the pumps 3.20 m');
  });
});

describe('days with one of the places taken in', () => {
  it('reach it legally, at the minute told, open or not as its hours say', () => {
    const random = seeded(41);
    let taken = 0;
    for (let day = 0; day < 20; day++) {
      const draw = (most: number) => Math.floor(random() * most);
      const [opens, closes] = [7 + draw(3), 11 + draw(8)];
      const hours = `Mo-Su,PH ${String(opens).padStart(2, '0')}:00-${closes}:00`;
      const planted: Planted = {
        cross: {
          [draw(13)]: { maxheight: '2.6' },
          [draw(13)]: { access: 'private' },
          [draw(13)]: { oneway: 'yes' },
        },
        north: { [draw(12)]: { maxweight: '2' } },
        points: [
          {
            eastM: 700 + draw(4600),
            northM: draw(2) * NORTH_M + 10,
            tags: { ...DUMP, opening_hours: hours },
          },
        ],
      };
      const leaveAt = `2027-06-${10 + draw(18)}T${String(6 + draw(12)).padStart(2, '0')}:${10 + draw(50)}`;
      const homeBy = `${leaveAt.slice(0, 11)}20:00`;
      const roads = twoRoads(planted);
      const check = checkOf(roads, southRoute(), leaveAt, { stops: [], homeBy });
      const found = servicesNear({
        check,
        report: checkDrive(check),
        points: pointsIn(roads),
        wanted: ['cassette'],
      });
      for (const service of found.services) {
        taken++;
        holdsWhenTaken(check, service, { leaveAt, homeBy, opens, closes });
      }
    }
    expect(taken).toBeGreaterThan(10);
  });
});

interface DayFacts {
  readonly leaveAt: string;
  readonly homeBy: string;
  readonly opens: number;
  readonly closes: number;
}

/** The drive with the way in it, read anew as from a file, keeps what was told of the place. */
function holdsWhenTaken(check: CheckInput, { way, stop, ...told }: ServiceOnWay, facts: DayFacts): void {
  const route = way === undefined ? check.route : routeWithWay(check, way);
  const plan: DayPlan = { stops: [stop], homeBy: facts.homeBy };
  const taken = checkOf(check.roads, route, facts.leaveAt, plan);
  const report = checkDrive(taken);
  expect(report.findings.filter(({ level }) => level === 'barred')).toEqual([]);
  const [met] = report.day?.stops ?? [];
  expect(report.day?.missed).toEqual([]);
  expect(met?.arriveAt).toBe(told.arriveAt);
  const minutes = Number(met?.arriveAt?.slice(11, 13)) * 60 + Number(met?.arriveAt?.slice(14, 16));
  const isOpen = minutes >= facts.opens * 60 && minutes < facts.closes * 60;
  expect(met?.open?.is).toBe(isOpen ? 'open' : 'closed');
  expect(told.open).toEqual(met?.open);
  const times = timesOf(taken.drive, taken.roads, taken.card);
  const onS = times.totalS - drivenAt(times, met?.atM ?? 0);
  const latest = new Date(Date.parse(`${facts.homeBy}+01:00`) - 1150 * onS + 3_600_000);
  expect(met?.latestLeaveAt?.slice(0, 16)).toBe(latest.toISOString().slice(0, 16));
}

describe('a search for places that is cancelled', () => {
  it('ends in whatever phase it is', () => {
    const roads = twoRoads({ points: [{ eastM: 3250, northM: NORTH_M + 15, tags: DUMP }] });
    const check = checkOf(roads, southRoute(), LEAVE_AT);
    const report = checkDrive(check);
    const points = pointsIn(roads);
    endsWhereverCancelled((lookUp) =>
      servicesNear({
        check: { ...check, roads: { ...roads }, lookUp },
        report,
        points,
        wanted: ['cassette'],
      }),
    );
  });
});
