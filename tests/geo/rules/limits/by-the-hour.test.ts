import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { access } from '../../../../geo/rules/access/access.ts';
import { RULES } from '../../../../geo/rules/index.ts';
import { height } from '../../../../geo/rules/limits/height.ts';
import { mass } from '../../../../geo/rules/limits/mass.ts';
import { width } from '../../../../geo/rules/limits/width.ts';
import { ask, askRoad, COACHBUILT } from '../../../support/ask.ts';
import { driveOn, testMap } from '../../../support/drive-on.ts';

/** Wednesday. */
const at = (time: string) => ({ leaveAt: `2027-06-16T${time}` });

describe('a limit by the hour', () => {
  const weekday = { 'maxweight:conditional': '3 @ (Mo-Fr 07:00-19:00)' };

  it('is unknown with its hours while nobody knows when the vehicle passes, and wants a leave time', () => {
    expect(askRoad(mass, weekday)).toMatchObject([
      {
        level: 'unknown',
        wants: 'time',
        kind: 'limit',
        limit: { value: 3000 },
        spare: -500,
        tags: weekday,
        advice: 'Give a leave time, or pass outside these hours.',
      },
    ]);
    expect(askRoad(mass, weekday)[0]?.say).toContain('Monday to Friday 07:00 to 19:00');
  });

  it('bars within its hours, says them and when it ends, and is silent outside', () => {
    const [finding] = askRoad(mass, weekday, at('09:00'));
    expect(finding).toMatchObject({ level: 'barred', limit: { value: 3000, asMapped: '3' } });
    expect(finding?.say).toContain('It holds Monday to Friday 07:00 to 19:00.');
    expect(finding?.advice).toBe('Take another road. Free from 19:00.');
    expect(finding?.opensAt).toBe('2027-06-16T19:00');
    expect(askRoad(mass, weekday, at('19:30'))).toEqual([]);
    expect(askRoad(mass, weekday, { leaveAt: '2027-06-19T09:00' })).toEqual([]);
  });

  it('that begins while the vehicle is there is not called free', () => {
    // 5 km of track take some minutes
    const roads = testMap([{ id: 1, nodes: ['0,0', '50,0'], tags: { highway: 'track', ...weekday } }]);
    const found = ask(mass, roads, driveOn(roads, [1]), COACHBUILT, at('06:58'));
    expect(found).toMatchObject([{ level: 'unknown', wants: 'sign' }]);
    expect(found[0]?.say).toContain('the hours change while the vehicle is there');
  });

  it('that is lifted by the hour bars outside those hours and says when it is free', () => {
    const tags = { maxweight: '3', 'maxweight:conditional': 'none @ (Sa,Su)' };
    const [finding] = askRoad(mass, tags, at('09:00'));
    expect(finding).toMatchObject({ level: 'barred', tags });
    expect(finding?.advice).toBe('Take another road. Free from Saturday 00:00.');
    expect(askRoad(mass, tags, { leaveAt: '2027-06-19T09:00' })).toEqual([]);
  });

  it('whose last matching clause says otherwise is not in force', () => {
    const tags = { 'maxheight:conditional': '2.5 @ (Mo-Su 00:00-24:00); none @ (We)' };
    expect(askRoad(height, tags, at('09:00'))).toEqual([]);
    expect(askRoad(height, tags, { leaveAt: '2027-06-17T09:00' })).toMatchObject([{ level: 'barred' }]);
  });

  it('that binds whatever the hour is barred without a leave time', () => {
    const tags = { maxheight: '3.0', 'maxheight:conditional': '2.8 @ (22:00-06:00)' };
    expect(askRoad(height, tags)).toMatchObject([{ level: 'barred' }]);
  });

  it('that nobody can read is unknown with its text, with a leave time and without', () => {
    const tags = { 'maxwidth:conditional': '2 @ (when the market is on)' };
    for (const when of [{}, at('09:00')]) {
      const [finding] = askRoad(width, tags, when);
      expect(finding).toMatchObject({ level: 'unknown', tags });
      expect(finding?.say).toContain('2 @ (when the market is on)');
    }
  });

  it('that leaves less than the margin at any hour is tight without a leave time', () => {
    const tags = { maxheight: '3.2', 'maxheight:conditional': '3.1 @ (22:00-06:00)' };
    expect(askRoad(height, tags)).toMatchObject([{ level: 'tight' }]);
  });

  it('on public holidays nobody lists is unknown', () => {
    const tags = { 'maxweight:conditional': '3 @ (PH)' };
    expect(askRoad(mass, tags, { ...at('09:00'), country: 'XX' })).toMatchObject([{ level: 'unknown' }]);
  });
});

describe('a limit for some vehicles', () => {
  it('is judged on the card: mass, length, height', () => {
    const one = (text: string) => askRoad(access, { 'motor_vehicle:conditional': text }).map((f) => f.level);
    expect(one('no @ (weight>3)')).toEqual(['barred']);
    expect(one('no @ (weight>3.5)')).toEqual([]);
    expect(one('no @ (length>6.5)')).toEqual(['barred']);
    expect(one('no @ (length>7)')).toEqual([]);
    expect(one('no @ (height>3)')).toEqual(['barred']);
    expect(one('no @ (weight>3 AND length>8)')).toEqual([]);
  });

  it('with hours as well is settled by the card alone where that is enough', () => {
    const tags = { 'motor_vehicle:conditional': 'no @ (weight>7.5 AND 22:00-06:00)' };
    expect(askRoad(access, tags)).toEqual([]);
  });
});

