import { describe, expect, it } from 'vitest';
import { METRES_PER_MILE } from '../../geo/units/exact.ts';
import { readLength } from '../../geo/units/read-length.ts';
import { readMass } from '../../geo/units/read-mass.ts';

/** A reading's figure, or its kind where it has none. */
function figure(text: string, read: typeof readLength): number | string {
  const reading = read(text);
  return reading.kind === 'value' ? Math.round(reading.value * 1e6) / 1e6 : reading.kind;
}

describe('units as the OSM wiki documents them', () => {
  // OSM wiki, Map features/Units; Key:maxheight; Key:maxwidth
  it.each([
    ['4', 4],
    ['3.5', 3.5],
    ['3 m', 3],
    [`6'7"`, 2.0066],
    [`8'`, 2.4384],
    [`7'9"`, 2.3622],
  ])('a length %s is %d m', (text, metres) => {
    expect(figure(text, readLength)).toBe(metres);
  });

  // OSM wiki, Key:maxweight; Map features/Units (st = short ton)
  it.each([
    ['7.5', 7500],
    ['3.5 t', 3500],
    ['5500 kg', 5500],
    ['10 st', 9071.847],
    ['36000 lbs', 16_329.325],
  ])('a mass %s is %d kg', (text, kilograms) => {
    expect(Number(figure(text, readMass))).toBeCloseTo(kilograms, 2);
  });

  // OSM wiki, Key:maxheight, Key:maxwidth, Key:maxweight: listed there as mistakes
  it.each([
    [`2.3; 7'9"`, readLength, 2.3],
    ['0,6', readLength, 0.6],
    ['3.8m', readLength, 3.8],
    [`12' 6"`, readLength, 3.81],
    ['12 to', readMass, 12_000],
    ['12t', readMass, 12_000],
  ] as const)('the documented mistake %s is read, with a note', (text, read, value) => {
    const reading = read(text);
    expect(figure(text, read)).toBe(value);
    expect(reading.kind === 'value' && reading.notes.length).toBeGreaterThan(0);
  });

  // OSM wiki, Tag:maxheight=default; Key:maxweight
  it('words in place of figures keep their meaning', () => {
    expect(readLength('default').kind).toBe('default');
    expect(readLength('below_default').kind).toBe('below_default');
    expect(readLength('none').kind).toBe('none');
    expect(readMass('unsigned').kind).toBe('unsigned');
  });
});

describe('units by definition', () => {
  // International yard and pound agreement, 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg
  it('foot, inch, mile and pound are the international ones', () => {
    expect(figure(`3'0"`, readLength)).toBe(0.9144);
    expect(METRES_PER_MILE).toBe(1760 * 0.9144);
    expect(figure('1000 lbs', readMass)).toBeCloseTo(453.59237, 5);
    expect(figure('1 st', readMass)).toBeCloseTo(2000 * 0.45359237, 5);
    expect(figure('1 lt', readMass)).toBeCloseTo(2240 * 0.45359237, 5);
    expect(figure('1 cwt', readMass)).toBeCloseTo(112 * 0.45359237, 5);
  });
});

describe('values seen on real roads', () => {
  // OpenStreetMap extracts of Lower Saxony, Berlin, Rutland, Liechtenstein and Monaco
  it.each([
    ['4.30', 4.3],
    [`15'9"`, 4.8006],
    [`14'6"`, 4.4196],
    [`11'0"`, 3.3528],
    ['4.2 m', 4.2],
    ['3.81', 3.81],
    ['1,80', 1.8],
    ['60cm', 0.6],
    ['.5', 0.5],
    [`52'0"`, 15.8496],
    ['0', 'unreadable'],
    ['Narrow', 'unreadable'],
    ['<', 'unreadable'],
  ])('%s', (text, meaning) => {
    expect(figure(text, readLength)).toBe(meaning);
  });

  it.each([
    ['7.50', 7500],
    ['16.0', 16_000],
    ['12 t', 12_000],
    ['2.8 t', 2800],
    ['none', 'none'],
    ['emergency', 'unreadable'],
  ])('%s', (text, meaning) => {
    expect(figure(text, readMass)).toBe(meaning);
  });
});
