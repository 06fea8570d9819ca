import { expect, it } from 'vitest';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { routeWithWay } from '../../../geo/wayround/take-way.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';
import { road } from '../../support/way-round/ask-ways.ts';

const ROUTE: Route = { name: 'There', kind: 'track', number: 1, segments: [] };
const WAYS = [road(1, ['0,0', '5,0']), road(2, ['5,0', '10,0']), road(3, ['10,0', '15,0'])];
const map = testMap(WAYS);
const [west, north, east] = [
  [50, 7.02],
  [50.01, 7.05],
  [50, 7.08],
] as const;

/** How many segments the route has with a way taken between two places of the drive. */
const segments = (steps: Parameters<typeof driveOn>[1], fromM: number, toM: number) => {
  const drive = driveOn(map, steps);
  const way = { fromM, toM, path: [west, north, east] };
  return routeWithWay({ route: ROUTE, drive, roads: map.roads }, way as never).segments;
};

it('a way taken goes into the drive as one line with what lies before and behind it', () => {
  const [only, ...more] = segments([1, 2, 3], 600, 1200);
  expect(more).toEqual([]);
  expect([...only!.lat]).toContain(50.01);
  expect(only!.lat.length).toBeGreaterThan(4);
});

it('where the file’s segments did not meet they still do not, but within the stretch that the way replaces', () => {
  const gap = { gapM: 80 };
  expect(segments([1, gap, 2, 3], 600, 1200)).toHaveLength(2);
  expect(segments([1, 2, gap, 3], 600, 900)).toHaveLength(2);
  expect(segments([1, gap, 2, gap, 3], 400, 1200)).toHaveLength(1);
});

it('a way from the very start or to the very end is the drive’s beginning or end', () => {
  expect([...segments([1, 2, 3], 0, 600)[0]!.lat].indexOf(50.01)).toBe(1);
  const { lengthM } = driveOn(map, [1, 2, 3]);
  const end = segments([1, 2, 3], 600, lengthM)[0]!;
  expect([...end.lat].indexOf(50.01)).toBe(end.lat.length - 2);
});
