import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDrive } from '../../../geo/check.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { sayBetterTimes, spanHolding } from '../../../geo/leave/say-leave.ts';
import { countByLevel } from '../../../geo/report/level.ts';
import { type DriveReport, driveReportSchema } from '../../../geo/report/report.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { COACHBUILT } from '../../support/ask.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';

const ROUTE: Route = { name: 'East', kind: 'track', number: 1, segments: [] };
const LORRY_SIZED: VehicleCard = { ...COACHBUILT, grossKg: 5000 };

interface Mapped {
  /** tags of the ways of the drive, in order; each 5 km */
  readonly ways: readonly Tags[];
  /** tags of the node between the first way and the second */
  readonly node?: Tags;
  /** a turn restriction broken there */
  readonly restriction?: Tags;
  readonly card?: VehicleCard;
}

/** Checks the drive east along ways in Germany, whose clocks are Berlin's, with the same drive for each leave time. */
function driveEast({ ways, node = {}, restriction, card = COACHBUILT }: Mapped) {
  const map = testMap(
    ways.map((tags, i) => ({
      id: i + 1,
      nodes: [`${i * 50},0`, `${i * 50 + 50},0`],
      tags: { highway: 'tertiary', maxspeed: '50', ...tags },
    })),
    { '50,0': node },
  );
  const drive = driveOn(
    map,
    ways.map((_, i) => i + 1),
    restriction && {
      brokenTurns: [
        {
          atM: 5000,
          lat: 50,
          lon: 7.07,
          restriction: { id: 9, tags: restriction, from: [1], to: [2], viaNodes: [], viaWays: [] },
        },
      ],
    },
  );
  return (leaveAt: string): DriveReport => {
    const leaving = readLeaving(leaveAt, drive, map.roads);
    if (!leaving.ok) throw new Error(leaving.error.message);
    const report = checkDrive({
      route: ROUTE,
      file: 'east.gpx',
      drive,
      roads: map.roads,
      card,
      leaving: leaving.value,
      program: 'test',
      made: '2027-06-01T00:00:00Z',
    });
    return driveReportSchema.parse(report);
  };
}

const CLOSED = { 'motor_vehicle:conditional': 'no @ (07:00-17:00)' };
/** A Wednesday. */
const DAY = '2027-06-16';
const verdicts = ({ leaveTimes = [] }: DriveReport) =>
  leaveTimes.map(({ from, to, verdict }) => `${from.slice(11)}-${to.slice(11)} ${verdict}`);

