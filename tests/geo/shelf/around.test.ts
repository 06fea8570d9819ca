import { expect, it } from 'vitest';
import { aroundOf, type Settlement, Settlements } from '../../../geo/shelf/around.ts';

const BOX = { south: 50, north: 52, west: 8, east: 10 };
const at = (name: string, what: string, lat = 51, lon = 9): Settlement => ({ name, what, lat, lon });

it('a map is told by its largest places, the nearest to its middle first', () => {
  const town = at('Eastbury', 'town', 51, 9.5);
  const middle = at('Midbury', 'town');
  const villages = Array.from({ length: 30 }, (_, i) => at(`Hamlet ${i}`, 'village'));
  expect(aroundOf([...villages, town, middle], BOX)).toEqual(['Midbury', 'Eastbury']);
  expect(aroundOf([...villages, town, middle, at('Great Bury', 'city', 52, 10)], BOX)).toEqual([
    'Great Bury',
  ]);
});

it('one that stands on it as a point and as an area is named once', () => {
  expect(aroundOf([at('Midbury', 'town'), at('Midbury', 'town', 51.01)], BOX)).toEqual(['Midbury']);
});

it('of more than three the one in the middle is named, and of a country’s none', () => {
  const towns = (count: number) =>
    Array.from({ length: count }, (_, i) => at(`Town ${i}`, 'town', 50 + i / 10, 9));
  expect(aroundOf(towns(12), BOX)).toEqual(['Town 10']);
  expect(aroundOf(towns(13), BOX)).toEqual([]);
  expect(aroundOf([], BOX)).toEqual([]);
  expect(aroundOf(towns(1), null)).toEqual([]);
});

it('suburbs and farms are not gathered, and of the many no more than tell that they are many', () => {
  const gathered = new Settlements();
  for (const what of ['suburb', 'farm', 'hamlet']) gathered.add(at('Small', what));
  expect(gathered.all()).toEqual([]);
  for (let i = 0; i < 1000; i++) gathered.add(at(`Town ${i}`, 'town'));
  expect(gathered.all().length).toBeLessThan(100);
  expect(aroundOf(gathered.all(), BOX)).toEqual([]);
});
