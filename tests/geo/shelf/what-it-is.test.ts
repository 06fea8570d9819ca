import { expect, it } from 'vitest';
import { exactlyNamed, whatItIs } from '../../../geo/shelf/what-it-is.ts';

it('what a named thing is comes in words of everybody, never as it is mapped', () => {
  expect(whatItIs({ kind: 'road', what: 'trunk' })).toBe('main road');
  expect(whatItIs({ kind: 'road', what: 'unclassified' })).toBe('minor road');
  expect(whatItIs({ kind: 'road', what: 'busway' })).toBe('road');
  expect(whatItIs({ kind: 'place', what: 'town' })).toBe('town');
  expect(whatItIs({ kind: 'site', what: 'station' })).toBe('station');
  expect(whatItIs({ kind: 'site', what: 'camp_site' })).toBe('campsite');
  expect(whatItIs({ kind: 'site', what: 'water_point' })).toBe('water point');
});

it('a whole name beats those that it begins, whatever its case and accents', () => {
  const found = ['Örtlein', 'Ortlein Road', 'ORTLEIN'].map((name) => ({ name }));
  expect(exactlyNamed(found, 'ortlein').map(({ name }) => name)).toEqual(['Örtlein', 'ORTLEIN']);
});
