import { describe, expect, it } from 'vitest';
import type { WayRound } from '../../../geo/report/way-round.ts';
import { mapWays } from '../../../renderer/map/ways/shown-ways.ts';

const way = (...path: [number, number][]) => ({ path, findings: [] }) as unknown as WayRound;

describe('the number of a way on the map', () => {
  it('stands at its middle where it is alone', () => {
    const [{ plate, line }] = mapWays([way([0, 0], [0, 1])], [0]) as [ReturnType<typeof mapWays>[0]];
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
    expect(north?.plate.y).toBeLessThan(0.5);
    expect(south?.plate.y).toBeGreaterThan(0.5);
    expect(north?.plate.x).toBeGreaterThan(north?.line[2] ?? 1);
  });

  it('stands somewhere even for a way of one place', () => {
    expect(mapWays([way([0, 0])], [])[0]?.plate).toEqual({ x: 0.5, y: 0.5 });
  });
});
