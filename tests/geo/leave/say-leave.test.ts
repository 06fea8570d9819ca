import { describe, expect, it } from 'vitest';
import { homeAt } from '../../../geo/day/clocks.ts';
import { sayWinding } from '../../../geo/day/say-winding.ts';
import { sayBetterTimes, sayLeaveFree, timesByVerdict } from '../../../geo/leave/say-leave.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';

const at = (from: string, to: string) => ({ from: `2027-06-12T${from}`, to: `2027-06-12T${to}` });
const counts = { barred: 0, tight: 1, unknown: 0, care: 0 };

describe('when to leave instead', () => {
  const free = (...spans: ReturnType<typeof at>[]) =>
    sayLeaveFree(spans, '2027-06-12T08:20+01:00', '2027-06-12T07:00');

  it('is said before, after and between the hours that do', () => {
    expect(free(at('00:00', '06:45'), at('16:50', '24:00'))).toBe(
      'You pass at 08:20; leave before 06:45 or after 16:50.',
    );
    expect(free(at('09:35', '15:20'))).toBe('You pass at 08:20; leave between 09:35 and 15:20.');
    expect(free()).toBe('You pass at 08:20; leaving at another hour of that day does not help.');
  });

  it('of many hours names three', () => {
    const hours = ['09', '11', '13', '15', '17'].map((hour) => at(`${hour}:00`, `${hour}:30`));
    expect(free(...hours)).toBe(
      'You pass at 08:20; leave between 09:00 and 09:30, between 11:00 and 11:30, between 13:00 and 13:30 or at some other times.',
    );
  });

  it('is a better verdict of the same day, parts that follow each other as one', () => {
    const times = [
      { ...at('00:00', '09:35'), verdict: 'barred', counts: { ...counts, barred: 1 } },
      { ...at('09:35', '12:00'), verdict: 'tight', counts },
      { ...at('12:00', '15:20'), verdict: 'tight', counts },
      { ...at('15:20', '24:00'), verdict: 'tight', counts: { ...counts, tight: 3 } },
    ] as const;
    const report = {
      leaveAt: '2027-06-12T08:00',
      verdict: 'barred',
      leaveTimes: times,
    } as unknown as DriveReport;
    expect(sayBetterTimes(report)).toBe('Leave 09:35-15:20: tight instead of barred.');
    expect(sayBetterTimes({ ...report, verdict: 'tight' })).toBeUndefined();
    const { leaveAt: _, ...unset } = report;
    expect(sayBetterTimes(unset)).toBeUndefined();
    expect(sayBetterTimes({ ...report, leaveTimes: [] })).toBeUndefined();
    expect(timesByVerdict(times)).toEqual([
      { verdict: 'tight', when: '09:35-24:00' },
      { verdict: 'barred', when: '00:00-09:35' },
    ]);
  });
});

describe('the return hour', () => {
  const map = testMap([{ id: 1, nodes: ['0,0', '9,0'], tags: { highway: 'residential' } }]);
  const home = (homeBy: string | undefined) =>
    homeAt({ drive: driveOn(map, [1]), roads: map.roads, country: 'DE' }, homeBy);

  it('is on the clocks of the drive’s end', () => {
    // Germany, summer time: two hours ahead of UTC
    expect(home('2027-06-12T17:00')).toEqual({ unixMs: Date.UTC(2027, 5, 12, 15) });
    expect(home(undefined)).toEqual({});
  });

  it('that the clocks skip is an hour later, one that comes twice the earlier, and both are said', () => {
    // the last Sundays of March and October 2027 (Directive 2000/84/EC): the 28th and the 31st
    expect(home('2027-03-28T02:30')).toEqual({
      unixMs: Date.UTC(2027, 2, 28, 1, 30),
      note: expect.stringContaining('There is no 02:30 that night'),
    });
    expect(home('2027-10-31T02:30')).toEqual({
      unixMs: Date.UTC(2027, 9, 31, 0, 30),
      note: expect.stringContaining('The clocks show 02:30 twice that night'),
    });
  });

  it('that is none says why', () => {
    expect(home('tea time').note).toEqual(expect.any(String));
    expect(home('tea time').unixMs).toBeUndefined();
  });
});

describe('a winding stretch ahead', () => {
  const winding = { fromM: 1000, toM: 9000, turnDegPerKm: 312 };
  it('says how steep it is, by whose figures, or that nobody tells', () => {
    expect(sayWinding(winding, 'metric')).toContain(
      'turning 310° on each kilometre. How steep it is, neither the map nor',
    );
    expect(sayWinding({ ...winding, steepestPercent: 11.6, slopesFrom: 'map' }, 'metric')).toContain(
      'Slopes up to 12 % are mapped there.',
    );
    expect(sayWinding({ ...winding, steepestPercent: 9, slopesFrom: 'file' }, 'metric')).toContain(
      'by the heights in the drive’s file',
    );
  });
});
