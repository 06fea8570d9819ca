import { describe, expect, it } from 'vitest';
import { wheelLevels } from '../../../renderer/map/wheel-zoom.ts';

const run = (...steps: (readonly [deltaY: number, deltaMode?: number])[]) => {
  const levels = wheelLevels();
  return steps.map(([deltaY, deltaMode = 0]) => levels(deltaY, deltaMode));
};

describe('the wheel over the map', () => {
  it('zooms one level a notch, however many pixels, lines or pages a notch counts', () => {
    expect(run([-120], [-120], [120])).toEqual([1, 1, -1]);
    expect(run([-53], [100], [3, 1], [-1, 2])).toEqual([1, -1, -1, 1]);
  });

  it('adds up what a finger slides to one level at a time', () => {
    const levels = run(...Array.from({ length: 20 }, () => [-10] as const));
    expect(levels.filter((level) => level === 1)).toHaveLength(2);
    expect(levels.filter((level) => level === -1)).toHaveLength(0);
  });

  it('begins anew where the finger turns round', () => {
    expect(run([-30], [-30], [30], [30], [30])).toEqual([0, 0, 0, 0, -1]);
  });
});
