import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dueItems } from '../../../geo/day/due.ts';
import { howLate } from '../../../geo/day/say-day.ts';
import type { Leg, Stretch } from '../../../geo/drive/drive.ts';
import { sayOffMapTime, sayUntimed } from '../../../geo/drive/times/off-map-time.ts';
import { timesOf } from '../../../geo/drive/times/times-of.ts';
import { drivenAt } from '../../../geo/drive/times/timetable.ts';
import type { Day } from '../../../geo/report/day.ts';
import { driveReportSchema } from '../../../geo/report/report.ts';
import { COACHBUILT } from '../../support/ask.ts';
import { borderRoad, checkDay, placeAtKm, stopAtKm } from '../../support/day/border-road.ts';

const ROAD = borderRoad(40);
const LISBON = 'Europe/Lisbon';
const MADRID = 'Europe/Madrid';

function dayOf(...asked: Parameters<typeof checkDay>): Day {
  const report = checkDay(...asked);
  driveReportSchema.parse(report);
  if (report.day === undefined) throw new Error('no day in the report');
  return report.day;
}

/** What a clock shows, by the platform's own calendar alone: `2027-06-12T09:42`. */
function shown(unixMs: number, zone: 'Europe/Lisbon' | 'Europe/Madrid'): string {
  return CALENDARS[zone].format(unixMs).replace(' ', 'T');
}

const calendar = (timeZone: string) =>
  new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' });
const CALENDARS = { [LISBON]: calendar(LISBON), [MADRID]: calendar(MADRID) };

/** The moment of a wall time that the clocks of a zone show once. */
function momentOf(wall: string, zone: Parameters<typeof shown>[1]): number {
  for (let ms = Date.parse(`${wall}Z`) - 3 * 3_600_000; ; ms += 60_000)
    if (shown(ms, zone) === wall) return ms;
}

const APART =
  'This drive does not end where it starts: the times are for its end. The way back is not in them.';

const NOTHING_LEFT = { drivingOnS: 0, staysOnS: 0, marginOnS: 0 };

