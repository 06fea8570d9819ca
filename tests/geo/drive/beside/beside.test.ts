import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areasOf } from '../../../../geo/drive/beside/areas.ts';
import { drivenSegments } from '../../../../geo/drive/beside/driven-line.ts';
import { awayFrom, crossing } from '../../../../geo/earth/segment.ts';
import { area, mapWithSurroundings, road } from '../../../support/ask-around.ts';
import { driveOn } from '../../../support/drive-on.ts';

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });

describe('two segments', () => {
  it('where they meet lies on both', () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const met = crossing(a, b, c, d);
        if (met === undefined) return;
        const at = { x: a.x + met.t * (b.x - a.x), y: a.y + met.t * (b.y - a.y) };
        expect(awayFrom(at, c, d)).toBeLessThan(0.01);
      }),
    );
  });

  it('through a common point inside both they meet there', () => {
    fc.assert(
      fc.property(
        point,
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (at, angle, turn) => {
          const arm = (direction: number, m: number) => ({
            x: at.x + m * Math.cos(direction),
            y: at.y + m * Math.sin(direction),
          });
          const met = crossing(
            arm(angle, -20),
            arm(angle, 60),
            arm(angle + turn, -30),
            arm(angle + turn, 10),
          );
          expect(met?.t).toBeCloseTo(0.25, 5);
          expect(met?.u).toBeCloseTo(0.75, 5);
        },
      ),
    );
  });

  it('side by side they do not meet', () => {
    expect(crossing({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 0, y: 1 }, { x: 10, y: 1 })).toBeUndefined();
    expect(crossing({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 12, y: -1 }, { x: 12, y: 1 })).toBeUndefined();
    expect(crossing({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 2, y: 0 }, { x: 8, y: 0 })).toBeUndefined();
  });
});

describe('areas', () => {
  const bay = {
    id: 9,
    nodes: ['0,0', '10,0', '10,10', '6,10', '6,4', '4,4', '4,10', '0,10', '0,0'],
    tags: { natural: 'wood' },
    around: true,
  };
  const { roads } = mapWithSurroundings([
    road({}),
    bay,
    area(10, 1, 1, 2, 2, { landuse: 'meadow' }),
    { ...bay, id: 11, nodes: bay.nodes.slice(0, -1) },
    area(12, 0, 0, 10, 10, { building: 'yes' }),
  ]);
  const at = (x: number, y: number) =>
    areasOf(roads)
      .at(50 + (y * 100) / 111_195, 7 + (x * 100) / (111_195 * Math.cos((50 * Math.PI) / 180)))
      .map((way) => roads.ways.id[way]);

  it('drawn as edges of one relation close together; with one missing they are open edges', () => {
    const tags = { landuse: 'forest' };
    const halves = [
      { id: 20, nodes: ['0,0', '0,10', '10,10'], tags, around: true },
      { id: 21, nodes: ['0,0', '10,0', '10,10'], tags, around: true },
    ];
    const whole = mapWithSurroundings(halves).roads;
    expect(areasOf(whole).at(50.003, 7.003)).toEqual([0]);
    expect(areasOf(whole).openEdges.size).toBe(0);
    const half = mapWithSurroundings(halves.slice(1)).roads;
    expect(areasOf(half).at(50.001, 7.005)).toEqual([]);
    expect([...areasOf(half).openEdges]).toEqual([0]);
  });

  it('hold what lies within their bent outline, the smaller first; open lines and buildings are none', () => {
    expect(at(8, 8)).toEqual([9]);
    expect(at(5, 8)).toEqual([]);
    expect(at(5, 2)).toEqual([9]);
    expect(at(1.5, 1.5)).toEqual([10, 9]);
    expect(at(-1, 5)).toEqual([]);
  });
});

describe('the driven line', () => {
  const map = mapWithSurroundings([
    { id: 1, nodes: ['0,0', '1,0', '3,0'], tags: { highway: 'residential' } },
    { id: 2, nodes: ['3,0', '3,2'], tags: { highway: 'residential' } },
  ]);

  it('runs in driving direction, without gaps, from the drive’s beginning to its end', () => {
    for (const steps of [
      [1, 2],
      [-2, -1],
    ]) {
      const drive = driveOn(map, steps);
      const segments = drivenSegments(drive, map.roads);
      expect(segments).toHaveLength(3);
      expect(segments[0]?.fromM).toBe(0);
      expect(segments.at(-1)?.toM).toBeCloseTo(drive.lengthM, 6);
      for (const [i, segment] of segments.slice(1).entries()) {
        const before = segments[i];
        expect([segment.fromM, segment.lat1, segment.lon1]).toEqual([
          before?.toM,
          before?.lat2,
          before?.lon2,
        ]);
      }
    }
  });

  it('begins and ends within a way where the drive does', () => {
    const drive = driveOn(map, [1]);
    const [leg] = drive.legs;
    if (leg?.kind !== 'stretch') throw new Error('no stretch');
    const part = {
      ...drive,
      lengthM: 200,
      legs: [{ ...leg, alongFromM: 50, alongToM: 250, fromM: 0, toM: 200 }],
    };
    const segments = drivenSegments(part, map.roads);
    expect(segments.map(({ fromM, toM }) => [Math.round(fromM), Math.round(toM)])).toEqual([
      [0, 50],
      [50, 200],
    ]);
    expect(segments.map(({ node1, node2 }) => [node1 < 0, node2 < 0])).toEqual([
      [true, false],
      [false, true],
    ]);
  });
});
