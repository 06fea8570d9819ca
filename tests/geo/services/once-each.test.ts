import { expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import { onceEach } from '../../../geo/services/once-each.ts';
import { pointOf } from '../../../geo/services/points-in.ts';

const SITE = { tourism: 'caravan_site', name: 'By the mill' };
function place(type: 'node' | 'way', id: number, east: number, tags: Tags) {
  const point = pointOf({ type, id }, { lat: 52, lon: 7 + east / 68_500 }, tags);
  if (point === undefined) throw new Error('no service point');
  return point;
}

it('a site mapped as a point and as an outline is one place, which says what either says', () => {
  const twice = [
    place('node', 1, 0, { ...SITE, sanitary_dump_station: 'yes' }),
    place('way', 2, 120, { ...SITE, fee: 'yes', opening_hours: 'Apr-Oct' }),
  ];
  expect(onceEach(twice)).toMatchObject([
    { osm: { type: 'way', id: 2 }, tags: { sanitary_dump_station: 'yes', fee: 'yes' } },
  ]);
});

it('two places stay two: far apart, of other names, of other hours, or both drawn as points', () => {
  const first = place('node', 1, 0, SITE);
  for (const other of [
    place('way', 2, 400, SITE),
    place('way', 2, 20, { ...SITE, name: 'On the hill' }),
    place('node', 2, 20, SITE),
  ])
    expect(onceEach([first, other])).toHaveLength(2);
  const hours = (opening_hours: string) => ({ ...SITE, opening_hours });
  expect(onceEach([place('node', 1, 0, hours('24/7')), place('way', 2, 0, hours('Mo-Fr'))])).toHaveLength(2);
});

it('the one that says more stands for both, by the name that either has', () => {
  const named = place('node', 1, 0, {
    ...SITE,
    sanitary_dump_station: 'yes',
    fee: 'yes',
    power_supply: 'yes',
  });
  const { name: _, ...bare } = SITE;
  const outline = place('way', 2, 20, bare);
  expect(onceEach([named, outline])).toMatchObject([{ osm: { type: 'node', id: 1 }, name: SITE.name }]);
  expect(onceEach([outline, named])).toMatchObject([{ osm: { type: 'node', id: 1 }, name: SITE.name }]);
  expect(onceEach([outline, place('node', 3, 10, bare)])[0]).not.toHaveProperty('name');
});
