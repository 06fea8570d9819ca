import { describe, expect, it } from 'vitest';
import { lineBetween } from '../../../geo/drive/line-between.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { afterRemoval, removeSpurs } from '../../../geo/drive/match/remove-spurs.ts';
import { placeDriven, pointAt } from '../../../geo/drive/point-at.ts';
import { distanceM } from '../../../geo/earth/sphere.ts';
import type { RoadGraph } from '../../../geo/graph/road-graph.ts';
import { cut, moved } from '../../../geo/wayround/along/cut-legs.ts';
import { nearPart } from '../../../geo/wayround/along/near-part.ts';
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

describe('a drive of which nothing is left', () => {
  it('is nowhere, and one with a break is where it breaks off', () => {
    const empty = followRoads({ name: '', kind: 'track', number: 1, segments: [] }, map);
    expect(placeDriven(empty, map, 50)).toEqual({ lat: 0, lon: 0 });
    const [a, b] = [degrees([0, 0]), degrees([500, 0])];
    const gap = {
      kind: 'gap',
      atM: 0,
      straightM: 500,
      from: { lat: a[0], lon: a[1] },
      to: { lat: b[0], lon: b[1] },
    } as const;
    expect(placeDriven({ ...empty, legs: [gap] }, map, 0)).toEqual({ lat: a[0], lon: a[1] });
  });
});

describe('legs cut to a part of the drive', () => {
  const gap = {
    kind: 'gap',
    atM: 100,
    straightM: 5,
    from: { lat: 0, lon: 0 },
    to: { lat: 0, lon: 0 },
  } as const;
  const off = { kind: 'offMap', fromM: 0, toM: 80, lat: [0, 1], lon: [0, 1] } as const;

  it('keep a break that lies within, and what is off the map whole', () => {
    expect(cut(gap, 50, 150)).toEqual([gap]);
    expect(cut(gap, 100, 150)).toEqual([]);
    expect(cut(gap, 50, 100)).toEqual([]);
    expect(cut(off, 50, 150)).toEqual([off]);
    expect(cut(off, 80, 150)).toEqual([]);
    expect(moved(gap, 20)).toMatchObject({ atM: 120 });
    expect(moved(off, 20)).toMatchObject({ fromM: 20, toM: 100 });
  });

  it('are none of a drive without legs', () => {
    const { drive } = nearPart(
      { lengthM: 0, legs: [], guessed: [], doubtful: [], brokenTurns: [] },
      {
        fromM: 0,
        toM: 0,
        parts: [],
      },
    );
    expect(drive.legs).toEqual([]);
    const broken = { lengthM: 100, legs: [off, gap], guessed: [], doubtful: [], brokenTurns: [] };
    expect(nearPart(broken, { fromM: 10, toM: 20, parts: [] }).drive.legs).toEqual([off, gap]);
  });
});

describe('spurs taken out of a path', () => {
  // one edge of 100 m out and back: directed 0 and 1; a second one 2 and 3
  const graph = { lengthM: Float64Array.of(100, 100) } as unknown as RoadGraph;
  const part = (directed: number, fromM: number, toM: number) => ({ directed, fromM, toM });

  it('leave the road as if it had not been left, and count what was taken', () => {
    const { parts, removed } = removeSpurs([part(0, 0, 60), part(1, 40, 60), part(0, 40, 100)], graph);
    expect(parts.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0)).toBeCloseTo(100);
    expect(removed).toEqual([{ fromM: 40, toM: 80 }]);
    expect([afterRemoval(30, removed), afterRemoval(60, removed), afterRemoval(100, removed)]).toEqual([
      30, 40, 60,
    ]);
  });

  it('stay where they are deep, or where it turns back elsewhere than it came to', () => {
    const deep = [part(0, 0, 100), part(1, 0, 60)];
    expect(removeSpurs(deep, graph)).toEqual({ parts: deep, removed: [] });
    const apart = [part(0, 0, 60), part(1, 10, 20)];
    expect(removeSpurs(apart, graph)).toEqual({ parts: apart, removed: [] });
  });
});
