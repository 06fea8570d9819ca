import { describe, expect, it } from 'vitest';
import { aboutCountries } from '../../../geo/country/about.ts';
import { sayOpenRoads } from '../../../geo/country/say-rule.ts';
import { COUNTRY_TABLE } from '../../../geo/country/table.ts';

describe('the page about the rules', () => {
  const pages = aboutCountries();
  const says = (code: string, about: string) =>
    pages.find((page) => page.code === code)?.lines.find((line) => line.about === about)?.says;

  it('has every country by its name, the row that stands in elsewhere last', () => {
    const names = pages.map(({ name }) => name);
    expect(names.slice(0, -1)).toEqual(names.slice(0, -1).sort());
    expect(pages.at(-1)?.code).toBe('other');
  });

  it('says the side of the road, and the legal height where the law sets one', () => {
    expect(says('GB', 'Side of the road')).toMatch(/^Traffic keeps to the left\./);
    expect(says('FR', 'Side of the road')).toMatch(/^Traffic keeps to the right\./);
    // StVZO § 32 (2): 4.00 m
    expect(says('DE', 'Legal height')).toMatch(/^The law lets vehicles be 4\.00 m high\./);
    expect(says('GB', 'Legal height')).toMatch(/^The law sets no height for vehicles\./);
  });

  it('says speeds as the country’s signs have them, heavy vehicles in lines of their own', () => {
    // Highway Code, rule 124: 30 mph in built-up areas; StVO § 3 (3): 50 km/h
    expect(says('GB', 'Speed in towns')).toMatch(/^30 mph\./);
    expect(says('DE', 'Speed in towns')).toMatch(/^50 km\/h\./);
    // StVO § 3 (3) 2: 100 km/h, no limit where two lanes each way are apart: over 3.5 t 80 km/h outside towns
    expect(says('DE', 'Speed over 3.5 t plated')).toMatch(/^outside towns 80 km\/h/);
    expect(says('DE', 'Speed elsewhere')).toMatch(/^outside towns 100 km\/h, dual carriageways no limit/);
  });

  it('leaves out a kind of road that has the limit of the one before it', () => {
    const limits = { rural: 80, dual: 80, expressway: 80, dualExpressway: 100, motorway: 'none' } as const;
    expect(sayOpenRoads(COUNTRY_TABLE.FR, limits)).toBe(
      'outside towns 80 km/h, the same with two carriageways 100 km/h, motorways no limit.',
    );
  });
});
