import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readEntryLength, readEntryMass, splitMinus } from '../../../geo/units/read-entry.ts';

const lengthOf = (text: string) => {
  const read = readEntryLength(text);
  return read.ok ? read.value : read.error.message;
};
const massOf = (text: string) => {
  const read = readEntryMass(text);
  return read.ok ? read.value : read.error.message;
};

describe('a length as it is typed', () => {
  it('is metres, or feet and inches', () => {
    expect(lengthOf('3.05')).toBe(3.05);
    expect(lengthOf('3,05')).toBe(3.05);
    expect(lengthOf(' 3.05 m ')).toBe(3.05);
    // 10 ft 3 in = 123 in of 25.4 mm (the international yard and pound agreement of 1959)
    expect(lengthOf('10\'3"')).toBeCloseTo(3.1242, 6);
  });

  it('in feet and inches may have fractions, a dash, or inches alone', () => {
    // 121.5 in of 25.4 mm
    for (const text of [
      '10\'1 1/2"',
      "10'1½",
      '10’ 1½”',
      '121.5"',
      '121 1/2 in',
      '10-1 1/2',
      '10 ft 1 1/2 in',
    ])
      expect(lengthOf(text), text).toBeCloseTo(3.0861, 6);
    // 121 in
    for (const text of ['10-1', "10'1", '121"', '10-1"']) expect(lengthOf(text), text).toBeCloseTo(3.0734, 6);
    expect(lengthOf('½"')).toBeCloseTo(0.0127, 6);
  });

  it('with inches that make a foot, or a fraction no tape has, is none', () => {
    for (const text of ["10'12", '10-14', '10\'1 1/3"', '10\'1 3/2"', '10\'1.5 1/2"'])
      expect(lengthOf(text), text).toContain('write 3.05');
  });

  it('in feet with decimals that may be inches is asked about', () => {
    // 10 ft 11 in = 131 in of 25.4 mm = 3.3274 m; 10.11 ft of 304.8 mm = 3.0815 m
    for (const text of ["10.11'", '10.11 ft', "10,11'", '10.11ft', '10.11 feet'])
      expect(lengthOf(text), text).toMatch(
        /10 ft 11 in \(3\.33 m\) or 10[.,]11 ft \(3\.09 m\): write 10'11" or 3\.0815/,
      );
    expect(lengthOf('9.10 ft')).toContain('9 ft 10 in (3.00 m)');
    expect(lengthOf('10.05 ft')).toContain('10 ft 5 in');
    // no inches have these, or inches would make less of them
    expect(lengthOf('10.25 ft')).toBeCloseTo(3.1242, 6);
    expect(lengthOf('10.5 ft')).toBeCloseTo(3.2004, 6);
  });

  it('that is none is answered with how to write one', () => {
    for (const text of ['', 'none', 'tall', '3.05.1', '-3', '4,035'])
      expect(lengthOf(text)).toContain('write 3.05');
  });
});

describe('lengths as they are typed', () => {
  it('of two figures neither is taken', () => {
    expect(lengthOf('3.2; 2.9')).toContain('is no length');
    expect(lengthOf('3.2 / 2.9')).toContain('is no length');
  });

  it('nought is an overhang', () => {
    for (const text of ['0', '0.0', '0,00 m']) expect(lengthOf(text)).toBe(0);
  });
});

describe('a mass as it is typed', () => {
  it('is kilograms unless a unit is written', () => {
    expect(massOf('3500')).toBe(3500);
    expect(massOf('3500 kg')).toBe(3500);
    expect(massOf('3,5 t')).toBe(3500);
    // 12 st 7 lb = 175 lb of 0.45359237 kg (the international yard and pound agreement of 1959)
    expect(massOf('12 st 7 lb')).toBeCloseTo(175 * 0.45359237, 6);
    expect(massOf('175 lb')).toBeCloseTo(79.378665, 5);
  });

  it('that is none is answered with how to write one', () => {
    for (const text of ['', 'heavy', '3500 5', '3 kg 2 lb', '-1'])
      expect(massOf(text)).toContain('write 3500');
  });

  it('that may be thousands or decimals is asked again', () => {
    for (const text of ['3,500', '3.500 kg', '3,500 t', '7,700 lb'])
      expect(massOf(text)).toContain('thousands or decimals');
    expect(massOf('3.500 t')).toBe(3500);
  });

  it('is settled by what it may be, where only one reading can be right', () => {
    const within = (text: string, least: number, most: number) => {
      const read = readEntryMass(text, { least, most });
      return read.ok ? read.value : read.error.message;
    };
    expect(within('3.500', 500, 60_000)).toBe(3500);
    expect(within('3,500 kg', 500, 60_000)).toBe(3500);
    expect(within('12.125', 0, 1000)).toBe(12.125);
    expect(within('12,125', 0, 1000)).toBe(12.125);
    expect(within('3,500 t', 500, 60_000)).toBe(3500);
    expect(within('1.250', 0, 2000)).toContain('thousands or decimals');
    expect(within('12.125', 20_000, 30_000)).toContain('thousands or decimals');
  });

  it('with three decimals that can be no thousands is taken', () => {
    expect(massOf('0.125')).toBe(0.125);
    expect(massOf('0,125 kg')).toBe(0.125);
    expect(massOf('1540.125')).toBe(1540.125);
    expect(massOf('12.1250')).toBe(12.125);
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        readEntryMass(text);
        readEntryLength(text);
      }),
    );
  });

  it('what is refused is quoted on one plain line', () => {
    for (const read of [readEntryLength, readEntryMass]) {
      const refused = read('1\r\n\u001b[31m2 and all the rest of it');
      expect(!refused.ok && refused.error.message).toMatch(/^"\P{Cc}{4,25}…" is no (?:length|mass)/u);
    }
  });

  it('may have a minus before it, as a hyphen, a sign or a dash, with or without a space', () => {
    for (const text of ['-0.4', '−0.4', '– 0.4', '  -  0.4 '])
      expect(splitMinus(text)).toEqual({ minus: true, figure: '0.4' });
    expect(splitMinus(' 9\'0" ')).toEqual({ minus: false, figure: '9\'0"' });
    expect(splitMinus('')).toEqual({ minus: false, figure: '' });
    expect(splitMinus('-')).toEqual({ minus: true, figure: '' });
  });
});
