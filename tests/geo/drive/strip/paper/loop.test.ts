import { describe, expect, it } from 'vitest';
import { loopMarks, loopOf } from '../../../../../geo/drive/strip/paper/loop.ts';

const between = (from: number, to: number) => loopOf({ leaves: { x: 80, y: from }, meets: { x: 84, y: to } });

describe('a way beside the ribbon', () => {
  it('leaves it where the drive is left, and meets it where the drive is met', () => {
    const { path, topY, bottomY } = between(100, 500);
    expect(path).toMatch(/^M80\.0 100\.0C.* 84\.0 500\.0$/);
    expect([topY, bottomY]).toEqual([126, 474]);
  });

  it('has room for its label and a mark however short the stretch', () => {
    const { topY, bottomY, middleY } = between(300, 304);
    expect(bottomY - topY).toBeGreaterThanOrEqual(56);
    expect(middleY).toBe(302);
  });

  it('has its marks where they belong, clear of the label and of each other, the gravest first', () => {
    const loop = between(0, 600);
    const marks = loopMarks(loop, [0, 0.5, 1, 0.01]);
    expect(marks.map(({ index }) => index)).toEqual([0, 1, 2]);
    expect(marks[0]?.y).toBe(loop.topY);
    expect(marks[2]?.y).toBe(loop.bottomY);
    expect(Math.abs((marks[1]?.y ?? 0) - loop.middleY)).toBeGreaterThanOrEqual(30);
  });
});
