import type { Palette } from '../canvas/palette.ts';

/** A canvas of the page or of a worker. */
export type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** What the painting of one tile goes by. */
export interface Brush {
  readonly ctx: Context;
  readonly palette: Palette;
  /** pixels per tile unit */
  readonly unit: number;
  /** of 256-pixel tiles */
  readonly zoom: number;
}

/** Lays the outlines of an area down as one path. @param parts see TileLayer */
export function traceAreas(brush: Brush, parts: readonly number[]): void {
  traceParts(brush, parts, () => brush.ctx.closePath());
}

/** Lays lines down as one path. @param parts see TileLayer */
export function traceLines(brush: Brush, parts: readonly number[]): void {
  traceParts(brush, parts, () => {});
}

function traceParts({ ctx, unit }: Brush, parts: readonly number[], end: () => void): void {
  ctx.beginPath();
  let at = 0;
  while (at < parts.length) {
    const count = parts[at++]!;
    let x = parts[at++]!;
    let y = parts[at++]!;
    ctx.moveTo(x * unit, y * unit);
    for (let i = 1; i < count; i++) {
      x += parts[at++]!;
      y += parts[at++]!;
      ctx.lineTo(x * unit, y * unit);
    }
    end();
  }
}
