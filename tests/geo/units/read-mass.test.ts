import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMass } from '../../../geo/units/read-mass.ts';
import type { ReadingNote } from '../../../geo/units/reading.ts';

describe('a mass on a sign', () => {
  it.each<[string, number, ReadingNote[]]>([
    ['3.5', 3500, []],
    ['7.50', 7500, []],
    ['40', 40_000, []],
    ['3.500', 3500, []],
    ['7.5 t', 7500, []],
    ['3500 kg', 3500, []],
    ['7700 lbs', 3492.661249, []],
    ['10 st', 9071.8474, []],
    ['3,5', 3500, ['decimal-comma']],
    ['12t', 12_000, ['no-space-before-unit']],
    ['12 to', 12_000, ['unit-spelling']],
    ['12to', 12_000, ['no-space-before-unit', 'unit-spelling']],
    ['7.5 T', 7500, ['unit-spelling']],
    ['7.5T', 7500, ['no-space-before-unit', 'unit-spelling']],
    ['7.5 tons', 7500, ['tons-as-tonnes']],
    ['3 tonnes', 3000, ['unit-spelling']],
    ['3500KG', 3500, ['no-space-before-unit', 'unit-spelling']],
    ['60 cwt', 3048.1407264, ['unit-spelling']],
    ['3 lt', 3048.1407264, ['unit-spelling']],
    ['7.5;18', 7500, ['several-values-lowest-taken']],
  ])('%s is %d kg', (text, kg, notes) => {
    const reading = readMass(text);
    if (reading.kind !== 'value') throw new Error(`${text} was read as ${reading.kind}`);
    expect(reading.value).toBeCloseTo(kg, 6);
    expect(reading.notes).toEqual(notes);
  });

  it.each([
    ['3500'],
    ['200'],
    ['7700'],
    ['12,000'],
    ['3.500 kg'],
    ['12,000 kg'],
    ['3 m'],
    ['0'],
    ['-3'],
    ['emergency'],
    ['7.5 t GVW'],
    [`7'6"`],
    [''],
  ])('%s is unreadable, never no limit', (text) => {
    expect(readMass(text).kind).toBe('unreadable');
  });

  it('tells what may be meant where a bare figure is too large for tonnes', () => {
    expect(readMass('3500')).toEqual({
      kind: 'unreadable',
      reason: '3500 without a unit may be kilograms or pounds, not tonnes',
    });
  });

  it.each([
    ['none', 'none'],
    ['unsigned', 'unsigned'],
    ['default', 'default'],
  ])('%s stands for %s', (text, kind) => {
    expect(readMass(text).kind).toBe(kind);
  });

  it('survives any text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9.,tkglbs ;]{0,16}$/)), (text) => {
        const reading = readMass(text);
        if (reading.kind === 'value') expect(reading.value).toBeGreaterThan(0);
      }),
    );
  });

  it('is the same in tonnes and in kilograms', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1999 }), (hundredKg) => {
        const tonnes = readMass(`${hundredKg / 10} t`);
        const kilograms = readMass(`${hundredKg * 100} kg`);
        if (tonnes.kind !== 'value' || kilograms.kind !== 'value') throw new Error('unread');
        expect(tonnes.value).toBeCloseTo(kilograms.value, 6);
      }),
    );
  });
});
