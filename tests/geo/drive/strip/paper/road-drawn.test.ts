import { describe, expect, it } from 'vitest';
import {
  halfWidthAt,
  halfWidthPx,
  pieceAt,
  piecesByKind,
  visiblePieces,
} from '../../../../../geo/drive/strip/paper/road-drawn.ts';

describe('the road on the paper', () => {
  it('finds the piece that holds a place', () => {
    const pieces = [0, 10, 25].map((fromM, i) => ({ fromM, toM: [10, 25, 40][i] ?? 0 }));
    expect(pieceAt(pieces, 3)?.fromM).toBe(0);
    expect(pieceAt(pieces, 12)?.fromM).toBe(10);
    expect(pieceAt(pieces, 40)?.fromM).toBe(25);
    expect(pieceAt([], 3)).toBeUndefined();
  });

  it('never lets a pinch vanish, however short on the paper', () => {
    const widths = [7, 7, 2.5, 7, 7];
    const pieces = widths.map((widthM, i) => ({ fromM: i, toM: i + 1, widthM }));
    const long = { fromM: 5, toM: 500, widthM: 7 };
    for (const leastM of [0.5, 2, 3, 4, 100]) {
      const drawn = visiblePieces([...pieces, long], leastM);
      expect(Math.min(...drawn.map(({ widthM }) => widthM))).toBe(2.5);
      expect(drawn.at(-1)).toMatchObject({ toM: 500, widthM: 7 });
      drawn.slice(1).forEach(({ fromM }, i) => {
        expect(fromM).toBe(drawn[i]?.toM);
      });
    }
  });

  it('draws a lane narrower than a trunk road, and something where the width is not told', () => {
    expect(halfWidthPx(3)).toBeLessThan(halfWidthPx(7.3));
    expect(halfWidthAt([], 12)).toBeGreaterThan(0);
  });

  it('joins the edges of consecutive pieces of one kind, a bridge apart', () => {
    const kinds = ['road', 'road', 'bridge', 'road'] as const;
    const pieces = kinds.map((kind, i) => ({ fromM: i, toM: i + 1, widthM: 5, kind }));
    expect(piecesByKind(pieces).map((group) => group.length)).toEqual([2, 1, 1]);
  });
});
