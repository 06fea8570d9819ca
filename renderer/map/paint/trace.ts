/** A canvas of the page or of a worker. */
export type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/**
 * Lays the parts of a layer down as one path.
 * @param parts see TileLayer
 * @param unit pixels per tile unit
 */
export function tracePart(ctx: Context, parts: readonly number[], unit: number, closed: boolean): void {
  ctx.beginPath();
  let at = 0;
  while (at < parts.length) {
    const count = parts[at++] as number;
    let x = parts[at++] as number;
    let y = parts[at++] as number;
    ctx.moveTo(x * unit, y * unit);
    for (let i = 1; i < count; i++) {
      x += parts[at++] as number;
      y += parts[at++] as number;
      ctx.lineTo(x * unit, y * unit);
    }
    if (closed) ctx.closePath();
  }
}
