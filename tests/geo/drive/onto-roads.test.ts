import { expect, it } from 'vitest';
import { ontoRoads } from '../../../geo/drive/onto-roads.ts';
import { driveOn, testMap } from '../../support/drive-on.ts';
import { road } from '../../support/way-round/ask-ways.ts';

const [FIRST, SECOND] = [road(1, ['0,0', '5,0']), road(2, ['5,0', '5,5', '9,5'])];
const BESIDE = road(7, ['0,0', '5,0', '5,5', '9,5']);
const near = testMap([FIRST, SECOND]);
const drive = driveOn(near, [1, 2]);

it('a drive is found again on roads read farther about it, as if it were followed there', () => {
  const far = testMap([BESIDE, SECOND, FIRST]);
  expect(ontoRoads(drive, near.roads, far.roads)).toEqual(driveOn(far, [1, 2]));
});

it('where a way is gone, cut, or there twice, it is not', () => {
  const cut = road(2, ['5,0', '5,5']);
  for (const ways of [
    [BESIDE, FIRST],
    [BESIDE, FIRST, cut],
    [BESIDE, FIRST, SECOND, SECOND],
  ])
    expect(ontoRoads(drive, near.roads, testMap(ways).roads)).toBeUndefined();
});
