import { describe, expect, it } from 'vitest';
import { checkDrive } from '../../geo/check.ts';
import type { Route } from '../../geo/drive/gpx/route.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { readLeaving } from '../../geo/drive/times/leaving.ts';
import { given } from '../../geo/given.ts';
import type { LoadItem } from '../../geo/load/list/load-list.ts';
import { loadResult } from '../../geo/load/load-result.ts';
import { type DriveReport, driveReportSchema } from '../../geo/report/report.ts';
import { STANDING_CAUTION } from '../../geo/report/standing-caution.ts';
import type { Tags } from '../../geo/roads/roads.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { COACHBUILT } from '../support/ask.ts';
import { roadsFrom } from '../support/build-roads.ts';

/** Where a test road lies; each runs some 2 km north from there in two ways, 1 and 2. */
const OAKHAM = { lat: 52.67, lon: -0.73 };
const KASSEL = { lat: 51.2, lon: 9.2 };
const TOURS = { lat: 47.2, lon: 0.6 };
const OPEN_SEA = { lat: 47.5, lon: -20 };

interface Asked {
  readonly at?: { readonly lat: number; readonly lon: number };
  readonly tags?: Tags;
  readonly card?: VehicleCard;
  readonly leaveAt?: string;
  readonly country?: string;
  readonly items?: readonly LoadItem[];
}

/** The report of the drive along both ways, the tags standing on the second; every report holds to the schema. */
function check({
  at = OAKHAM,
  tags = {},
  card = COACHBUILT,
  leaveAt,
  country,
  items,
}: Asked = {}): DriveReport {
  const north = (km: number): [number, number] => [at.lat + km / 111.195, at.lon];
  const roads = roadsFrom({
    nodes: { a: north(0), b: north(0.5), c: north(1), d: north(1.5), e: north(2) },
    ways: [
      { id: 1, refs: ['a', 'b', 'c'], tags: { highway: 'secondary', name: 'Long Road' } },
      { id: 2, refs: ['c', 'd', 'e'], tags: { highway: 'secondary', ...tags } },
    ],
  });
  const lat = Float64Array.from({ length: 21 }, (_, i) => north(i / 10)[0]);
  const route: Route = {
    name: 'North',
    kind: 'track',
    number: 1,
    segments: [
      { lat, lon: new Float64Array(21).fill(at.lon), timeMs: new Float64Array(21).fill(Number.NaN) },
    ],
  };
  const drive = followRoads(route, roads);
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads, country);
  if (leaving?.ok === false) throw new Error(leaving.error.message);
  const load = items === undefined ? undefined : loadResult(card, items);
  if (load?.ok === false) throw new Error(load.error.message);
  const report = checkDrive({
    route,
    file: 'north.gpx',
    drive,
    roads,
    card,
    ...given({ country, load: load?.value, leaving: leaving?.value }),
    program: 'test',
    made: '2027-06-01T00:00:00Z',
  });
  return driveReportSchema.parse(JSON.parse(JSON.stringify(report)));
}

const found = (report: DriveReport) => report.findings.map(({ level, subject }) => `${level} ${subject}`);

describe('the check of a drive', () => {
  it('along a plain road is clear, and says what it is worth', () => {
    const report = check();
    expect(report).toMatchObject({ verdict: 'clear', findings: [], country: ['GB'] });
    expect(report.cautions).toEqual([STANDING_CAUTION]);
    expect(report.match.drivenM).toBeCloseTo(2000, -1);
    expect(report.roads.map(({ way, forward }) => [way, forward])).toEqual([
      [1, true],
      [2, true],
    ]);
  });

  it('is the same each time', () => {
    const asked = { tags: { maxheight: '3', hgv: 'no' }, leaveAt: '2027-06-16T09:30' };
    expect(check(asked)).toEqual(check(asked));
  });

  it('under a bridge too low is barred there', () => {
    const report = check({ tags: { maxheight: '3' } });
    expect(found(report)).toEqual(['barred height']);
    expect(report.verdict).toBe('barred');
    expect(report.findings[0]?.fromM).toBeCloseTo(1000, -1);
  });
});

describe('with a load', () => {
  const card = {
    ...COACHBUILT,
    runningOrder: { frontKg: 1550, rearKg: 1450, includesDriver: true, includesFreshWater: false },
  };

  it('the report holds it, and an overload is a caution and no verdict', () => {
    const heavy = check({ card, items: [{ name: 'box', massKg: 593, xM: 2 }] });
    expect(heavy.load).toMatchObject({ grossKg: 3593, spare: { grossKg: -93 }, over: ['gross'] });
    expect(heavy.verdict).toBe('clear');
    expect(heavy.cautions.slice(0, 3)).toEqual([
      STANDING_CAUTION,
      'The vehicle must not leave as loaded, whatever the road allows.',
      'The vehicle is over its plate by 93 kg: 3593 kg on 3500 kg.',
    ]);
    const light = check({ card, items: [{ name: 'box', massKg: 100, xM: 2 }] });
    expect(light.load?.over).toEqual([]);
    expect(light.cautions).toEqual([STANDING_CAUTION]);
  });

  it('above its plate is barred where the plate alone would pass', () => {
    const items = [{ name: 'box', massKg: 593, xM: 2 }];
    expect(found(check({ card, tags: { maxweight: '3.5' } }))).toEqual([]);
    expect(found(check({ card, items, tags: { maxweight: '3.5' } }))).toEqual(['barred mass']);
  });
});

