import { describe, expect, it } from 'vitest';
import { offersOf } from '../../../geo/services/offers.ts';
import { pointsIn } from '../../../geo/services/points-in.ts';
import { admissionOf, canopyOf, sayUnknownOffer } from '../../../geo/services/say-point.ts';
import { testMap } from '../../support/drive-on.ts';

const FUEL = { amenity: 'fuel' };
const SITE = { tourism: 'caravan_site' };

describe('whether the vehicle may go to a place', () => {
  it('is said by the place’s own tags, with its fee', () => {
    expect(admissionOf({ ...SITE, access: 'private', fee: 'no' })).toEqual({
      may: false,
      say: ['Private.', 'Free of charge.'],
    });
    expect(admissionOf({ ...SITE, access: 'customers', charge: '5 EUR' })).toEqual({
      may: true,
      say: ['For customers: ask first.', 'Fee: 5 EUR.'],
    });
    expect(admissionOf({ ...SITE, motorhome: 'no', fee: 'yes' })).toEqual({
      may: false,
      say: ['Not for motorhomes, as mapped.', 'There is a fee.'],
    });
    expect(admissionOf({ ...SITE, sanitary_dump_station: 'customers' }).say).toEqual([
      'For customers: ask first.',
      'Whether there is a fee is not mapped.',
    ]);
    expect(admissionOf({ ...FUEL, access: 'yes' })).toEqual({ may: true, say: [] });
  });

  it('is not understood as open where the map says what nobody reads', () => {
    const { may, say } = admissionOf({ ...FUEL, access: 'maybe_later' });
    expect(may).toBe(true);
    expect(say).toEqual(['Who may use it is not understood as mapped: "maybe_later".']);
  });
});

describe('the roof over the pumps', () => {
  const of = (tags: Record<string, string>, roof?: Record<string, string>) =>
    canopyOf({ ...FUEL, ...tags }, { needsM: 3.1, marginM: 0.2, roof });

  it('is held against the vehicle, the lower of two mapped heights', () => {
    expect(of({ maxheight: '4.2' })).toEqual({
      fits: true,
      say: `Fits: roof over the pumps 4.20 m (13'9"), you 3.10 m (10'3").`,
    });
    expect(of({ maxheight: '3.2' })?.say).toMatch(/^Tight: /);
    expect(of({ maxheight: '4.2' }, { maxheight: '3.0' })).toMatchObject({ fits: false });
    expect(of({ maxheight: '3.0' }, {})?.say).toBe(
      `Too low: roof over the pumps 3.00 m (9'10"), you 3.10 m (10'3").`,
    );
  });

  it('is not known where it is not mapped or cannot be read, unless what can be read is too low', () => {
    expect(of({})).toMatchObject({ fits: undefined });
    expect(of({ maxheight: 'ask' })).toEqual({
      fits: undefined,
      say: 'The height of the roof over the pumps reads "ask": read the sign.',
    });
    expect(of({ maxheight: 'ask' }, { maxheight: '2.9' })).toMatchObject({ fits: false });
    expect(of({ maxheight: 'ask' }, { maxheight: '4' })).toMatchObject({ fits: undefined });
  });

  it('is of filling stations alone', () => {
    expect(canopyOf({ ...SITE, maxheight: '2' }, { needsM: 3.1, marginM: 0.2 })).toBeUndefined();
  });
});

describe('what a place offers', () => {
  const kinds = (tags: Record<string, string>) => offersOf(tags).map(({ kind, is }) => `${kind} ${is}`);

  it('is unknown where it is not mapped, and never a no', () => {
    expect(kinds(SITE)).toEqual(['cassette unknown', 'grey water unknown', 'fresh water unknown']);
    expect(kinds({ ...SITE, sanitary_dump_station: 'no', drinking_water: 'yes' })).toEqual([
      'fresh water yes',
    ]);
    expect(sayUnknownOffer('cassette', SITE)).toBe(
      'Whether a cassette can be emptied is not mapped: ask first.',
    );
  });

  it('of a tap is water, and whether a hose fits nobody maps', () => {
    const tap = { amenity: 'drinking_water' };
    expect(kinds(tap)).toEqual(['fresh water unknown']);
    expect(sayUnknownOffer('fresh water', tap)).toBe('A tap: whether a hose fits is not mapped.');
    expect(kinds({ amenity: 'water_point' })).toEqual(['fresh water yes']);
    expect(kinds({ amenity: 'water_point', drinking_water: 'no' })).toEqual([]);
  });

  it('of a filling station is fuel, water where it says so', () => {
    expect(kinds({ ...FUEL, water_point: 'yes', 'fuel:lpg': 'yes', 'fuel:diesel': 'no' })).toEqual([
      'LPG yes',
      'AdBlue unknown',
      'fresh water yes',
    ]);
  });
});

describe('the service points of a map', () => {
  it('are its nodes and its outlines, which lie in the middle of their box; roads and bare buildings are none', () => {
    const { roads } = testMap(
      [
        { id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'residential' } },
        { id: 2, nodes: ['0,1', '2,1', '2,3', '0,3', '0,1'], tags: { ...FUEL, brand: 'Mill' }, around: true },
        { id: 3, nodes: ['8,1', '9,1', '9,2', '8,1'], tags: { building: 'yes' }, around: true },
      ],
      { '0,0': { highway: 'crossing' }, '5,0': { amenity: 'drinking_water' } },
    );
    expect(pointsIn(roads)).toMatchObject([
      { osm: { type: 'node' }, kind: 'drinking water' },
      {
        osm: { type: 'way', id: 2 },
        kind: 'filling station',
        name: 'Mill',
        // 200 m north of 50° and 100 m east of 7°
        lat: expect.closeTo(50 + 200 / 111_195, 6),
        lon: expect.closeTo(7 + 100 / (111_195 * Math.cos((50 * Math.PI) / 180)), 6),
      },
    ]);
  });
});
