import { type LabelKind, TILE_UNITS, type TileFeatures } from '../../../geo/basemap/features.ts';
import { toRad } from '../../../geo/earth/angles.ts';
import type { MapCanvas } from '../canvas/canvas-layer.ts';
import type { Palette } from '../canvas/palette.ts';

import { placeLabels, type Taken, type Wish } from './place-labels.ts';

interface Look {
  readonly size: number;
  readonly weight: 400 | 700;
  readonly style?: 'italic';
  readonly colour: keyof Palette;
  readonly spacing?: string;
  readonly capitals?: boolean;
  /** drawn on a small plate */
  readonly plate?: boolean;
}

const LOOKS: Readonly<Record<LabelKind, Look>> = {
  city: { size: 17, weight: 700, colour: 'ink', spacing: '1px' },
  town: { size: 15, weight: 700, colour: 'ink', spacing: '0.6px' },
  island: { size: 13, weight: 400, style: 'italic', colour: 'ink-soft', spacing: '2px' },
  village: { size: 13, weight: 400, colour: 'ink' },
  suburb: { size: 11.5, weight: 400, colour: 'ink-soft', capitals: true, spacing: '1px' },
  hamlet: { size: 12, weight: 400, colour: 'ink' },
  locality: { size: 11.5, weight: 400, style: 'italic', colour: 'ink-soft' },
  ref: { size: 11, weight: 700, colour: 'ink', plate: true },
  road: { size: 11.5, weight: 400, colour: 'ink' },
  water: { size: 11.5, weight: 400, style: 'italic', colour: 'ink-soft', spacing: '0.6px' },
  station: { size: 11.5, weight: 400, colour: 'ink-soft' },
  site: { size: 11.5, weight: 400, style: 'italic', colour: 'ink-soft' },
};

interface Text extends Wish {
  readonly text: string;
  readonly look: Look;
}

const widths = new Map<string, number>();
const WIDTHS_MAX = 5000;

/** Draws the texts of the tiles that find room, over all tiles at once. */
export function drawLabels(
  canvas: MapCanvas,
  tiles: Iterable<TileFeatures>,
  palette: Palette,
  taken: readonly Taken[],
): void {
  const { ctx } = canvas;
  const texts: Text[] = [];
  for (const tile of tiles) {
    const side = canvas.world / 2 ** tile.z;
    for (const { say, kind, rank, x, y, angleDeg } of tile.labels) {
      const atX = (tile.x + x / TILE_UNITS) * side + canvas.offsetX;
      const atY = (tile.y + y / TILE_UNITS) * side + canvas.offsetY;
      if (atX < -100 || atX > canvas.width + 100 || atY < -100 || atY > canvas.height + 100) continue;
      const look = LOOKS[kind];
      const text = look.capitals ? say.toLocaleUpperCase() : say;
      texts.push({
        text,
        look,
        say,
        rank,
        x: atX,
        y: atY,
        angleDeg,
        halfWidth: widthOf(ctx, text, look, palette) / 2 + (look.plate ? 4 : 0),
        halfHeight: look.size * 0.6 + (look.plate ? 1 : 0),
        apart: kind === 'ref' ? 220 : 300,
        aside: look.size * 0.6 + 10,
      });
    }
  }
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.lineJoin = 'round';
  for (const text of placeLabels(texts, taken)) drawText(ctx, text, palette);
}

function widthOf(ctx: CanvasRenderingContext2D, text: string, look: Look, palette: Palette): number {
  const key = `${look.weight}${look.style ?? ''}${look.size}${look.spacing ?? ''}${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  setFace(ctx, look, palette);
  const { width } = ctx.measureText(text);
  if (widths.size > WIDTHS_MAX) widths.clear();
  widths.set(key, width);
  return width;
}

/** A face that has come in after the first drawing has other widths. */
export function forgetWidths(): void {
  widths.clear();
}

function setFace(ctx: CanvasRenderingContext2D, look: Look, palette: Palette): void {
  ctx.font = `${look.style ?? 'normal'} ${look.weight} ${look.size}px ${palette.face}`;
  ctx.letterSpacing = look.spacing ?? '0px';
}

function drawText(ctx: CanvasRenderingContext2D, label: Text, palette: Palette): void {
  const { look, text, x, y, angleDeg, halfWidth, halfHeight } = label;
  ctx.save();
  ctx.translate(x, y);
  if (angleDeg !== 0) ctx.rotate(toRad(angleDeg));
  setFace(ctx, look, palette);
  if (look.plate) {
    ctx.fillStyle = palette['paper-raised'];
    ctx.strokeStyle = palette['ink-soft'];
    ctx.lineWidth = 1;
    ctx.beginPath();
    ctx.roundRect(-halfWidth, -halfHeight, halfWidth * 2, halfHeight * 2, 2);
    ctx.fill();
    ctx.stroke();
  } else {
    ctx.strokeStyle = palette['map-land'];
    ctx.lineWidth = 3;
    ctx.globalAlpha = 0.9;
    ctx.strokeText(text, 0, 0.5);
    ctx.globalAlpha = 1;
  }
  ctx.fillStyle = palette[look.colour];
  ctx.fillText(text, 0, 0.5);
  ctx.restore();
}
