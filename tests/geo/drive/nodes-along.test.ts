import { describe, expect, it } from 'vitest';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { nodesAlong, nodesOnDrive } from '../../../geo/drive/nodes-along.ts';
import { type At, mapOf, track } from './match/sketch.ts';

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