describe('the day of a drive', () => {
  it.each([
    [1, true],
    [4, true],
    [12, false],
    [20, false],
  ])('with %i of 40 pieces off the map tells its times: %s', (pieces, told) => {
    const legs = ROAD.drive.legs.map((leg, i): Leg => {
      const { fromM, toM } = leg as Stretch;
      const [from, to] = [placeAtKm(2 * i), placeAtKm(2 * i + 2)];
      return i >= 10 && i < 10 + pieces
        ? { kind: 'offMap', fromM, toM, lat: [from.lat, to.lat], lon: [from.lon, to.lon] }
        : leg;
    });
    const asked = { stops: [stopAtKm(70, 30)], homeBy: '2027-06-12T18:00', leaveAt: '2027-06-12T09:00' };
    const report = checkDay({ ...ROAD, drive: { ...ROAD.drive, legs } }, asked);
    const { timetable, day } = driveReportSchema.parse(report);
    const times = [timetable?.arriveAt, day?.end.arriveAt, day?.stops[0]?.arriveAt, day?.start.latestLeaveAt];
    expect(times.map((time) => time !== undefined)).toEqual([told, told, told, told]);
    // the return hour that was wanted stays
    expect(day?.end.homeBy).toBe('2027-06-12T18:00+02:00');
    expect(day?.notes.some((note) => note.startsWith('No time on this drive is known'))).toBe(!told);
    expect(sayUntimed(report, 'metric')).toBe(told ? undefined : `${2 * pieces}.0 km of it is off the map`);
    expect(sayOffMapTime(report, 'metric')).toBe(
      told ? `with ${2 * pieces}.0 km off the map taken at 20 km/h` : undefined,
    );
  });

  it('leaves each stop in time for the return hour, over two time zones and nights when the clocks change', () => {
    const times = timesOf(ROAD.drive, ROAD.roads, COACHBUILT);
    const at = fc.record({
      // the border lies between
      km: fc.oneof(fc.integer({ min: 1, max: 42 }), fc.integer({ min: 56, max: 79 })),
      stayMin: fc.integer({ min: 0, max: 300 }),
      tanks: fc.boolean(),
    });
    const dates = fc.constantFrom('2027-03-27', '2027-03-28', '2027-10-30', '2027-10-31', '2027-06-12');
    const hours = fc.constantFrom('00:20', '05:05', '12:30', '23:40');
    const stopsOf = fc.uniqueArray(at, { maxLength: 5, selector: ({ km }) => km });
    fc.assert(
      fc.property(stopsOf, dates, hours, (places, date, hour) => {
        const homeBy = `${date}T${hour}`;
        const stops = places.map(({ km, stayMin, tanks }) =>
          stopAtKm(km, stayMin, tanks ? { services: ['fuel'] } : {}),
        );
        const leaveAt = `${date}T00:10`;
        const day = dayOf(ROAD, { stops, homeBy, leaveAt });
        const leftMs = momentOf(leaveAt, LISBON);
        const homeMs = momentOf(homeBy, MADRID);
        const ordered = [...places].sort((a, b) => a.km - b.km);
        expect(day.stops.map(({ name }) => name)).toEqual(ordered.map(({ km }) => `Stop at ${km} km`));
        for (const [i, stop] of day.stops.entries()) {
          const zone = ordered[i]!.km < 50 ? LISBON : MADRID;
          const later = ordered.slice(i + 1);
          const drivenS = drivenAt(times, stop.atM);
          const onS = times.totalS - drivenS;
          const keptS = 0.15 * onS + 600 * later.filter(({ tanks }) => tanks).length;
          const staysS = 60 * later.reduce((sum, { stayMin }) => sum + stayMin, 0);
          const stayedS = 60 * ordered.slice(0, i).reduce((sum, { stayMin }) => sum + stayMin, 0);
          expect(stop.latestLeaveAt?.slice(0, 16)).toBe(shown(homeMs - 1000 * (onS + staysS + keptS), zone));
          expect(stop.arriveAt?.slice(0, 16)).toBe(shown(leftMs + 1000 * (drivenS + stayedS), zone));
        }
      }),
      { numRuns: 50 },
    );
  });

  it('tells from the start when to leave at the latest, and what is to spare', () => {
    const day = dayOf(ROAD, {
      stops: [stopAtKm(20, 60)],
      homeBy: '2027-06-12T17:00',
      leaveAt: '2027-06-12T09:00',
    });
    const { totalS } = timesOf(ROAD.drive, ROAD.roads, COACHBUILT);
    const homeMs = Date.parse('2027-06-12T15:00Z');
    expect(day.start.latestLeaveAt).toBe(`${shown(homeMs - 1000 * (1.15 * totalS + 3600), LISBON)}+01:00`);
    expect(day.end.homeBy).toBe('2027-06-12T17:00+02:00');
    expect(day.end.spareS).toBe(Math.floor(7 * 3600 - 1.15 * totalS - 3600));
    expect(day.notes).toEqual([APART]);
  });

  it('says so when the yard closes first, or only the margin is used up', () => {
    const late = dayOf(ROAD, { stops: [], homeBy: '2027-06-12T10:30', leaveAt: '2027-06-12T09:00' });
    expect(late.notes.join()).toMatch(/Too late: you are at the end of the drive at 11:\d\d/);
    const slip = dayOf(ROAD, { stops: [], homeBy: '2027-06-12T09:00', leaveAt: '2027-06-12T09:00' });
    expect(howLate(slip)).toBe('before');
    expect(slip.notes).toContain('The return hour lies before the leave time: check the day.');
    const short = dayOf(ROAD, { stops: [], homeBy: '2027-06-12T10:01', leaveAt: '2027-06-12T09:00' });
    expect(howLate(short)).toBe('late');
    const { totalS } = timesOf(ROAD.drive, ROAD.roads, COACHBUILT);
    const arriveMs = Date.parse('2027-06-12T08:00Z') + 1000 * totalS;
    const homeBy = shown(arriveMs + 60_000, MADRID);
    const close = dayOf(ROAD, { stops: [], homeBy, leaveAt: '2027-06-12T09:00' });
    expect(close.notes.join()).toMatch(/in time, but \d+ min of the margin are used up/);
  });

  it('counts no stop that the drive does not pass, and says so', () => {
    const off = { name: 'Elsewhere', lat: 40, lon: -7, stayMin: 30 };
    const day = dayOf(ROAD, { stops: [off], leaveAt: '2027-06-12T09:00' });
    expect(day.stops).toEqual([]);
    expect(day.missed).toEqual([{ name: 'Elsewhere', lat: 40, lon: -7 }]);
    expect(day.notes).toEqual(['One stop does not lie on this drive and is not counted.']);
  });

  it('lists what falls due by the minute, and what has no stop yet', () => {
    const day = dayOf(ROAD, {
      stops: [stopAtKm(20, 20, { services: ['cassette', 'fresh water'] }), stopAtKm(40, 90)],
      homeBy: '2027-06-12T17:00',
      before: ['fuel', 'cassette'],
      leaveAt: '2027-06-12T09:00',
    });
    const minute = (i: number) => day.stops[i]?.latestLeaveAt?.slice(11, 16);
    expect(day.due.map(({ say }) => say)).toEqual([
      `Set off by ${day.start.latestLeaveAt?.slice(11, 16)}`,
      `Empty the cassette by ${minute(0)}, at Stop at 20 km`,
      `Fill the fresh water by ${minute(0)}, at Stop at 20 km`,
      `Leave Stop at 40 km by ${minute(1)}`,
      // this road runs from one place to another
      'Fuel before the drive’s end: no stop is planned for it yet',
      'At the drive’s end by 17:00',
    ]);
  });

  it('calls the end the yard only where the drive comes back to where it starts', () => {
    const timed = { start: NOTHING_LEFT, stops: [], end: { homeBy: '2027-06-12T17:00+02:00' } };
    const says = (elsewhere: boolean) =>
      dueItems(timed, { before: ['fuel'], elsewhere }).map(({ say }) => say.split(':')[0]);
    expect(says(false)).toEqual(['Fuel before the yard', expect.stringMatching(/^Back at the yard by /)]);
    expect(says(true)).toEqual([
      'Fuel before the drive’s end',
      expect.stringMatching(/^At the drive’s end by /),
    ]);
  });

  it('has no clock without a leave time, and no latest leaving without a return hour', () => {
    const day = dayOf(ROAD, { stops: [stopAtKm(20, 20)] });
    expect(day.stops[0]).not.toHaveProperty('arriveAt');
    expect(day.stops[0]).not.toHaveProperty('latestLeaveAt');
    expect(day.due).toEqual([]);
  });

  it('advises a break after every two hours at the wheel, a stay of a quarter of an hour being one', () => {
    const long = borderRoad(200, () => ({ maxspeed: '50' }));
    const kmOf = (day: Day) => day.advice.map(({ atM }) => Math.round(atM / 1000));
    const { totalS } = timesOf(long.drive, long.roads, COACHBUILT);
    const every = 400 / (totalS / 7200);
    const none = dayOf(long, { stops: [] });
    expect(kmOf(none)).toEqual(
      Array.from({ length: Math.floor(totalS / 7200) }, (_, i) => Math.round(every * (i + 1))),
    );
    const rested = dayOf(long, { stops: [stopAtKm(60, 15), stopAtKm(70, 5)] });
    expect(kmOf(rested)[0]).toBe(Math.round(60 + every));
  });
});