describe('access by the hour', () => {
  it('closed at night is closed at night alone', () => {
    const tags = { 'motor_vehicle:conditional': 'no @ (22:00-06:00)' };
    const [night] = askRoad(access, tags, at('23:00'));
    expect(night).toMatchObject({
      level: 'barred',
      say: 'Closed to motor vehicles (motor_vehicle:conditional=no @ (22:00-06:00)). It holds 22:00 to 06:00.',
      advice: 'Take another road. Free from Thursday 06:00.',
    });
    expect(askRoad(access, tags, at('12:00'))).toEqual([]);
  });

  it('a pedestrian street open to all in the morning is closed from noon', () => {
    const tags = { highway: 'pedestrian', 'motor_vehicle:conditional': 'yes @ (06:00-11:00)' };
    expect(askRoad(access, tags, at('09:00'))).toEqual([]);
    expect(askRoad(access, tags, at('12:00'))).toMatchObject([{ level: 'barred' }]);
    expect(askRoad(access, tags)).toMatchObject([{ level: 'unknown', wants: 'time' }]);
    // "access" on a way made for walkers is said to walkers
    const vague = { highway: 'pedestrian', 'access:conditional': 'yes @ (06:00-11:00)' };
    expect(askRoad(access, vague, at('09:00'))).toMatchObject([{ level: 'unknown' }]);
  });

  it('no through traffic by day lets in who goes there, and bars who passes', () => {
    const tags = { highway: 'residential', 'motor_vehicle:conditional': 'destination @ (07:00-19:00)' };
    const roads = testMap([
      { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential' } },
      { id: 2, nodes: ['3,0', '6,0'], tags },
      { id: 3, nodes: ['6,0', '9,0'], tags: { highway: 'residential' } },
    ]);
    const levels = (steps: number[], time: string) =>
      ask(access, roads, driveOn(roads, steps), COACHBUILT, at(time)).map((finding) => finding.level);
    expect(levels([1, 2], '09:00')).toEqual([]);
    expect(levels([1, 2, 3], '09:00')).toEqual(['barred']);
    expect(levels([1, 2, 3], '20:00')).toEqual([]);
  });

  it('of a more specific key wins over that of a less specific one', () => {
    const tags = { 'vehicle:conditional': 'no @ (00:00-24:00)', 'motorhome:conditional': 'yes @ (Mo-Fr)' };
    expect(askRoad(access, tags, at('09:00'))).toEqual([]);
    expect(askRoad(access, tags, { leaveAt: '2027-06-20T09:00' })).toMatchObject([{ level: 'barred' }]);
  });
});

const CONDITIONS = [
  '(Mo-Fr 07:00-19:00)',
  '(Sa,Su)',
  '(22:00-06:00)',
  '(weight>3)',
  'destination',
  '(wet)',
  '(foo)',
  '((',
];
const tag = fc.oneof(
  fc.tuple(
    fc.constantFrom('maxheight', 'maxweight', 'maxwidth', 'motor_vehicle', 'access'),
    fc.constantFrom('1.8', '3', 'no', 'destination', 'none'),
  ),
  fc
    .tuple(
      fc.constantFrom('maxheight', 'maxweight', 'maxwidth', 'motor_vehicle', 'access'),
      fc.constantFrom('1.8', '9', 'no', 'yes', 'none'),
      fc.constantFrom(...CONDITIONS),
    )
    .map(([key, value, condition]): [string, string] => [`${key}:conditional`, `${value} @ ${condition}`]),
);
const tagged = fc.array(tag, { maxLength: 5 }).map((list): Tags => Object.fromEntries(list));

function found(tags: Tags, when: { readonly leaveAt?: string }) {
  const roads = testMap([{ id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'residential', ...tags } }]);
  const drive = driveOn(roads, [1]);
  return RULES.flatMap((subject) => ask(subject, roads, drive, COACHBUILT, when));
}

describe('a leave time', () => {
  it('takes away no bar: what is barred at any hour is barred at each', () => {
    fc.assert(
      fc.property(tagged, fc.constantFrom('06:30', '12:00', '23:00'), (tags, time) => {
        const barred = (when: object) =>
          new Set(found(tags, when).flatMap((one) => (one.level === 'barred' ? [one.subject] : [])));
        const then = barred(at(time));
        for (const subject of barred({})) expect([...then]).toContain(subject);
      }),
    );
  });

  it('brings no bar where none was feared', () => {
    fc.assert(
      fc.property(tagged, fc.constantFrom('06:30', '12:00', '23:00'), (tags, time) => {
        const before = new Set(found(tags, {}).map((one) => one.subject));
        for (const one of found(tags, at(time))) expect([...before]).toContain(one.subject);
      }),
    );
  });
});
