import { describe, expect, it } from 'vitest';
import type { WayRound } from '../../../geo/report/way-round.ts';
import { clearPlace } from '../../../renderer/map/ways/clear-place.ts';
import { mapWays } from '../../../renderer/map/ways/shown-ways.ts';

const way = (...path: [number, number][]) => ({ path, findings: [] }) as unknown as WayRound;

describe('the number of a way on the map', () => {
  it('stands at its middle where it is alone', () => {
    const [{ plates, line }] = mapWays([way([0, 0], [0, 1])], [0]) as [ReturnType<typeof mapWays>[0]];
    const [plate] = plates as [(typeof plates)[0]];
    expect(plate.y).toBeCloseTo(line[1]!, 9);
    expect(plate.x).toBeCloseTo((line[0]! + line[2]!) / 2, 2);
  });

  it('stands where no other way runs', () => {
    // both run along the same road at first, then part
    const shared: [number, number][] = [
      [0, 0],
      [0, 3],
    ];
    const [north, south] = mapWays([way(...shared, [1, 4]), way(...shared, [-1, 4])], []);
    expect(north?.plates[0]?.y).toBeLessThan(0.5);
    expect(south?.plates[0]?.y).toBeGreaterThan(0.5);
    expect(north?.plates[0]?.x).toBeGreaterThan(north?.line[2] ?? 1);
  });

  it('stands aside from a mark that is on its place, and where it covers least where all are taken', () => {
    const places = [0, 30, 60].map((x) => ({ x, y: 0 }));
    const mark = (x: number, half: number) => ({ x, y: 0, halfWidth: half, halfHeight: half });
    expect(clearPlace(places, [mark(60, 20)], 14)?.x).toBe(0);
    expect(clearPlace(places, [mark(5, 20)], 14)?.x).toBe(60);
    expect(clearPlace(places, [mark(0, 40), mark(70, 31)], 14)?.x).toBe(30);
    expect(clearPlace([], [], 14)).toBeUndefined();
  });

  it('stands somewhere even for a way of one place', () => {
    expect(mapWays([way([0, 0])], [])[0]?.plates[0]).toEqual({ x: 0.5, y: 0.5 });
  });
});
