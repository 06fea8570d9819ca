import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LocalMoment, wallTimeText, weekdayOf } from '../../../../geo/clock/moment.ts';
import { readWallTime } from '../../../../geo/clock/read-wall-time.ts';
import { type ConditionContext, figuresOf } from '../../../../geo/tags/conditional/context.ts';
import { evaluateConditional } from '../../../../geo/tags/conditional/evaluate.ts';
import { nextValueChange } from '../../../../geo/tags/conditional/next-change.ts';
import { parseConditional } from '../../../../geo/tags/conditional/parse.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { envelopeOf } from '../../../../geo/vehicle/envelope.ts';

const CARD: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'coach-built',
  heightM: 3.05,
  widthM: 2.32,
  widthMirrorsM: 2.7,
  lengthM: 7.4,
  wheelbaseM: 4,
  frontOverhangM: 1,
  rearOverhangM: 2.4,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2000 },
};
const COACH_BUILT: ConditionContext = { vehicle: figuresOf(CARD, envelopeOf(CARD)) };
const HEAVY: ConditionContext = { vehicle: { ...COACH_BUILT.vehicle, weight: 4250, weightrating: 4250 } };

function moment(text: string): LocalMoment {
  const wall = readWallTime(text);
  if (!wall.ok) throw new Error(wall.error.message);
  return { ...wall.value, weekday: weekdayOf(wall.value), zone: 'Europe/Berlin', offsetMinutes: 120 };
}
const BERLIN = { lat: 52.52, lon: 13.4, country: 'DE' };
const passing = (when: string, context: ConditionContext = COACH_BUILT): ConditionContext => ({
  ...context,
  place: BERLIN,
  moment: moment(when),
});

function read(text: string) {
  const parsed = parseConditional(text);
  if (!parsed.ok) throw new Error(parsed.error.reason);
  return parsed.value;
}
/** The value, `-` where the unconditional tag decides, or `a / b ?` where it stays open. */
function judge(text: string, context: ConditionContext): string {
  const judged = evaluateConditional(read(text), context);
  if (judged.settled) return judged.value ?? '-';
  return `${judged.possible.map((value) => value ?? '-').join(' / ')} ?`;
}
function why(text: string, context: ConditionContext): string {
  const judged = evaluateConditional(read(text), context);
  return judged.settled ? 'settled' : judged.why;
}

describe('figures of the vehicle', () => {
  it.each([
    ['no @ (weight>3.5)', '-'],
    ['no @ (weight>=3.5)', 'no'],
    ['no @ (weight<3.5)', '-'],
    ['no @ (weight<=3.5)', 'no'],
    ['no @ (maxweightrating=3.5)', 'no'],
    ['no @ (weight>3499 kg)', 'no'],
    ['no @ (length>7.4)', '-'],
    ['no @ (length>7)', 'no'],
    ['no @ (height>3.05)', 'no'], // the measuring allowance counts
    ['no @ (width>2.32)', '-'], // the body, not the mirrors
    ['no @ (axleload>2)', '-'],
    ['no @ (axleload>1.9)', 'no'],
    ['no @ (axles>2)', '-'],
    ['no @ (axles>=2)', 'no'],
    ['100 @ (weight<=3.5); 80 @ (weight>3.5)', '100'],
  ])('of a 3,500 kg, 7.40 m vehicle: %s gives %s', (text, value) => {
    expect(judge(text, COACH_BUILT)).toBe(value);
  });

  it('a figure the card does not give leaves the tag open', () => {
    expect(judge('no @ (emptyweight>2.8)', COACH_BUILT)).toBe('no / - ?');
    expect(why('no @ (emptyweight>2.8)', COACH_BUILT)).toContain('no unladen mass');
    expect(judge('no @ (emptyweight>2.8)', { vehicle: { emptyweight: 2900 } })).toBe('no');
  });
});

describe('the last clause that holds decides', () => {
  it('an exception after the rule wins, before it does not', () => {
    expect(judge('no @ (length>7); yes @ (weight<=3.5)', COACH_BUILT)).toBe('yes');
    expect(judge('yes @ (weight<=3.5); no @ (length>7)', COACH_BUILT)).toBe('no');
  });

  it('a later clause that may hold leaves both open', () => {
    expect(judge('no @ (length>7); yes @ wet', COACH_BUILT)).toBe('yes / no ?');
    expect(judge('yes @ wet; no @ (length>7)', COACH_BUILT)).toBe('no');
  });

  it('two open clauses of one value are settled only when a sure one stands behind them', () => {
    expect(judge('no @ wet; no @ snow', COACH_BUILT)).toBe('no / - ?');
    expect(judge('no @ (length>7); no @ snow', COACH_BUILT)).toBe('no');
  });
});

