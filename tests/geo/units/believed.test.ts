import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BELIEVED, type Figure, isBelieved } from '../../../geo/units/believed.ts';
import { readLength } from '../../../geo/units/read-length.ts';
import { readMass } from '../../../geo/units/read-mass.ts';
import type { Reading } from '../../../geo/units/reading.ts';

const why = (reading: Reading): string => ('reason' in reading ? reading.reason : reading.kind);

describe('a figure is held to what it may be', () => {
  // Figures seen on roads of real maps: each is believed.
  it.each<[Figure, string]>([
    ['height', '1.55'],
    ['height', '10'],
    ['height', '7.83'],
    ['width', '0.9'],
    ['width', '1.2'],
    ['width', '6'],
    ['length', '9.5'],
    ['length', '52\'0"'],
    ['carriageway', '1'],
    ['carriageway', '40'],
    ['gap', '0.30'],
    ['gap', '15'],
  ])('of %s %s is believed', (of, text) => {
    expect(readLength(text, of).kind).toBe('value');
  });

  it.each<[Figure, string]>([
    ['mass', '0.630'],
    ['mass', '60'],
    ['axle', '2.8 t'],
    ['axle', '8'],
  ])('of %s %s is believed', (of, text) => {
    expect(readMass(text, of).kind).toBe('value');
  });

  it('with the likely meaning where exactly one other unit fits', () => {
    expect(why(readLength('250', 'width'))).toBe(
      '250.00 m is not believed as a width limit; 2.50 m if centimetres are meant',
    );
    expect(why(readLength('1200', 'length'))).toContain('; 12.00 m if centimetres are meant');
    expect(why(readLength('3800', 'height'))).toContain('; 3.80 m if millimetres are meant');
    expect(why(readLength('13', 'height'))).toContain('; 3.96 m if feet are meant');
    expect(why(readMass('1200', 'axle'))).toContain('; 1.2 t if kilograms are meant');
  });

  it('without one where none fits, two do, or the unit is written', () => {
    expect(why(readLength('25', 'width'))).toBe('25.00 m is not believed as a width limit');
    expect(why(readMass('7500', 'mass'))).toBe(
      '7500 t is not believed as a mass limit; kilograms or pounds may be meant',
    );
    expect(why(readLength('250 m', 'width'))).toBe('250.00 m is not believed as a width limit');
    expect(why(readMass('3.5 kg', 'mass'))).toBe('0.004 t is not believed as a mass limit');
  });

  it('in a list too: what is not believed might be the lowest', () => {
    expect(readLength('3; 250', 'width').kind).toBe('not believed');
    expect(readLength('3; wide', 'width').kind).toBe('unreadable');
    expect(readLength('3; 2.5', 'width')).toMatchObject({ kind: 'value', value: 2.5 });
  });

  it('and what is usual is believed', () => {
    for (const { least, most, usual } of Object.values(BELIEVED)) {
      expect(least).toBeLessThanOrEqual(usual.least);
      expect(most).toBeGreaterThanOrEqual(usual.most);
    }
  });

  it('no figure beyond it is ever a value', () => {
    const lengths = fc.constantFrom<Figure>('height', 'width', 'length', 'gap', 'depth', 'carriageway');
    fc.assert(
      fc.property(lengths, fc.double({ min: 0.001, max: 9999, noNaN: true }), (of, m) => {
        const text = m.toFixed(3);
        const reading = readLength(text, of);
        expect(reading.kind === 'value').toBe(Number(text) > 0 && isBelieved(of, Number(text)));
      }),
    );
  });
});
