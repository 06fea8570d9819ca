import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthEntry, nearestFeetEntry } from '../../../geo/units/entry-text.ts';
import { readEntryLength } from '../../../geo/units/read-entry.ts';

/** As a card keeps it: to a tenth of a millimetre. */
const kept = (text: string) => {
  const read = readEntryLength(text);
  return read.ok ? Math.round(read.value * 10_000) / 10_000 : Number.NaN;
};

describe('a length in a field', () => {
  it('measured in feet and inches comes back as typed', () => {
    for (const text of [`23'7"`, `10'1 1/2"`, `7'8 3/16"`, `0'11"`, `24'5 7/8"`])
      expect(lengthEntry(kept(text), { inFeet: false })).toBe(text);
  });

  it('measured in metres comes back as typed', () => {
    for (const text of ['3.05', '7.4', '2.985', '0'])
      expect(lengthEntry(Number(text), { inFeet: false })).toBe(text);
  });

  it('that fits both is in metres unless the rest is in feet', () => {
    // 12'6" is 150 inches of 25.4 mm: 3.81 m exactly
    expect(lengthEntry(3.81, { inFeet: false })).toBe('3.81');
    expect(lengthEntry(3.81, { inFeet: true })).toBe(`12'6"`);
    expect(lengthEntry(3.05, { inFeet: true })).toBe('3.05');
  });

  it('moved by hand is told to the half inch', () => {
    expect(nearestFeetEntry(2.75)).toBe(`9'0 1/2"`);
    expect(nearestFeetEntry(-0.4)).toBe(`−1'3 1/2"`);
  });

  it('of any sixteenths is read again as the same', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 16 * 12 * 40 }), (sixteenths) => {
        const m = Math.round((sixteenths / 16) * 0.0254 * 10_000) / 10_000;
        expect(kept(lengthEntry(m, { inFeet: true }))).toBe(m);
      }),
    );
  });
});
