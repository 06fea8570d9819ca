import { wayPen } from '../../look/way-pens.ts';
import type { MapCanvas } from '../canvas/canvas-layer.ts';
import type { Palette } from '../canvas/palette.ts';
import { stroke } from '../drive/stroke.ts';
import type { MapWay } from './shown-ways.ts';

/** Widths of a way, pixels: what stands out is as wide as the drive. */
const RAISED = { halo: 11, casing: 7, core: 3 };
const PLAIN = { halo: 8, casing: 4.5, core: 1.8 };

/** The core of each pen, see way-pens.ts. */
const CORES = {
  whole: {},
  dashed: { dash: [9, 5] },
  dotted: { dash: [0.1, 6], cap: 'round' },
} as const;

/** Draws the ways round beside the drive, those that stand out on top. */
export function drawWays(canvas: MapCanvas, ways: readonly MapWay[], palette: Palette): void {
  const order = ways.map((way, index) => ({ ...way, index }));
  for (const way of order.filter(({ raised }) => !raised)) drawWay(canvas, way, palette);
  for (const way of order.filter(({ raised }) => raised)) drawWay(canvas, way, palette);
}

function drawWay(
  canvas: MapCanvas,
  { line, raised, index }: MapWay & { readonly index: number },
  palette: Palette,
): void {
  const px = raised ? RAISED : PLAIN;
  const colour = raised ? palette.ink : palette['ink-soft'];
  stroke(canvas, [line], { colour: palette['paper-raised'], width: px.halo });
  stroke(canvas, [line], { colour, width: px.casing });
  stroke(canvas, [line], { colour: palette['paper-raised'], width: px.core, ...CORES[wayPen(index)] });
}
