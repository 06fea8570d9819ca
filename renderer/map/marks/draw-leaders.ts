import { mercatorX, mercatorY } from '../../../geo/earth/mercator.ts';
import type { MapCanvas } from '../canvas/canvas-layer.ts';
import type { Leader } from './mark-layer.ts';

/** Draws a line from each mark that stands aside to its place. */
export function drawLeaders(canvas: MapCanvas, leaders: readonly Leader[], colour: string): void {
  const { ctx, world, offsetX, offsetY } = canvas;
  const x = (lon: number) => mercatorX(lon) * world + offsetX;
  const y = (lat: number) => mercatorY(lat) * world + offsetY;
  ctx.strokeStyle = colour;
  ctx.lineWidth = 1.2;
  ctx.beginPath();
  for (const { place, shown } of leaders) {
    ctx.moveTo(x(place.lon), y(place.lat));
    ctx.lineTo(x(shown.lng), y(shown.lat));
  }
  ctx.stroke();
}
