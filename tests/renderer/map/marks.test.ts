import { describe, expect, it } from 'vitest';
import { markLook } from '../../../renderer/map/marks/mark-element.ts';
import { spreadMarks } from '../../../renderer/map/marks/spread-marks.ts';

describe('marks at one place', () => {
  it('stand apart, the first at its own place', () => {
    const spread = spreadMarks(Array.from({ length: 12 }, () => ({ x: 5, y: 5, size: 26 })));
    expect(spread[0]).toEqual({ x: 5, y: 5, size: 26 });
    spread.forEach((a, i) => {
      for (const b of spread.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(25);
    });
  });

  it('of several sizes do not hide one another either', () => {
    const sizes = [34, 26, 26, 34, 26];
    const spread = spreadMarks(sizes.map((size) => ({ x: 50, y: 50, size })));
    spread.forEach((a, i) => {
      for (const b of spread.slice(i + 1))
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual((a.size + b.size) / 2 - 0.5);
    });
  });

  it('far apart stay where they are', () => {
    const spots = [
      { x: 0, y: 0, size: 26 },
      { x: 100, y: 0, size: 26 },
    ];
    expect(spreadMarks(spots)).toEqual(spots);
  });
});

describe('a mark', () => {
  const far = { zoom: 12, chosen: false };

  it('of care alone is a dot when zoomed out, its flag when near or chosen', () => {
    expect(markLook('care', far).as).toBe('dot');
    expect(markLook('care', { ...far, zoom: 16 }).as).toBe('plate');
    expect(markLook('care', { ...far, chosen: true }).as).toBe('plate');
  });

  it('of what may stop the vehicle is shown whole at every zoom, what bars it the largest', () => {
    for (const level of ['barred', 'tight', 'unknown'] as const)
      expect(markLook(level, far).as).toBe('plate');
    expect(markLook('barred', far).size).toBeGreaterThan(markLook('tight', far).size);
  });
});
