import { describe, expect, it } from 'vitest';
import { type LocalMoment, weekdayOf } from '../../geo/clock/moment.ts';
import { readWallTime } from '../../geo/clock/read-wall-time.ts';
import type { ConditionContext } from '../../geo/tags/conditional/context.ts';
import { evaluateConditional } from '../../geo/tags/conditional/evaluate.ts';
import { parseConditional } from '../../geo/tags/conditional/parse.ts';

function moment(text: string): LocalMoment {
  const wall = readWallTime(text);
  if (!wall.ok) throw new Error(wall.error.message);
  return { ...wall.value, weekday: weekdayOf(wall.value), zone: 'Europe/Berlin', offsetMinutes: 120 };
}
// Monday 14 June 2027: no holiday anywhere in Germany
const at = (clock: string, more: Partial<ConditionContext> = {}): ConditionContext => ({
  vehicle: { weight: 3500, weightrating: 3500, length: 7.4 },
  place: { lat: 52.52, lon: 13.4, country: 'DE' },
  moment: moment(`2027-06-14T${clock}`),
  ...more,
});
const heavier = (kg: number): Partial<ConditionContext> => ({ vehicle: { weight: kg, weightrating: kg } });

/** The value, the unconditional one where no clause holds, `?` where it stays open. */
function value(text: string, otherwise: string, context: ConditionContext): string {
  const parsed = parseConditional(text);
  if (!parsed.ok) throw new Error(parsed.error.reason);
  expect(parsed.value.notes, 'the published examples have no slips').toEqual([]);
  const judged = evaluateConditional(parsed.value, context);
  return judged.settled ? (judged.value ?? otherwise) : '?';
}

// OSM wiki, Conditional restrictions (page opening, read 2026): maxspeed=100, 60 between 23:00 and 5:00
describe('the example at the head of the wiki page', () => {
  it.each([
    ['22:59', '100'],
    ['23:00', '60'],
    ['04:59', '60'],
    ['05:00', '100'],
  ])('at %s the limit is %s', (clock, limit) => {
    expect(value('60 @ 23:00-05:00', '100', at(clock))).toBe(limit);
  });
});

// OSM wiki, Key:maxspeed:conditional, table of examples (read 2026)
describe('the examples of Key:maxspeed:conditional', () => {
  it('130 in the evening and at night, else 120', () => {
    expect(value('130 @ 19:00-06:00', '120', at('12:00'))).toBe('120');
    expect(value('130 @ 19:00-06:00', '120', at('20:00'))).toBe('130');
  });

  it('two spans, unlimited between them', () => {
    const text = '120 @ 06:00-20:00; 100 @ 22:00-06:00';
    expect(value(text, 'none', at('12:00'))).toBe('120');
    expect(value(text, 'none', at('21:00'))).toBe('none');
    expect(value(text, 'none', at('23:00'))).toBe('100');
  });

  it('a value of none under a condition', () => {
    const text = 'none @ 20:00-22:00; 100 @ 22:00-06:00';
    expect(value(text, '120', at('21:00'))).toBe('none');
    expect(value(text, '120', at('12:00'))).toBe('120');
  });

  it('plated or actual mass above 3 t', () => {
    for (const text of ['50 @ (maxweightrating>3)', '50 @ (weight>3)']) {
      expect(value(text, '-', at('12:00', heavier(3000)))).toBe('-');
      expect(value(text, '-', at('12:00'))).toBe('50');
    }
  });

  it('mass above 7.5 t', () => {
    expect(value('60 @ (weight>7.5)', '80', at('12:00'))).toBe('80');
    expect(value('60 @ (weight>7.5)', '80', at('12:00', heavier(7501)))).toBe('60');
  });

  it('school hours stay open within them, whether the schools are out being unknown', () => {
    const text = '40 @ (Mo-Fr 08:00-09:30,14:30-16:00; PH off; SH off)';
    expect(value(text, '60', at('09:00'))).toBe('?');
    expect(value(text, '60', at('12:00'))).toBe('60');
  });

  it('weather, season and flashing lights stay open', () => {
    for (const text of ['60 @ wet', '60 @ snow', '100 @ winter', '20 mph @ flashing'])
      expect(value(text, '80', at('12:00'))).toBe('?');
  });
});

// OSM wiki, Key:minweight:conditional, examples (read 2026): a limit at night from which access is exempt
describe('the examples of Key:minweight:conditional', () => {
  const text = '3.5 @ (Mo-Fr 22:00-05:00,PH); none @ destination';
  it('bind at night those who pass through, and nobody who goes there', () => {
    expect(value(text, '-', at('23:00', { reach: 'through' }))).toBe('3.5');
    expect(value(text, '-', at('23:00', { reach: 'within' }))).toBe('none');
    expect(value(text, '-', at('12:00', { reach: 'through' }))).toBe('-');
  });
});

// OSM wiki, Conditional restrictions, "Evaluation of conflicting restrictions": the last clause that holds decides.
// That section was not read itself; a public issue thread of 2020 cites it with this tag.
describe('of two clauses that hold the last decides', () => {
  const text = 'no @ (Mo-Sa 07:00-16:00); yes @ (Mo-Sa 13:00-14:00)';
  it.each([
    ['06:59', '-'],
    ['12:59', 'no'],
    ['13:30', 'yes'],
    ['14:00', 'no'],
    ['16:00', '-'],
  ])('at %s: %s', (clock, expected) => {
    expect(value(text, '-', at(clock))).toBe(expected);
  });
});
