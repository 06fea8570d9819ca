import { describe, expect, it } from 'vitest';
import { besideLine, growingPath, sideOf } from '../../../renderer/swing/drawing/paths.ts';
import { centredOn, drawn, scaleBarM, scaleToFit } from '../../../renderer/swing/drawing/projection.ts';

const at = (xM: number, yM: number) => ({ xM, yM });

describe('the drawing', () => {
  it('shows the whole scene at one scale, what is ahead to the right and what is left up', () => {
    const box = { widthPx: 400, heightPx: 300 };
    const pxPerM = scaleToFit({ from: at(-5, -2), to: at(5, 8) }, box, 10);
    expect(pxPerM).toBe(28);
    const projection = centredOn(at(0, 3), pxPerM, box);
    expect(drawn(projection, at(0, 3))).toEqual({ x: 200, y: 150 });
    expect(drawn(projection, at(1, 4))).toEqual({ x: 228, y: 122 });
  });

  it('has a scale bar of a round length', () => {
    expect(scaleBarM(40, 170)).toBe(2);
    expect(scaleBarM(300, 170)).toBe(0.5);
  });

  it('lays a wall behind its line, and mitres it at a corner', () => {
    const line = [at(0, 0), at(4, 0), at(4, 4)];
    expect(besideLine(line, 1)[1]).toEqual({ xM: 3, yM: 1 });
    expect(sideOf(line, at(1, 1))).toBe(1);
    expect(sideOf(line, at(1, -1))).toBe(-1);
  });

  it('draws a trace as far as it has been driven', () => {
    const path = growingPath([at(0, 0), at(1, 0), at(2, 0)]);
    expect(path.upTo(0)).toBe('M0.000 0.000');
    expect(path.upTo(1)).toBe('M0.000 0.000L1.000 0.000');
    expect(path.upTo(9)).toBe(path.whole);
  });
});
