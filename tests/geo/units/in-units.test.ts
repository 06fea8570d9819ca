import { describe, expect, it } from 'vitest';
import { distanceIn, lengthIn, shortIn, sizeIn, wayIn } from '../../../geo/units/in-units.ts';

describe('a quantity in the units asked for', () => {
  it.each([
    ['metric', '2.2 km'],
    ['imperial', '1.4 mi'],
    ['both', '2.2 km (1.4 mi)'],
  ] as const)('a distance in %s', (units, text) => expect(distanceIn(units, 2182)).toBe(text));

  it('a size is rounded as it is told to be', () => {
    expect([sizeIn('metric', 3.201, 'up'), sizeIn('metric', 3.209, 'down')]).toEqual(['3.21 m', '3.20 m']);
  });

  it('a figure below nothing carries a true minus sign in either unit', () => {
    expect(sizeIn('both', -0.3, 'down')).toBe(`−0.30 m (−1'0")`);
  });

  it('a short stretch is told in metres, a long one in kilometres', () => {
    expect([lengthIn('metric', 84), lengthIn('metric', 1234)]).toEqual(['80 m', '1.2 km']);
    expect([lengthIn('imperial', 84), lengthIn('imperial', 1234)]).toEqual(['90 yd', '0.8 mi']);
  });

  it('the shortest stretch is never told as none', () => {
    expect([lengthIn('metric', 2), lengthIn('imperial', 2)]).toEqual(['10 m', '10 yd']);
  });

  it('a gap is whole centimetres, rounded as told; a little under nothing is nothing', () => {
    expect([shortIn('metric', 0.301, 'up'), shortIn('metric', -0.301, 'down')]).toEqual(['31 cm', '−31 cm']);
    expect(shortIn('metric', -0.001, 'nearest')).toBe('0 cm');
    expect([shortIn('imperial', 0.459, 'up'), shortIn('both', 0.459, 'up')]).toEqual([
      '19 in',
      '46 cm (19 in)',
    ]);
  });

  it('a way is told in metres or feet', () => {
    expect(wayIn('both', 3.25)).toBe('3.25 m (10.7 ft)');
  });
});
