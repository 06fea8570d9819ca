import type { AreaKind } from '../../../geo/basemap/features.ts';
import type { Palette } from '../canvas/palette.ts';
import type { Context } from './trace.ts';

const patterns = new Map<string, CanvasPattern | null>();
const PATTERN_PX = 32;

/** Small strokes of the pen for what has no edge of its own; a tile is a whole number of patterns wide, so they join. */
export function patternFor(ctx: Context, kind: AreaKind, palette: Palette): CanvasPattern | undefined {
  if (kind !== 'wood' && kind !== 'wetland' && kind !== 'sand' && kind !== 'heath') return undefined;
  const colour = palette[kind === 'wood' || kind === 'heath' ? 'map-wood-ink' : 'map-water-line'];
  const key = `${kind} ${colour}`;
  let pattern = patterns.get(key);
  if (pattern === undefined) {
    const square = new OffscreenCanvas(PATTERN_PX, PATTERN_PX);
    const pen = square.getContext('2d');
    if (!pen) return undefined;
    pen.strokeStyle = colour;
    pen.lineWidth = 1;
    pen.globalAlpha = kind === 'wood' ? 0.9 : 0.55;
    for (const [x, y] of [
      [7, 9],
      [23, 25],
    ] as const)
      drawSign(pen, kind, x, y);
    pattern = ctx.createPattern(square, 'repeat');
    patterns.set(key, pattern);
  }
  return pattern ?? undefined;
}

function drawSign(
  pen: OffscreenCanvasRenderingContext2D,
  kind: 'wood' | 'wetland' | 'sand' | 'heath',
  x: number,
  y: number,
): void {
  pen.beginPath();
  if (kind === 'wood') {
    pen.arc(x, y, 2.6, Math.PI * 0.9, Math.PI * 2.1);
    pen.moveTo(x, y + 1);
    pen.lineTo(x, y + 4);
  } else if (kind === 'wetland') {
    pen.moveTo(x - 5, y + 0.5);
    pen.lineTo(x + 5, y + 0.5);
    pen.moveTo(x - 2, y - 2.5);
    pen.lineTo(x + 2, y - 2.5);
  } else if (kind === 'heath') {
    pen.moveTo(x - 2, y - 2);
    pen.lineTo(x, y + 1);
    pen.lineTo(x + 2, y - 2);
  } else pen.arc(x, y, 0.6, 0, Math.PI * 2);
  pen.stroke();
}
