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
    const count = parts[at++]!;
    let x = parts[at++]!;
    let y = parts[at++]!;
    ctx.moveTo(x * unit, y * unit);
    for (let i = 1; i < count; i++) {
      x += parts[at++]!;
      y += parts[at++]!;
      ctx.lineTo(x * unit, y * unit);
    }
    if (closed) ctx.closePath();
  }
}
