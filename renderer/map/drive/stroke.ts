import type { MapCanvas } from '../canvas/canvas-layer.ts';

/** x and y in turn, on the unit square. */
export type Line = readonly number[];

interface Pen {
  readonly colour: string;
  /** pixels */
  readonly width: number;
  readonly dash?: readonly number[];
  /** without it round, a dashed line's butt */
  readonly cap?: CanvasLineCap;
}

/** Draws lines in one stroke: where they cross, the colour is not laid twice. */
export function stroke(canvas: MapCanvas, lines: readonly Line[], pen: Pen): void {
  const { ctx } = canvas;
  ctx.beginPath();
  for (const line of lines) trace(canvas, line);
  ctx.strokeStyle = pen.colour;
  ctx.lineWidth = pen.width;
  ctx.lineCap = pen.cap ?? (pen.dash ? 'butt' : 'round');
  ctx.setLineDash([...(pen.dash ?? [])]);
  ctx.stroke();
  ctx.setLineDash([]);
}

/** Positions closer than a pixel to the one before, and segments far off the canvas, are left out. */
function trace({ ctx, world, offsetX, offsetY, width, height }: MapCanvas, line: Line): void {
  let lastX = Number.NaN;
  let lastY = Number.NaN;
  let wasOut = 0;
  for (let i = 0; i < line.length; i += 2) {
    const px = line[i]! * world + offsetX;
    const py = line[i + 1]! * world + offsetY;
    const isEnd = i + 2 >= line.length;
    if (!isEnd && Math.abs(px - lastX) < 1 && Math.abs(py - lastY) < 1) continue;
    const out =
      (px < -50 ? 1 : 0) | (px > width + 50 ? 2 : 0) | (py < -50 ? 4 : 0) | (py > height + 50 ? 8 : 0);
    // both ends beyond one edge: nothing of the segment is on the canvas
    if (Number.isNaN(lastX) || (out & wasOut) !== 0) ctx.moveTo(px, py);
    else ctx.lineTo(px, py);
    lastX = px;
    lastY = py;
    wasOut = out;
  }
}
