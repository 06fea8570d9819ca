import { describe, expect, it } from 'vitest';
import { lineBetween } from '../../../geo/drive/line-between.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { pointAt } from '../../../geo/drive/point-at.ts';
import { distanceM } from '../../../geo/earth/sphere.ts';
import { degrees, mapOf, track } from './match/sketch.ts';

const map = mapOf({ a: [0, 0], m: [250, 0], b: [500, 0], c: [1000, 0] }, [
  { id: 1, refs: ['a', 'm', 'b'] },
  { id: 2, refs: ['c', 'b'] },
]);

describe('places on a drive', () => {
  const drive = followRoads(
    track([
      [100, 150],
      [100, 0],
      [900, 0],
    ]),
    map,
  );

  it('lie on the road, or on the drawn line off the map', () => {
    for (const [atM, at, legIndex] of [
      [0, [100, 150], 0],
      [75, [100, 75], 0],
      [350, [300, 0], 1],
      [9999, [900, 0], 2],
    ] as const) {
      const place = pointAt(drive, map, atM);
      const [lat, lon] = degrees(at);
      expect(distanceM(place?.lat ?? 0, place?.lon ?? 0, lat, lon)).toBeLessThan(1);
      expect(place?.legIndex).toBe(legIndex);
    }
  });

  it('do not exist on an empty drive', () => {
    const empty = followRoads({ name: '', kind: 'track', number: 1, segments: [] }, map);
    expect(empty.legs).toEqual([]);
    expect(pointAt(empty, map, 0)).toBeUndefined();
  });

  it('make a line between two distances', () => {
    const line = lineBetween(drive, map, 200, 900);
    expect(line).toHaveLength(4);
    expect(lineBetween(drive, map, 0, drive.lengthM).length).toBeGreaterThan(4);
  });
});
