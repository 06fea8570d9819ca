import { describe, expect, it } from 'vitest';
import { meantLengths, meantMass } from '../../../geo/units/meant-entry.ts';

const HEIGHT = { least: 1.5, most: 5 };
const LENGTH = { least: 2.5, most: 20 };

function textsOf(text: string, may: { least: number; most: number }): string[] {
  return meantLengths(text, may).map((meant) => meant.text);
}

describe('a bare figure that cannot be right', () => {
  it('in metres was likely millimetres or centimetres', () => {
    expect(meantLengths('3050', HEIGHT)).toEqual([{ text: '3.05', says: '3.05 m', value: 3.05 }]);
    expect(textsOf('305', HEIGHT)).toEqual(['3.05']);
    expect(textsOf('3,050', HEIGHT)).toEqual(['3.05']);
    expect(textsOf('7400', LENGTH)).toEqual(['7.4']);
  });

  it('or inches or feet where neither fits', () => {
    // 121 in of 25.4 mm, 10.5 ft of 304.8 mm
    expect(textsOf('121', HEIGHT)).toEqual(['3.0734']);
    expect(textsOf('10.5', HEIGHT)).toEqual(['3.2004', `10'5"`]);
  });

  it('in kilograms was likely tonnes', () => {
    expect(meantMass('3.5', { least: 500, most: 60_000 })).toEqual([
      { text: '3500', says: '3500 kg', value: 3500 },
    ]);
  });

  it('is not asked about where it may be right, or nothing is likely', () => {
    expect(textsOf('3.05', HEIGHT)).toEqual([]);
    expect(textsOf('tall', HEIGHT)).toEqual([]);
    expect(textsOf('3050 m', HEIGHT)).toEqual([]);
    expect(textsOf('0', HEIGHT)).toEqual([]);
    expect(meantMass('0.1', { least: 500, most: 60_000 })).toEqual([]);
  });
});