describe('the leave times of a day', () => {
  it('are one part where no hours are mapped, and none without a leave time', () => {
    expect(verdicts(driveEast({ ways: [{}] })(`${DAY}T09:00`))).toEqual(['00:00-24:00 clear']);
  });

  it('are those of the closure less the driving to it, and the road must be left before it shuts', () => {
    // 5 km at about 50 km/h: some 6 to 7 minutes to the closed road, twice that to its end
    const report = driveEast({ ways: [{}, CLOSED] })(`${DAY}T08:20`);
    const times = report.leaveTimes ?? [];
    expect(times.map(({ verdict }) => verdict)).toEqual(['clear', 'unknown', 'barred', 'unknown', 'clear']);
    expect(times[0]?.to.slice(11) ?? '').toMatch(/^06:4[2-7]$/);
    expect(times[1]?.to.slice(11) ?? '').toMatch(/^06:5[2-5]$/);
    expect(times.at(-1)?.from.slice(11) ?? '').toMatch(/^16:5[2-5]$/);
  });

  it('at which a finding is passed by stand in it and are said with when it is met', () => {
    const report = driveEast({ ways: [{}, CLOSED] })(`${DAY}T08:20`);
    const [finding] = report.findings;
    const [before, after] = finding?.leaveTimes ?? [];
    expect(finding?.leaveTimes).toHaveLength(2);
    expect([before?.from, after?.to]).toEqual([`${DAY}T00:00`, `${DAY}T24:00`]);
    expect(finding?.advice).toBe(
      `Take another road. Free from 17:00. You pass at ${finding?.passesAt?.slice(11, 16)}; leave before ${before?.to.slice(11)} or after ${after?.from.slice(11)}.`,
    );
  });

  it('between two closures of a day are said too', () => {
    const twice = { 'motor_vehicle:conditional': 'no @ (07:00-09:00,15:00-17:00)' };
    const [finding] = driveEast({ ways: [twice] })(`${DAY}T08:20`).findings;
    expect(finding?.advice).toMatch(/; leave before 06:5\d, between 09:00 and 14:5\d or after 17:00\.$/);
  });

  it('are none where the road stays shut all day, and that is said', () => {
    const [finding] = driveEast({ ways: [{ 'motor_vehicle:conditional': 'no @ (We)' }] })(
      `${DAY}T08:20`,
    ).findings;
    expect(finding?.leaveTimes).toEqual([]);
    expect(finding?.advice).toContain('leaving at another hour of that day does not help.');
  });

  it('free a road that is for residents in the morning only', () => {
    const morning = { 'motor_vehicle:conditional': 'destination @ (06:00-14:00)' };
    const [finding] = driveEast({ ways: [{}, morning, {}] })(`${DAY}T08:20`).findings;
    expect(finding).toMatchObject({ level: 'barred', kind: 'no through traffic' });
    expect(finding?.advice).toMatch(/; leave before 05:4\d or after 13:5\d\.$/);
  });

  it('free a road whose every lane is shut by the hour', () => {
    const lanes = { lanes: '2', 'motor_vehicle:lanes:conditional': 'no|no @ (06:00-14:00)' };
    const [finding] = driveEast({ ways: [{}, lanes, {}] })(`${DAY}T08:20`).findings;
    expect(finding).toMatchObject({ kind: 'lane' });
    expect(finding?.leaveTimes).toHaveLength(2);
  });

  it('are not told of what is the same at every hour, nor of what only asks for care', () => {
    const report = driveEast({ ways: [{ maxheight: '2.5' }, CLOSED] })(`${DAY}T08:20`);
    expect(report.findings.map(({ subject, leaveTimes }) => [subject, leaveTimes?.length])).toEqual([
      ['height', undefined],
      ['access', 2],
    ]);
    expect(report.leaveTimes?.every(({ verdict }) => verdict === 'barred')).toBe(true);
  });

  it('count the hours of a place in its own zone on the night its clocks go forward, and back', () => {
    const night = { 'motor_vehicle:conditional': 'no @ (01:30-03:30)' };
    const check = driveEast({ ways: [night] });
    // Germany: 28 March 2027 02:00 becomes 03:00, 31 October 2027 03:00 becomes 02:00 (directive 2000/84/EC)
    for (const day of ['2027-03-28', '2027-10-31'])
      for (let minute = 60; minute < 240; minute += 13) {
        const time = `${day}T0${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
        const report = check(time);
        expect([time, spanHolding(report.leaveTimes ?? [], time)?.verdict]).toEqual([time, report.verdict]);
      }
  });
});

describe('a better time of the same day', () => {
  it('is told with what it is better than, parts of a day joined', () => {
    const report = driveEast({ ways: [{ maxheight: '3.2' }, CLOSED] })(`${DAY}T08:20`);
    expect(sayBetterTimes(report)).toMatch(/^Leave 00:00-06:4\d or 16:5\d-24:00: tight instead of barred\.$/);
  });

  it('is not told where the verdict is the best of its day', () => {
    const check = driveEast({ ways: [{}, CLOSED] });
    expect(sayBetterTimes(check(`${DAY}T20:00`))).toBeUndefined();
    expect(sayBetterTimes(driveEast({ ways: [{ maxheight: '2.5' }] })(`${DAY}T08:20`))).toBeUndefined();
  });
});

const HOURS = [
  '07:00-09:00',
  'Mo-Fr 06:00-10:00,15:30-18:15',
  '22:00-05:00',
  'We 00:00-24:00',
  'sunrise-sunset',
  'PH,Sa,Su 10:00-20:00',
  'SH 08:00-12:00',
  'Jun 16 12:00-Jun 17 03:00',
  '24/7',
  'market day',
] as const;
const value = fc.constantFrom('no', 'yes', 'destination', 'private', 'discouraged');
const condition = fc
  .array(fc.tuple(value, fc.constantFrom(...HOURS)), { minLength: 1, maxLength: 2 })
  .map((clauses) => clauses.map(([what, when]) => `${what} @ (${when})`).join('; '));
const limit = fc
  .tuple(fc.constantFrom('2.5', '3.1', '3.2', 'none'), fc.constantFrom(...HOURS))
  .map(([figure, when]) => `${figure} @ (${when})`);
const accessKey = fc.constantFrom(
  'access:conditional',
  'motor_vehicle:conditional',
  'motor_vehicle:forward:conditional',
  'motorcar:conditional',
  'hgv:conditional',
  'oneway:conditional',
);
const tags = fc.oneof(
  fc.constant<Tags>({}),
  fc.constant<Tags>({ maxheight: '3.15' }),
  fc.tuple(accessKey, condition).map(([key, text]): Tags => ({ [key]: text })),
  condition.map((text): Tags => ({ access: 'no', 'access:conditional': text })),
  fc
    .tuple(fc.constantFrom('maxheight', 'maxweight', 'maxwidth'), limit)
    .map(([key, text]): Tags => ({ [`${key}:conditional`]: text })),
  limit.map((text): Tags => ({ maxheight: '3.3', 'maxheight:conditional': text })),
);
const mapped: fc.Arbitrary<Mapped> = fc.record({
  ways: fc.array(tags, { minLength: 2, maxLength: 5 }),
  node: fc.oneof(
    fc.constant<Tags>({}),
    condition.map((text): Tags => ({ barrier: 'bollard', 'access:conditional': text })),
    condition.map((text): Tags => ({ barrier: 'gate', 'motor_vehicle:conditional': text })),
  ),
  restriction: fc
    .constantFrom(...HOURS)
    .map((when): Tags => ({ type: 'restriction', 'restriction:conditional': `no_left_turn @ (${when})` })),
  card: fc.constantFrom(COACHBUILT, LORRY_SIZED),
});

describe('the verdicts over a day', () => {
  it('are those of the check at any minute of it, on days clocks change too', () => {
    fc.assert(
      fc.property(
        mapped,
        fc.constantFrom(DAY, '2027-03-28', '2027-10-31', '2027-12-25'),
        fc.array(fc.nat(1439), { minLength: 2, maxLength: 4 }),
        (map, day, minutes) => {
          const check = driveEast(map);
          const at = (minute: number) =>
            `${day}T${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
          const { leaveTimes = [] } = check(`${day}T08:20`);
          // the minutes where one part ends and the next begins are the likeliest to be wrong
          const edges = leaveTimes.slice(1, 4).flatMap(({ from }) => {
            const minute = Number(from.slice(11, 13)) * 60 + Number(from.slice(14));
            return [minute - 1, minute];
          });
          for (const time of [...minutes, ...edges].map(at)) {
            const { verdict, findings } = check(time);
            expect({ time, ...spanHolding(leaveTimes, time) }).toMatchObject({
              time,
              verdict,
              counts: countByLevel(findings),
            });
          }
        },
      ),
      { numRuns: Number(process.env['RUNS'] ?? 10) },
    );
  });
});