describe('hours on the road after a stop', () => {
  const barred = { 'maxheight:conditional': '2.5 @ (10:30-12:00)' };

  it('are judged when the vehicle comes by, its stays counted', () => {
    const road = borderRoad(40, (way) => (way === 15 ? barred : {}));
    const passes = (stayMin: number) =>
      checkDay(road, { stops: [stopAtKm(20, stayMin)], leaveAt: '2027-06-12T09:00' }).findings.filter(
        ({ level }) => level === 'barred',
      );
    expect(passes(10)).toEqual([]);
    expect(passes(90).map(({ passesAt }) => passesAt?.slice(11, 13))).toEqual(['10']);
    expect(passes(240)).toEqual([]);
  });

  it('turn the leave times of the day with them', () => {
    const road = borderRoad(40, (way) => (way === 15 ? barred : {}));
    const report = checkDay(road, { stops: [stopAtKm(20, 90)], leaveAt: '2027-06-12T09:00' });
    const bad = report.leaveTimes?.filter(({ verdict }) => verdict === 'barred') ?? [];
    expect(bad).toHaveLength(1);
    for (const [time, verdict] of [
      [bad[0]?.from ?? '', 'barred'],
      [bad[0]?.to ?? '', 'clear'],
    ] as const) {
      const then = checkDay(road, { stops: [stopAtKm(20, 90)], leaveAt: time });
      expect(then.findings.some(({ level }) => level === 'barred')).toBe(verdict === 'barred');
    }
    expect(report.timetable?.staysS).toBe(5400);
  });

  it('let those in who stop there: roads for customers are passed through no more', () => {
    const road = borderRoad(40, (way) => (way === 10 ? { access: 'customers' } : {}));
    const levels = (stops: Parameters<typeof checkDay>[1]['stops']) =>
      checkDay(road, { stops })
        .findings.filter(({ subject }) => subject === 'access')
        .map(({ level }) => level);
    expect(levels([])).toEqual(['barred']);
    expect(levels([stopAtKm(21, 10)])).toEqual([]);
    expect(levels([stopAtKm(25, 10)])).toEqual(['barred']);
  });
});
