import type { MapCanvas } from '../canvas/canvas-layer.ts';
import type { Palette } from '../canvas/palette.ts';
import type { DrivePath, PathPart } from './drive-path.ts';

/** From one arrow head to the next. */
const EVERY_PX = 84;

/** Draws arrow heads along the line at even distances, the way it is driven: wider than it, so that they are seen from afar. */
export function drawDirection(canvas: MapCanvas, path: DrivePath, palette: Palette): void {
  const { ctx } = canvas;
  ctx.beginPath();
  for (const part of path.parts) if (part.kind !== 'gap') headsAlong(canvas, path, part);
  ctx.strokeStyle = palette['paper-raised'];
  ctx.lineWidth = 3;
  ctx.stroke();
  ctx.fillStyle = palette.drive;
  ctx.fill();
}

function headsAlong(canvas: MapCanvas, path: DrivePath, { from, to }: PathPart): void {
  const { world, offsetX, offsetY } = canvas;
  let walked = EVERY_PX / 2;
  for (let i = from + 1; i <= to; i++) {
    const x = path.x[i - 1]! * world + offsetX;
    const y = path.y[i - 1]! * world + offsetY;
    const dx = path.x[i]! * world + offsetX - x;
    const dy = path.y[i]! * world + offsetY - y;
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    const first = EVERY_PX - walked;
    walked += length;
    if (walked < EVERY_PX) continue;
    walked %= EVERY_PX;
    headsOn(canvas, { x, y, ux: dx / length, uy: dy / length, length }, first);
  }
}

/** A straight piece of the line: its beginning, its direction as a unit, its length. Pixels. */
interface Piece {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly length: number;
}

function headsOn(canvas: MapCanvas, { x, y, ux, uy, length }: Piece, first: number): void {
  const { width, height } = canvas;
  const [endX, endY] = [x + ux * length, y + uy * length];
  // a long segment off the canvas has no heads to draw
  if (Math.max(x, endX) < 0 || Math.min(x, endX) > width) return;
  if (Math.max(y, endY) < 0 || Math.min(y, endY) > height) return;
  for (let at = first; at <= length; at += EVERY_PX) {
    const [tipX, tipY] = [x + ux * at, y + uy * at];
    if (tipX >= 0 && tipX <= width && tipY >= 0 && tipY <= height) head(canvas.ctx, tipX, tipY, ux, uy);
  }
}

function head(ctx: CanvasRenderingContext2D, x: number, y: number, ux: number, uy: number): void {
  ctx.moveTo(x + ux * 8, y + uy * 8);
  ctx.lineTo(x - ux * 5 - uy * 6.5, y - uy * 5 + ux * 6.5);
  ctx.lineTo(x - ux * 2, y - uy * 2);
  ctx.lineTo(x - ux * 5 + uy * 6.5, y - uy * 5 - ux * 6.5);
  ctx.closePath();
}
