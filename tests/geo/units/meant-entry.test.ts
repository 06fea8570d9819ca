import { describe, expect, it } from 'vitest';
import { meantLength, meantMass } from '../../../geo/units/meant-entry.ts';

const HEIGHT = { least: 1.5, most: 5 };
const LENGTH = { least: 2.5, most: 20 };

describe('a bare figure that cannot be right', () => {
  it('in metres was likely millimetres or centimetres', () => {
    expect(meantLength('3050', HEIGHT)).toEqual({ text: '3.05', says: '3.05 m' });
    expect(meantLength('305', HEIGHT)?.text).toBe('3.05');
    expect(meantLength('3,050', HEIGHT)?.text).toBe('3.05');
    expect(meantLength('7400', LENGTH)?.text).toBe('7.4');
  });

  it('or inches or feet where neither fits', () => {
    // 121 in of 25.4 mm, 10.5 ft of 304.8 mm
    expect(meantLength('121', HEIGHT)?.text).toBe('3.0734');
    expect(meantLength('10.5', HEIGHT)?.text).toBe('3.2004');
  });

  it('in kilograms was likely tonnes', () => {
    expect(meantMass('3.5', { least: 500, most: 60_000 })).toEqual({ text: '3500', says: '3500 kg' });
  });

  it('is not asked about where it may be right, or nothing is likely', () => {
    expect(meantLength('3.05', HEIGHT)).toBeUndefined();
    expect(meantLength('tall', HEIGHT)).toBeUndefined();
    expect(meantLength('3050 m', HEIGHT)).toBeUndefined();
    expect(meantLength('0', HEIGHT)).toBeUndefined();
    expect(meantMass('0.1', { least: 500, most: 60_000 })).toBeUndefined();
  });
});
