import { describe, expect, it } from 'vitest';
import { lineBetween } from '../../../geo/drive/drive-line.ts';
import { nodesAlong, nodesOnDrive, pointAt } from '../../../geo/drive/drive-place.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { distanceM } from '../../../geo/earth/sphere.ts';
import { type At, degrees, mapOf, track } from './match/sketch.ts';

const map = mapOf({ a: [0, 0], m: [250, 0], b: [500, 0], c: [1000, 0] }, [
  { id: 1, refs: ['a', 'm', 'b'] },
  { id: 2, refs: ['c', 'b'] },
]);
const names = ['a', 'm', 'b', 'c'];

function passed(places: At[]): string {
  const drive = followRoads(track(places), map);
  return nodesOnDrive(drive, map)
    .map((node) => `${names[node.node]}@${Math.round(node.atM)}`)
    .join(' ');
}

describe('nodes on a drive', () => {
  it('are those truly passed, the one between two ways once', () => {
    expect(
      passed([
        [100, 0],
        [900, 0],
      ]),
    ).toBe('m@150 b@400');
    expect(
      passed([
        [900, 0],
        [100, 0],
      ]),
    ).toBe('b@400 m@650');
  });

  it('include the one the drive starts at', () => {
    expect(
      passed([
        [0, 0],
        [300, 0],
      ]),
    ).toBe('a@0 m@250');
  });

  it('are told again when passed again', () => {
    expect(
      passed([
        [200, 0],
        [300, 0],
        [200, 0],
      ]),
    ).toBe('m@50 m@150');
    expect(
      passed([
        [100, 0],
        [900, 0],
        [100, 0],
      ]),
    ).toBe('m@150 b@400 b@1200 m@1450');
  });

  it('know their place within their way', () => {
    const [stretch] = followRoads(
      track([
        [400, 0],
        [10, 0],
      ]),
      map,
    ).legs;
    if (stretch?.kind !== 'stretch') throw new Error('no stretch');
    expect(nodesAlong(stretch, map).map((node) => node.refIndex)).toEqual([1]);
  });
});

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
