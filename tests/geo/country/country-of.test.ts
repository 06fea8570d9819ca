import { describe, expect, it } from 'vitest';
import { alpha2, countriesAlong, countryOf } from '../../../geo/country/country-of.ts';

describe('the country of a place', () => {
  it.each([
    ['Oakham', 52.67, -0.73, 'GB'],
    ['Cardiff', 51.48, -3.18, 'GB-WLS'],
    ['Stirling', 56.12, -3.94, 'GB'],
    ['Belfast', 54.6, -5.93, 'GB'],
    ['Galway', 53.27, -9.05, 'IE'],
    ['Douglas, Isle of Man', 54.15, -4.48, 'IM'],
    ['Calais', 50.95, 1.86, 'FR'],
    ['Pointe-à-Pitre', 16.24, -61.53, 'GP'],
    ['Las Palmas', 28.12, -15.43, 'ES'],
    ['Ceuta', 35.89, -5.31, 'ES'],
    ['Monaco', 43.738, 7.424, 'MC'],
    ['Vaduz', 47.14, 9.52, 'LI'],
    ['Konstanz', 47.66, 9.17, 'DE'],
    ['Kreuzlingen', 47.64, 9.17, 'CH'],
    ['Seattle', 47.6, -122.33, 'US'],
    ['Vancouver', 49.25, -123.1, 'CA'],
    ['the middle of the North Sea', 57, 2.3, undefined],
  ])('%s', (_, lat, lon, country) => expect(countryOf(lat, lon)).toBe(country));

  it('that is no place is none', () => {
    expect(countryOf(Number.NaN, 0)).toBeUndefined();
    expect(countryOf(91, 0)).toBeUndefined();
    expect(countryOf(0, 500)).toBeUndefined();
  });

  it('has its two letters', () => expect(alpha2('GB-WLS')).toBe('GB'));
});

describe('the countries along a drive', () => {
  /** due west to east, a position every `stepM` */
  const run = (lat: number, fromLon: number, toLon: number, count: number) => {
    const lons = Array.from({ length: count }, (_, i) => fromLon + ((toLon - fromLon) * i) / (count - 1));
    const metresPerDeg = 111_195 * Math.cos((lat * Math.PI) / 180);
    return { lat: lons.map(() => lat), lon: lons, atM: lons.map((lon) => (lon - fromLon) * metresPerDeg) };
  };

  it('follow on without gaps, from start to end', () => {
    const places = run(47.65, 6.5, 10.5, 3000);
    const spans = countriesAlong(places);
    expect(spans.map(({ country }) => country).slice(0, 1)).toEqual(['FR']);
    expect(new Set(spans.map(({ country }) => country))).toEqual(new Set(['FR', 'DE', 'CH']));
    expect(spans[0]?.fromM).toBe(0);
    expect(spans.at(-1)?.toM).toBe(places.atM.at(-1));
    for (let i = 1; i < spans.length; i++) {
      expect(spans[i]?.fromM).toBe(spans[i - 1]?.toM);
      expect(spans[i]?.country).not.toBe(spans[i - 1]?.country);
    }
  });

  it('change at the position where the border is crossed', () => {
    const places = run(48.57, 7.7, 7.9, 2000);
    const spans = countriesAlong(places);
    expect(spans.map(({ country }) => country)).toEqual(['FR', 'DE']);
    const border = places.atM.indexOf(spans[1]?.fromM ?? -1);
    expect(countryOf(48.57, places.lon[border]!)).toBe('DE');
    expect(countryOf(48.57, places.lon[border - 1]!)).toBe('FR');
  });

  it('are one for a drive of one position, and none for none', () => {
    expect(countriesAlong({ lat: [52.67], lon: [-0.73], atM: [0] })).toEqual([
      { fromM: 0, toM: 0, country: 'GB' },
    ]);
    expect(countriesAlong({ lat: [], lon: [], atM: [] })).toEqual([]);
  });

  it('leave the sea without a country', () => {
    const spans = countriesAlong(run(57, -3, 3, 500));
    expect(spans.at(-1)?.country).toBeUndefined();
    expect(spans[0]?.country).toBe('GB');
  });
});