describe('with a leave time', () => {
  it('each finding has the clock of its place, and the drive its arrival', () => {
    const report = check({ tags: { maxheight: '3' }, leaveAt: '2027-06-12T09:30' });
    // 1 km at about 40 to 60 mph and a start
    expect(report.findings[0]?.passesAt).toMatch(/^2027-06-12T09:3[01]\+01:00$/);
    expect(report.timetable).toMatchObject({ leaveAt: '2027-06-12T09:30+01:00' });
    expect(report.timetable?.arriveAt).toMatch(/^2027-06-12T09:3[1-4]\+01:00$/);
    expect(report.leaveAt).toBe('2027-06-12T09:30');
  });

  it('in winter has the winter clock, and abroad the other country’s', () => {
    const tags = { maxheight: '3' };
    expect(check({ tags, leaveAt: '2027-01-12T09:30' }).findings[0]?.passesAt).toContain('+00:00');
    expect(check({ tags, at: KASSEL, leaveAt: '2027-06-12T09:30' }).findings[0]?.passesAt).toContain(
      '+02:00',
    );
  });

  it('at sea has the clock of the country that stands in', () => {
    const report = check({
      at: OPEN_SEA,
      country: 'GB',
      tags: { maxheight: '3' },
      leaveAt: '2027-06-12T09:30',
    });
    expect(report.country).toEqual(['GB']);
    expect(report.findings[0]?.passesAt).toContain('+01:00');
  });

  it('that the clocks skip is said, and one they show twice is the earlier', () => {
    // Great Britain 2027: forward on 28 March at 01:00, back on 31 October at 02:00
    const skipped = check({ leaveAt: '2027-03-28T01:30' });
    expect(skipped.cautions[1]).toContain('There is no 01:30 that night');
    expect(skipped.timetable?.leaveAt).toBe('2027-03-28T02:30+01:00');
    // the check was made in June
    expect(skipped.timetable?.past).toBe(true);
    expect(skipped.cautions[2]).toBe('This leave time is past: Sunday 28 March 2027, 01:30.');
    const twice = check({ leaveAt: '2027-10-31T01:30' });
    expect(twice.cautions[1]).toContain('01:30 twice');
    expect(twice.timetable?.leaveAt).toBe('2027-10-31T01:30+01:00');
    expect(twice.timetable?.past).toBeUndefined();
  });

  it('past midnight is judged on the next day', () => {
    const tags = { 'motor_vehicle:conditional': 'no @ (Th 00:00-06:00)' };
    expect(found(check({ tags, leaveAt: '2027-06-16T23:59' }))).toEqual(['barred access']);
    expect(found(check({ tags, leaveAt: '2027-06-16T23:40' }))).toEqual([]);
  });

  it('decides a limit by the hour', () => {
    const tags = { 'maxweight:conditional': '3 @ (Mo-Fr 07:00-19:00)' };
    expect(found(check({ tags }))).toEqual(['unknown mass']);
    expect(found(check({ tags, leaveAt: '2027-06-16T09:00' }))).toEqual(['barred mass']);
    expect(found(check({ tags, leaveAt: '2027-06-16T20:00' }))).toEqual([]);
  });

  it('without one has driving time alone', () => {
    const report = check({ tags: { maxheight: '3' } });
    expect(report.findings[0]?.passesAt).toBeUndefined();
    expect(report.timetable?.arriveAt).toBeUndefined();
    expect(report.timetable?.drivingS).toBeGreaterThan(60);
  });
});

describe('the rules of the country', () => {
  it('decide what a width sign is held against, and are named with their source', () => {
    const tags = { maxwidth: '2.5' };
    expect(found(check({ tags }))).toEqual(['tight width']);
    const german = check({ tags, at: KASSEL });
    expect(found(german)).toEqual(['barred width']);
    expect(german.rules).toContainEqual(
      expect.objectContaining({
        country: 'DE',
        about: 'width signs',
        source: 'StVO Anlage 2, Zeichen 264: actual width includes the outside mirrors',
        trust: 'law',
      }),
    );
  });

  it('that let a heavy motorhome by a lorry sign are named too', () => {
    const card = { ...COACHBUILT, grossKg: 4250 };
    const french = check({ tags: { hgv: 'no' }, at: TOURS, card });
    expect(french.findings).toEqual([]);
    expect(french.rules).toContainEqual(
      expect.objectContaining({ country: 'FR', about: 'signs for goods vehicles' }),
    );
    expect(found(check({ tags: { hgv: 'no' }, at: KASSEL, card }))).toEqual(['barred access']);
    expect(found(check({ tags: { hgv: 'no' }, at: OPEN_SEA, card }))).toEqual(['unknown access']);
  });

  it('that let a word stand for the height of a tunnel are named', () => {
    const about = (tags: Tags) => check({ tags }).rules?.map((rule) => rule.about);
    expect(about({ tunnel: 'yes', maxheight: 'none' })).toContain('roads without a height sign');
    expect(about({ maxheight: 'none' })).not.toContain('roads without a height sign');
  });

  it('from memory say so', () => {
    const french = check({ tags: { maxwidth: '2.5' }, at: TOURS });
    expect(french.rules?.find((rule) => rule.about === 'width signs')?.trust).toBe('memory');
  });

  it('where the place tells no country are those of the one that stands in', () => {
    expect(check({ at: OPEN_SEA }).country).toEqual([]);
    expect(check({ at: OPEN_SEA, country: 'DE', tags: { maxwidth: '2.5' } })).toMatchObject({
      country: ['DE'],
      verdict: 'barred',
    });
    expect(check({ at: OAKHAM, country: 'DE' }).country).toEqual(['GB']);
  });
});
