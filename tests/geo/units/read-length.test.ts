import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLength } from '../../../geo/units/read-length.ts';
import type { ReadingNote } from '../../../geo/units/reading.ts';

/** Notes of a text that must read as so many metres. */
function notesOf(text: string, metres: number): readonly ReadingNote[] {
  const reading = readLength(text);
  if (reading.kind !== 'value') throw new Error(`${text} was read as ${reading.kind}`);
  expect(reading.value).toBeCloseTo(metres, 6);
  return reading.notes;
}

describe('a length on a sign', () => {
  it.each([
    ['3', 3],
    ['3.8', 3.8],
    ['3.80', 3.8],
    ['.5', 0.5],
    ['3 m', 3],
    ['380 cm', 3.8],
    [`12'6"`, 3.81],
    [`12'0"`, 3.6576],
    [`8'`, 2.4384],
    ['12 ft', 3.6576],
    ['16.5 ft', 5.0292],
  ])('%s is read without a note', (text, metres) => {
    expect(notesOf(text, metres)).toEqual([]);
  });

  it.each<[string, number, ReadingNote[]]>([
    ['3,8', 3.8, ['decimal-comma']],
    ['0,6', 0.6, ['decimal-comma']],
    ['3,80 m', 3.8, ['decimal-comma']],
    ['3.8m', 3.8, ['no-space-before-unit']],
    ['60cm', 0.6, ['no-space-before-unit']],
    ['3.8 M', 3.8, ['unit-spelling']],
    ['3.8 metres', 3.8, ['unit-spelling']],
    ['3.8 mtrs.', 3.8, ['unit-spelling']],
    [`12' 6"`, 3.81, ['spaced-feet-and-inches']],
    ['12 ft 6 in', 3.81, ['spaced-feet-and-inches']],
    ['12ft6in', 3.81, ['spaced-feet-and-inches']],
    ['12 feet 6 inches', 3.81, ['spaced-feet-and-inches']],
    [`12'6`, 3.81, ['missing-inch-mark']],
    ['12’6”', 3.81, ['typographic-marks']],
    ['12′6″', 3.81, ['typographic-marks']],
    [`12'6''`, 3.81, ['typographic-marks']],
    ['150 in', 3.81, []],
    ['150 inches', 3.81, ['unit-spelling']],
    [`2.3; 7'9"`, 2.3, ['several-values-lowest-taken']],
    [`3.8 / 12'3"`, 3.7338, ['several-values-lowest-taken']],
    ['3.8;none', 3.8, ['several-values-lowest-taken']],
  ])('%s is read leniently, and that is noted', (text, metres, notes) => {
    expect(notesOf(text, metres)).toEqual(notes);
  });

  it('in feet and inches is exactly so many inches', () => {
    expect(readLength(`10'6"`)).toEqual({ kind: 'value', value: 126 * 0.0254, notes: [] });
  });

  it.each([
    [''],
    [' '],
    [';'],
    ['12,000'],
    ['1.234,5'],
    ['3.8.2'],
    ['3-4'],
    ['3.5-4.0'],
    ['~3.5'],
    ['<3.5'],
    ['ca. 3.5'],
    ['-3'],
    ['+3'],
    ['0'],
    ['0.0'],
    ['1e3'],
    ['3 t'],
    ['3 x'],
    ['3 m 20'],
    [`12'12"`],
    [`12'13"`],
    [`12.5'6"`],
    [`6"`],
    [`126"`],
    ['Narrow'],
    ['<'],
    ['unknown'],
    ['fixme'],
    ['3|4'],
    ['3.8; low'],
    ['٣'],
    ['9'.repeat(400)],
    ['toString'],
    ['__proto__'],
    ['3 constructor'],
  ])('%s is unreadable, never no limit', (text) => {
    expect(readLength(text).kind).toBe('unreadable');
  });

  it.each([
    ['none', 'none'],
    ['unlimited', 'none'],
    ['no', 'none'],
    ['None', 'none'],
    ['default', 'default'],
    ['below_default', 'below_default'],
    ['unsigned', 'unsigned'],
    ['no_sign', 'unsigned'],
    ['no_indications', 'unsigned'],
  ])('%s stands for %s', (text, kind) => {
    expect(readLength(text).kind).toBe(kind);
  });

  it('written as below_default beside a figure may be lower than the figure', () => {
    expect(readLength('3.8;below_default').kind).toBe('below_default');
  });

  it('survives any text', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[0-9.,'" mftin;/]{0,20}$/)),
        (text) => {
          const reading = readLength(text);
          if (reading.kind === 'value') {
            expect(reading.value).toBeGreaterThan(0);
            expect(Number.isFinite(reading.value)).toBe(true);
          }
        },
      ),
    );
  });

  it('written in metres with up to three decimals is read as written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), (mm) => {
        expect(readLength((mm / 1000).toString())).toEqual({ kind: 'value', value: mm / 1000, notes: [] });
      }),
    );
  });

  it('means the same in feet and inches however it is spaced or marked', () => {
    const feet = fc.integer({ min: 1, max: 60 });
    const inches = fc.integer({ min: 0, max: 11 });
    const form = fc.constantFrom<(f: number, i: number) => string>(
      (f, i) => `${f}'${i}"`,
      (f, i) => `${f}' ${i}"`,
      (f, i) => `${f}’${i}”`,
      (f, i) => `${f} ft ${i} in`,
      (f, i) => `${f}FT${i}IN`,
    );
    fc.assert(
      fc.property(feet, inches, form, (f, i, write) => {
        const reading = readLength(write(f, i));
        expect(reading).toMatchObject({ kind: 'value', value: (f * 12 + i) * 0.0254 });
      }),
    );
  });

  it('listed twice is the lower one, in either order', () => {
    const length = fc.integer({ min: 100, max: 600 }).map((cm) => cm / 100);
    fc.assert(
      fc.property(length, length, (a, b) => {
        expect(readLength(`${a};${b}`)).toMatchObject({ kind: 'value', value: Math.min(a, b) });
      }),
    );
  });
});

it('a comma among inches, feet beyond counting and a figure of no end are no length', () => {
  for (const text of ['9\'5,5"', `9'5,"`, `${'9'.repeat(400)}'6"`, '9'.repeat(400)])
    expect(readLength(text, 'height').kind).not.toBe('value');
});