describe('time of passing', () => {
  const NIGHT = 'no @ (22:00-06:00 AND weight>3.5)';
  it('binds the heavy vehicle at night only', () => {
    expect(judge(NIGHT, passing('2027-06-14T23:00', HEAVY))).toBe('no');
    expect(judge(NIGHT, passing('2027-06-14T12:00', HEAVY))).toBe('-');
  });

  it('without a leave time stays open with the hours printed, and a lighter vehicle is free all the same', () => {
    expect(why('no @ (Mo-Fr 07:00-19:00)', COACH_BUILT)).toBe(
      'it depends on the time of passing (Monday to Friday 07:00 to 19:00)',
    );
    expect(judge(NIGHT, COACH_BUILT)).toBe('-');
  });

  it('two spans joined by AND bind in both, free in neither, and stay open in one', () => {
    const text = 'no @ (Jan-Mar AND Oct-Dec)';
    expect(judge(text, passing('2027-06-14T12:00'))).toBe('-');
    expect(judge(text, passing('2027-02-14T12:00'))).toBe('no / - ?');
  });

  it('is free from the hour at which the value changes', () => {
    const change = nextValueChange(
      read('no @ (Mo-Fr 07:00-19:00); no @ (19:00-20:00)'),
      passing('2027-06-14T12:00'),
    );
    expect(change && [wallTimeText(change.at), change.value]).toEqual(['2027-06-14 20:00', undefined]);
    expect(nextValueChange(read('no @ (length>7)'), passing('2027-06-14T12:00'))).toBeUndefined();
  });
});

describe('purpose', () => {
  it.each([
    ['no @ (weight>3); none @ destination', 'no', 'none', 'none / no ?'],
    ['none @ delivery', '-', 'none / - ?', 'none / - ?'],
    ['yes @ permit', '-', 'yes / - ?', 'yes / - ?'],
    ['yes @ customers', '-', 'yes', 'yes / - ?'],
    ['none @ emergency', '-', '-', '-'],
  ])('%s: passing through %s, going there %s, not known %s', (text, through, within, unknown) => {
    expect(judge(text, { ...COACH_BUILT, reach: 'through' })).toBe(through);
    expect(judge(text, { ...COACH_BUILT, reach: 'within' })).toBe(within);
    expect(judge(text, COACH_BUILT)).toBe(unknown);
  });
});

describe('kind of vehicle', () => {
  it.each([
    ['no @ motorhome', 'no'],
    ['no @ (caravan)', '-'],
    ['no @ trailer', '-'],
    ['none @ (bus, psv)', '-'],
    ['no @ hgv', '-'],
    ['no @ motorcar', 'no / - ?'],
    ['no @ (motorhome AND caravan)', 'no / - ?'],
    ['no @ (weight>3.5 AND motorhome AND caravan)', '-'],
  ])('%s gives a motorhome %s', (text, value) => {
    expect(judge(text, COACH_BUILT)).toBe(value);
  });

  it('signs for goods vehicles bind where the country says so', () => {
    expect(judge('no @ hgv', { ...HEAVY, goodsSigns: 'bind' })).toBe('no');
    expect(judge('no @ hgv', { ...HEAVY, goodsSigns: 'unsure' })).toBe('no / - ?');
  });

  it('gas on board leaves a ban on dangerous goods open', () => {
    expect(judge('no @ hazmat', { vehicle: { gasKg: 22 } })).toBe('no / - ?');
    expect(judge('no @ hazmat:E', { vehicle: { gasKg: 0 } })).toBe('-');
  });
});

describe('what nobody can settle', () => {
  it.each(['50 @ wet', 'no @ winter', '20 @ flashing', '10 @ GT4', 'no @ (minclearance > 0.2)'])(
    '%s stays open',
    (text) => {
      expect(evaluateConditional(read(text), passing('2027-06-14T12:00'))).toMatchObject({ settled: false });
    },
  );

  it('never throws, and always gives a value the tag names, or none', () => {
    const part = fc.constantFrom(
      'weight>3.5',
      'wet',
      '22:00-06:00',
      'Mo-Fr',
      'hgv',
      'destination',
      'PH',
      'axles<3',
      'foo',
      'emptyweight<2',
    );
    const clause = fc.tuple(
      fc.constantFrom('no', 'yes', '7.5'),
      fc.array(part, { minLength: 1, maxLength: 3 }),
    );
    const text = fc
      .array(clause, { minLength: 1, maxLength: 4 })
      .map((all) => all.map(([value, parts]) => `${value} @ (${parts.join(' AND ')})`).join('; '));
    const when = passing('2027-06-14T12:00', HEAVY);
    fc.assert(
      fc.property(text, fc.constantFrom('through', 'within', undefined), (each, reach) => {
        const judged = evaluateConditional(read(each), { ...when, reach });
        if (judged.settled) return judged.value === undefined || each.includes(`${judged.value} @`);
        return judged.possible.length > 1 && judged.why !== '';
      }),
      { numRuns: 200 },
    );
  });
});
