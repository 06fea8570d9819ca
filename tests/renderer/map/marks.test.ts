import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupMarks } from '../../../renderer/map/marks/group-marks.ts';
import { markLook, targetPx } from '../../../renderer/map/marks/mark-element.ts';

const spot = (x: number, y = 0, size = 26, alone = false) => ({ x, y, size, alone });

describe('marks that would hide each other', () => {
  it('are drawn as the first, the gravest, at its own place', () => {
    const [barred, tight, apart] = [spot(100, 0, 42), spot(110), spot(300)];
    expect(groupMarks([barred, tight, apart])).toEqual([[barred, tight], [apart]]);
  });

  it('leave the opened one by itself', () => {
    const [barred, opened] = [spot(100, 0, 42), spot(100, 0, 26, true)];
    expect(groupMarks([barred, opened])).toEqual([[barred], [opened]]);
  });

  it('are each in one group, and no two groups hide each other', () => {
    const marks = fc.array(
      fc.record({
        x: fc.integer({ min: -400, max: 400 }),
        y: fc.integer({ min: -400, max: 400 }),
        size: fc.constantFrom(10, 22, 26, 42),
        alone: fc.constant(false),
      }),
    );
    fc.assert(
      fc.property(marks, (all) => {
        const groups = groupMarks(all);
        expect(groups.flat()).toHaveLength(all.length);
        expect(new Set(groups.flat())).toEqual(new Set(all));
        groups.forEach(([a], i) => {
          for (const [b] of groups.slice(i + 1))
            expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(((a.size + b.size) / 2) * 0.75);
        });
      }),
    );
  });
});

describe('a mark', () => {
  const far = { zoom: 12, chosen: false };

  it('of care alone is a small dot when zoomed out, its flag when near or chosen', () => {
    expect(markLook('care', far)).toMatchObject({ as: 'dot', size: 10 });
    expect(markLook('care', { ...far, zoom: 16 }).as).toBe('plate');
    expect(markLook('care', { ...far, chosen: true }).as).toBe('plate');
  });

  it('of what may stop the vehicle is shown whole at every zoom, what bars it by far the largest', () => {
    for (const level of ['barred', 'tight', 'unknown'] as const)
      expect(markLook(level, far).as).toBe('plate');
    expect(markLook('barred', far).size).toBeGreaterThanOrEqual(1.5 * markLook('tight', far).size);
  });

  it('is taken hold of by no less than a finger’s room', () => {
    for (const level of ['barred', 'tight', 'unknown', 'care'] as const)
      for (const zoom of [9, 17])
        expect(targetPx(markLook(level, { zoom, chosen: false }))).toBeGreaterThanOrEqual(24);
  });
});
