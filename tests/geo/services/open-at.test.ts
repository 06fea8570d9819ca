import { describe, expect, it } from 'vitest';
import { clockOf } from '../../../geo/clock/zone.ts';
import { offersOf } from '../../../geo/services/offers.ts';
import { openAt } from '../../../geo/services/open-at.ts';

const FULDA = { lat: 50.55, lon: 9.68, country: 'DE' };

/** @param utc 2027-06-16T10:00 */
function at(hours: string, utc: string, country: string | undefined = FULDA.country) {
  const clock = clockOf('Europe/Berlin', Date.parse(`${utc}Z`));
  if (!clock.ok) throw new Error(clock.error.message);
  return openAt(hours, clock.value, { lat: FULDA.lat, lon: FULDA.lon, country });
}

describe('whether a place is open when the vehicle comes', () => {
  it('follows its hours on an ordinary day, and says until when', () => {
    expect(at('Mo-Fr 08:00-18:00', '2027-06-16T10:00')).toEqual({
      is: 'open',
      say: 'Open at 12:00, until 18:00.',
    });
    expect(at('Mo-Fr 08:00-18:00', '2027-06-16T05:00')).toEqual({
      is: 'closed',
      say: 'Closed at 07:00, opens at 08:00.',
    });
  });

  it('is not known on a holiday of which the hours say nothing', () => {
    // 3 October is a holiday in all of Germany (Einigungsvertrag, article 2)
    expect(at('08:00-18:00', '2027-10-03T10:00').is).toBe('unknown');
    expect(at('08:00-18:00; PH off', '2027-10-03T10:00').is).toBe('closed');
    expect(at('24/7', '2027-10-03T10:00').is).toBe('open');
  });

  it('is not known where nobody tells which days are holidays, nor by hours that cannot be read', () => {
    const clock = at('08:00-18:00', '2027-06-16T10:00', 'XX');
    expect(clock.is).toBe('unknown');
    expect(at('whenever the light is on', '2027-06-16T10:00').is).toBe('unknown');
  });
});

describe('what can be had at a place', () => {
  const kinds = (tags: Record<string, string>) =>
    Object.fromEntries(offersOf(tags).map(({ kind, is }) => [kind, is]));

  it('is told by its own keys, and a missing key is not mapped', () => {
    const dump = { amenity: 'sanitary_dump_station' };
    expect(kinds(dump)).toEqual({ cassette: 'unknown', 'grey water': 'unknown', 'fresh water': 'unknown' });
    expect(
      kinds({
        ...dump,
        'sanitary_dump_station:chemical_toilet': 'yes',
        'sanitary_dump_station:grey_water': 'no',
        water_point: 'yes',
      }),
    ).toEqual({ cassette: 'yes', 'fresh water': 'yes' });
    expect(
      kinds({ amenity: 'fuel', 'fuel:lpg': 'yes', 'fuel:adblue': 'no', 'fuel:adblue:canister': 'no' }),
    ).toEqual({ fuel: 'yes', LPG: 'yes' });
    expect(kinds({ amenity: 'parking;fuel' })).toEqual({ fuel: 'yes', LPG: 'unknown', AdBlue: 'unknown' });
  });

  it('is no diesel for sure at a station whose list of fuels leaves it out', () => {
    const fuelAt = (fuels: Record<string, string>) => kinds({ amenity: 'fuel', ...fuels })['fuel'];
    expect(fuelAt({})).toBe('yes');
    expect(fuelAt({ 'fuel:octane_95': 'yes' })).toBe('unknown');
    expect(fuelAt({ 'fuel:octane_95': 'yes', 'fuel:GTL_diesel': 'yes' })).toBe('yes');
    expect(fuelAt({ 'fuel:diesel': 'no' })).toBe(undefined);
  });

  it('tells a water point for tanks from a tap', () => {
    expect(kinds({ amenity: 'water_point' })).toEqual({ 'fresh water': 'yes' });
    expect(kinds({ amenity: 'drinking_water' })).toEqual({ 'fresh water': 'unknown' });
    expect(kinds({ amenity: 'waste_disposal' })).toEqual({});
  });
});
