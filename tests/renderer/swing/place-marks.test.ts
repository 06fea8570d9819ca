import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MARK_PX, placeMarks } from '../../../renderer/swing/drawing/place-marks.ts';
import { stepOnM } from '../../../renderer/swing/state/play.ts';

describe('the numbers of a drawing', () => {
  it('never lie on each other, outside the drawing or on what must stay free', () => {
    const spot = fc.record({ x: fc.integer({ min: 0, max: 400 }), y: fc.integer({ min: 0, max: 300 }) });
    fc.assert(
      fc.property(
        fc.array(spot, { minLength: 1, maxLength: 4 }),
        fc.array(spot, { maxLength: 40 }),
        (places, drawn) => {
          const area = { x: 0, y: 250, widthPx: 180, heightPx: 50 };
          const marks = placeMarks(places, { box: { widthPx: 400, heightPx: 300 }, areas: [area], drawn });
          const placed = marks.flatMap((mark) => mark ?? []);
          for (const [index, mark] of placed.entries()) {
            expect(mark.x - MARK_PX).toBeGreaterThanOrEqual(0);
            expect(mark.y + MARK_PX).toBeLessThanOrEqual(300);
            expect(mark.x < 180 + MARK_PX && mark.y > 250 - MARK_PX).toBe(false);
            for (const other of placed.slice(index + 1))
              expect(Math.hypot(mark.x - other.x, mark.y - other.y)).toBeGreaterThanOrEqual(2 * MARK_PX);
          }
        },
      ),
      { numRuns: 60, seed: 3 },
    );
  });
});

describe('playing in steps', () => {
  it('stands at eight places of the way, and at the touch', () => {
    const stood: number[] = [];
    let m = 0;
    while (m < 8) {
      m = stepOnM(m, 8, 2.4);
      stood.push(m);
    }
    expect(stood).toEqual([1, 2, 2.4, 3, 4, 5, 6, 7, 8]);
  });
});
