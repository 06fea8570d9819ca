import { expect, it } from 'vitest';
import type { NameKind } from '../../../geo/shelf/names.ts';
import { meantBy, whatItIs } from '../../../geo/shelf/what-it-is.ts';

it('what a named thing is comes in words of everybody, never as it is mapped', () => {
  expect(whatItIs({ kind: 'road', what: 'trunk' })).toBe('main road');
  expect(whatItIs({ kind: 'road', what: 'unclassified' })).toBe('minor road');
  expect(whatItIs({ kind: 'road', what: 'busway' })).toBe('road');
  expect(whatItIs({ kind: 'place', what: 'town' })).toBe('town');
  expect(whatItIs({ kind: 'site', what: 'station' })).toBe('station');
  expect(whatItIs({ kind: 'site', what: 'camp_site' })).toBe('campsite');
  expect(whatItIs({ kind: 'site', what: 'water_point' })).toBe('water point');
});

const named = (name: string, kind: NameKind, what: string) => ({ name, kind, what });

it('a whole name beats those that it begins, whatever its case and accents', () => {
  const found = ['Örtlein', 'Ortlein Road', 'ORTLEIN'].map((name) => named(name, 'road', 'residential'));
  expect(meantBy(found, 'ortlein').map(({ name }) => name)).toEqual(['Örtlein', 'ORTLEIN']);
});

it('a town is meant before the station and the road of its name; of two towns neither is taken', () => {
  const station = named('Oakham', 'site', 'station');
  const road = named('Oakham', 'road', 'tertiary');
  const town = named('Oakham', 'place', 'town');
  expect(meantBy([station, town, road], 'oakham')).toEqual([town]);
  expect(meantBy([station, road], 'oakham')).toEqual([station, road]);
  expect(meantBy([town, station, town], 'oakham')).toHaveLength(3);
  // a spot that nobody lives in is no town
  expect(meantBy([named('Oakham', 'place', 'locality'), station], 'oakham')).toHaveLength(2);
});
