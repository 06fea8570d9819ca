import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Part } from '../../../../geo/tags/conditional/conditional.ts';
import { parseConditional } from '../../../../geo/tags/conditional/parse.ts';

/** A clause in short: `no @ weight > 7500 + hours 22:00-06:00`. */
function short(part: Part): string {
  if (part.kind === 'compare') return `${part.property} ${part.is} ${Math.round(part.figure * 1e4) / 1e4}`;
  if (part.kind === 'purpose' || part.kind === 'vehicle' || part.kind === 'circumstance') return part.word;
  if ('of' in part) return `${part.kind}(${part.of.map(short).join(', ')})`;
  return part.kind === 'hazmat' ? part.kind : `${part.kind} ${part.text}`;
}
function read(text: string): string {
  const parsed = parseConditional(text);
  if (!parsed.ok) return `unreadable at ${parsed.error.position}: ${parsed.error.reason}`;
  return parsed.value.clauses
    .map((clause) => `${clause.value} @ ${clause.parts.map(short).join(' + ')}`)
    .join(' | ');
}
function notes(text: string): string[] {
  const parsed = parseConditional(text);
  return parsed.ok ? [...new Set(parsed.value.notes.map((note) => note.kind))].sort() : [];
}

describe('many spellings have one meaning', () => {
  const table: [string, string[]][] = [
    [
      'no @ weight > 7500',
      [
        'no @ (weight>7.5)',
        'no@(weight>7.5)',
        'no @ weight > 7.5',
        'no @ (weight > 7,5)',
        'no @ (maxweight>7.5t)',
        'no @  ( gross_weight > 7.5 t )',
        'no @ (grossweight>7500 kg)',
        'no @ (weight>7.5);',
        'no @ ((weight>7.5))',
      ],
    ],
    ['no @ weightrating > 3500', ['no @ (maxweightrating>3.5)', 'no @ weightrating > 3.5 t']],
    ['no @ weight >= 3500', ['no @ (weight>=3.5)', 'no @ (weight=>3.5)', 'no @ (weight≥3.5)']],
    ['no @ length > 7.62', ['no @ length>25ft', "no @ (length>25')", 'no @ length > 7.62 m']],
    [
      'no @ hours 22:00-06:00 + weight > 3500',
      [
        'no @ (22:00-06:00 AND weight>3.5)',
        'no @ (22:00-06:00 and weight>3.5)',
        'no @ 22:00-06:00 AND (weight>3.5)',
        'no@((22:00-06:00) AND weight>3.5 t)',
      ],
    ],
    [
      'none @ any(agricultural, forestry)',
      [
        'none @ (agricultural;forestry)',
        'none @ agricultural;forestry',
        'none @ agricultural, forestry',
        'none @ (agricultural OR forestry)',
        'none @ agriculture,forestry',
      ],
    ],
    ['yes @ hours Su; PH', ['yes @ (Su; PH)', 'yes @ Su; PH']],
    [
      'none @ destination | none @ psv',
      ['none @ destination; none @ psv', 'none@destination;none@PSV;', 'none @ (destination) ; none @ (psv)'],
    ],
  ];
  for (const [meaning, spellings] of table)
    it.each(spellings)(`%s is ${meaning}`, (spelling) => {
      expect(read(spelling)).toBe(meaning);
    });
});

describe('each leniency is noted', () => {
  it.each([
    ['no @ (weight>7.5)', []],
    ['no @ (weight>7,5)', ['decimal-comma']],
    ['no @ (weight>7.5t)', ['no-space-before-unit']],
    ['no @ (weight=>7.5)', ['operator-spelling']],
    ['no @ (Mo-Fr and weight>7.5)', ['and-spelling']],
    ['none @ (bus OR psv)', ['or']],
    ['none @ (bus, psv)', ['comma-list']],
    ['yes @ Su; PH', ['unbracketed-semicolon']],
    ['none @ agricutural', ['misspelt-word']],
    ['none @ psv;', ['stray-semicolon']],
    ['no @ (Jan-Mar);hgv=no', ['other-tag-inside']],
    ['yes @ (Mo-Fr 08:00-18:00); no', ['value-without-condition']],
  ])('%s: %s', (text, expected) => {
    expect(notes(text)).toEqual(expected);
  });
});

