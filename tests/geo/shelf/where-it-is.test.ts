import { describe, expect, it } from 'vitest';
import type { NameEntry } from '../../../geo/shelf/names.ts';
import { landmarkOf, toldApart, whereItIs } from '../../../geo/shelf/where-it-is.ts';

// a hundredth of a degree of latitude is 1.11 km
const TOWN = { name: 'Oakham', what: 'town', lat: 52.67, lon: -0.73 };
const VILLAGE = { name: 'Langham', what: 'village', lat: 52.69, lon: -0.73 };
const STATION = { name: 'Melton', what: 'station', lat: 52.7, lon: -0.73 };

const road = (lat: number, lon = -0.73): NameEntry => ({
  name: 'Oakham Road',
  kind: 'road',
  what: 'primary',
  lat,
  lon,
});
const place = ({ name, what, lat, lon }: typeof TOWN): NameEntry => ({ name, kind: 'place', what, lat, lon });

describe('where a named thing lies', () => {
  it('is told by the nearest settlement, how far and which way', () => {
    expect(whereItIs(road(52.68), [TOWN, VILLAGE, STATION])).toMatch(/^1\.1 km \(0\.7 mi\) north of Oakham$/);
    expect(whereItIs(road(52.66, -0.7465), [TOWN])).toMatch(/ south-west of Oakham$/);
    expect(whereItIs(road(52.692), [TOWN, VILLAGE])).toMatch(/^220 m \(0.1 mi\) north of Langham$/);
  });

  it('by a station where there is no settlement, and by nothing far off', () => {
    expect(whereItIs(road(52.71), [STATION])).toMatch(/ north of Melton station$/);
    expect(whereItIs(road(53.2), [TOWN, STATION])).toBeUndefined();
  });

  it('of a village by the town, never by itself', () => {
    expect(whereItIs(place(VILLAGE), [TOWN, VILLAGE])).toBe('2.2 km (1.4 mi) north of Oakham');
    expect(whereItIs(place(TOWN), [TOWN, VILLAGE])).toBeUndefined();
  });

  it('of two that lie near nothing the second is told by the first', () => {
    const [first, second] = toldApart([road(52.61), road(52.72)]);
    expect(first).toEqual(road(52.61));
    expect(second).toEqual({ ...road(52.72), where: '12.2 km (7.6 mi) north of the first of this name' });
  });

  it('what has no name is no landmark', () => {
    expect(landmarkOf({ place: 'town' }, TOWN)).toBeUndefined();
    expect(landmarkOf({ name: 'Post', amenity: 'post_office' }, TOWN)).toBeUndefined();
    expect(landmarkOf({ name: 'Melton', railway: 'halt' }, { lat: 1, lon: 2 })).toMatchObject({
      what: 'halt',
    });
  });
});
