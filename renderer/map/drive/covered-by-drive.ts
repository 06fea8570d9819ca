import type { MapCanvas } from '../canvas/canvas-layer.ts';
import type { Taken } from '../labels/place-labels.ts';
import { LINE_PX } from './draw-drive.ts';
import type { DrivePath, PathPart } from './drive-path.ts';

/** From one box to the next. */
const EVERY_PX = 7;

/** What the line covers, as small boxes along it, for texts to keep clear of. */
export function coveredByDrive(canvas: MapCanvas, path: DrivePath): Taken[] {
  return path.parts.flatMap((part) => (part.kind === 'gap' ? [] : coveredByPart(canvas, path, part)));
}

function coveredByPart(canvas: MapCanvas, path: DrivePath, { from, to }: PathPart): Taken[] {
  const { world, offsetX, offsetY } = canvas;
  const taken: Taken[] = [];
  let last: { readonly x: number; readonly y: number } | undefined;
  for (let i = from; i <= to; i++) {
    const here = { x: path.x[i]! * world + offsetX, y: path.y[i]! * world + offsetY };
    const far = last === undefined ? 0 : Math.hypot(here.x - last.x, here.y - last.y);
    if (last !== undefined && far < EVERY_PX) continue;
    const start = last ?? here;
    const count = isOn(canvas, start, here) ? Math.max(1, Math.ceil(far / EVERY_PX)) : 1;
    for (let k = 1; k <= count; k++) {
      const t = k / count;
      taken.push({
        x: start.x + (here.x - start.x) * t,
        y: start.y + (here.y - start.y) * t,
        halfWidth: LINE_PX / 2,
        halfHeight: LINE_PX / 2,
      });
    }
    last = here;
  }
  return taken;
}

interface Px {
  readonly x: number;
  readonly y: number;
}

/** Whether something of the segment may be on the canvas. */
function isOn({ width, height }: MapCanvas, a: Px, b: Px): boolean {
  return (
    Math.max(a.x, b.x) > 0 &&
    Math.min(a.x, b.x) < width &&
    Math.max(a.y, b.y) > 0 &&
    Math.min(a.y, b.y) < height
  );
}