describe('what is not one reading is kept apart', () => {
  it.each([
    ['no @ (Jan-Mar AND Oct-Dec)', 'no @ all-or-any(hours Jan-Mar, hours Oct-Dec)'],
    ['no @ (10:00-13:00 AND 16:30-02:00)', 'no @ all-or-any(hours 10:00-13:00, hours 16:30-02:00)'],
    ['no @ (Apr-Oct AND Mo-Fr 08:00-18:00)', 'no @ hours Apr-Oct + hours Mo-Fr 08:00-18:00'],
    ['no @ (motorhome AND caravan)', 'no @ all-or-any(motorhome, caravan)'],
    ['no @ (length>10, weight>7.5)', 'no @ all-or-any(length > 10, weight > 7500)'],
    ['no @ (weight>7.5 AND wet OR snow)', 'no @ unknown weight>7.5 AND wet OR snow'],
    ['no @ (weight>12,000)', 'no @ unknown weight>12,000'],
    ['no @ (bogie:axles = 2)', 'no @ unknown bogie:axles = 2'],
    ['10 @ GT4', '10 @ unknown GT4'],
    ['yes @ (Mo-Fr 08:00-18:00); no', 'yes @ hours Mo-Fr 08:00-18:00 | no @ unknown no'],
    ['no @ (hazmat:water AND weight>3.5)', 'no @ hazmat + weight > 3500'],
    ['yes|no @ (Mo-Fr 07:00-09:00)', 'yes|no @ hours Mo-Fr 07:00-09:00'],
  ])('%s is %s', (text, expected) => {
    expect(read(text)).toBe(expected);
  });
});

describe('what cannot be read says where and why', () => {
  it.each([
    ['Mo-Fr 8:00-15:00', 'unreadable at 0: no “@” between a value and its condition'],
    ['', 'unreadable at 0: no “@” between a value and its condition'],
    ['@ (Mo-Fr)', 'unreadable at 0: no value before the “@”'],
    ['no @', 'unreadable at 4: no condition after the “@”'],
    ['60 @ (23:00-05:00', 'unreadable at 5: a bracket without its partner'],
    ['no @ Mo) AND wet', 'unreadable at 7: a bracket without its partner'],
    ['yes@(Tu) AND yes@(We)', 'unreadable at 16: a second “@” in one clause'],
    ['delivery @ (delivery @ Mo)', 'unreadable at 21: a second “@” in one clause'],
    ['no @ (weight>15)|none', 'unreadable at 16: values for single lanes inside a condition'],
  ])('“%s” is %s', (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  it('any text is read or refused, with a position inside it, and keeps its text', () => {
    const token = fc.constantFrom(
      'no',
      '@',
      ' ',
      '(',
      ')',
      ';',
      ',',
      'AND',
      'OR',
      'weight>',
      '7.5',
      'Mo-Fr 07:00',
      'hgv',
      '"',
      '|',
      'constructor',
      '__proto__',
      '=',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(token, { maxLength: 20 }).map((all) => all.join('')),
    );
    fc.assert(
      fc.property(text, (each) => {
        const parsed = parseConditional(each);
        if (parsed.ok) return parsed.value.text === each && parsed.value.clauses.length > 0;
        const { position, reason } = parsed.error;
        return parsed.error.text === each && position >= 0 && position <= each.length && reason !== '';
      }),
      { numRuns: 2000 },
    );
  });

  it('thousands of brackets neither hang nor overflow', () => {
    expect(parseConditional(`no @ ${'('.repeat(2000)}Mo${')'.repeat(2000)}`).ok).toBeDefined();
    expect(parseConditional(`no @ ${'(a,'.repeat(1000)}wet${')'.repeat(1000)}`).ok).toBe(false);
    expect(parseConditional('x'.repeat(100_000)).ok).toBe(false);
  });

  it('a text ends where a tag value does, at 255 characters', () => {
    const filled = (length: number, sign: string) => `no @ wet; no @ ${sign.repeat(length - 15)}`;
    expect(parseConditional(filled(255, 'x')).ok).toBe(true);
    expect(parseConditional(filled(255, '🚐')).ok).toBe(true);
    expect(read(filled(256, 'x'))).toBe('unreadable at 255: too long for a tag value');
  });
});
