import {
  AREA_KINDS,
  type AreaKind,
  type DrawKind,
  LINE_KINDS,
  type LineKind,
  ROAD_KINDS,
  TILE_PX,
  TILE_UNITS,
  type TileFeatures,
  type TileLayer,
} from '../../../geo/basemap/features.ts';
import type { Palette } from '../palette.ts';
import { paintRoads } from './paint-roads.ts';
import { type Context, tracePart } from './trace.ts';

/** Paints one tile, whole, at the given number of device pixels to the pixel. */
export function paintTile(ctx: Context, tile: TileFeatures, palette: Palette, density: number): void {
  const zoom = tile.z + 1;
  const unit = TILE_PX / TILE_UNITS;
  ctx.setTransform(density, 0, 0, density, 0, 0);
  ctx.fillStyle = palette[tile.sea ? 'map-sea' : 'map-land'];
  ctx.fillRect(0, 0, TILE_PX, TILE_PX);
  ctx.lineJoin = 'round';
  if (tile.sea) {
    for (const layer of tile.layers) if (layer.kind === 'coastline') paintShore(ctx, layer, palette, unit);
  }
  const areas = (which: (kind: AreaKind) => boolean) => {
    for (const layer of tile.layers)
      if (isArea(layer.kind) && which(layer.kind)) paintArea(ctx, layer, layer.kind, palette, unit, zoom);
  };
  const lines = (which: (kind: LineKind) => boolean) => {
    for (const layer of tile.layers)
      if (isLine(layer.kind) && which(layer.kind)) paintLine(ctx, layer, layer.kind, palette, unit, zoom);
  };
  // a river's own line runs through its area too, and must not be seen there
  areas((kind) => kind !== 'water' && kind !== 'building');
  lines(isStream);
  areas((kind) => kind === 'water' || kind === 'building');
  lines((kind) => !isStream(kind));
  paintRoads(
    ctx,
    tile.layers.filter(({ kind }) => (ROAD_KINDS as readonly DrawKind[]).includes(kind)),
    palette,
    unit,
    zoom,
  );
}

function isStream(kind: LineKind): boolean {
  return kind === 'river' || kind === 'stream';
}

function isArea(kind: DrawKind): kind is AreaKind {
  return (AREA_KINDS as readonly DrawKind[]).includes(kind);
}

function isLine(kind: DrawKind): kind is LineKind {
  return (LINE_KINDS as readonly DrawKind[]).includes(kind);
}

/** Lines along the shore, out into the water, in the manner of engraved charts. */
function paintShore(ctx: Context, layer: TileLayer, palette: Palette, unit: number): void {
  tracePart(ctx, layer.parts, unit, false);
  ctx.strokeStyle = palette['map-water-line'];
  for (const [width, alpha] of [
    [17, 0.25],
    [9, 0.35],
  ] as const) {
    ctx.globalAlpha = alpha;
    ctx.lineWidth = width;
    ctx.stroke();
    ctx.globalAlpha = 1;
    ctx.strokeStyle = palette['map-sea'];
    ctx.lineWidth = width - 1.4;
    ctx.stroke();
    ctx.strokeStyle = palette['map-water-line'];
  }
}

function paintArea(
  ctx: Context,
  layer: TileLayer,
  kind: AreaKind,
  palette: Palette,
  unit: number,
  zoom: number,
): void {
  tracePart(ctx, layer.parts, unit, true);
  ctx.fillStyle = palette[`map-${kind}`];
  ctx.fill();
  if (kind === 'water') strokeEdge(ctx, palette['map-water-line'], 0.9);
  if (kind === 'building' && zoom >= 16) strokeEdge(ctx, palette['map-building-line'], 0.7);
  const pattern = zoom >= 12 ? patternFor(ctx, kind, palette) : undefined;
  if (pattern) {
    ctx.fillStyle = pattern;
    ctx.fill();
  }
}

function strokeEdge(ctx: Context, colour: string, width: number): void {
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.setLineDash([]);
  ctx.stroke();
}

function paintLine(
  ctx: Context,
  layer: TileLayer,
  kind: LineKind,
  palette: Palette,
  unit: number,
  zoom: number,
): void {
  const { colour, width, dash, cap } = lineLook(kind, palette, zoom);
  tracePart(ctx, layer.parts, unit, false);
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.lineCap = cap ?? 'round';
  ctx.setLineDash(dash ?? []);
  ctx.stroke();
  ctx.setLineDash([]);
  if (kind === 'river' && zoom >= 13) {
    ctx.strokeStyle = palette['map-water'];
    ctx.lineWidth = width - 1.6;
    ctx.stroke();
  }
}

interface LineLook {
  readonly colour: string;
  readonly width: number;
  readonly dash?: number[];
  readonly cap?: CanvasLineCap;
}

function lineLook(kind: LineKind, palette: Palette, zoom: number): LineLook {
  const near = 1.35 ** Math.max(0, zoom - 13);
  switch (kind) {
    case 'coastline':
      return { colour: palette['map-water-line'], width: zoom < 10 ? 0.9 : 1.3 };
    case 'river':
      return { colour: palette['map-water-line'], width: zoom < 13 ? 1.2 : 3.2 * near };
    case 'stream':
      return { colour: palette['map-water-line'], width: 0.8 * near };
    case 'ferry':
      return { colour: palette['map-water-line'], width: 1.5, dash: [7, 5], cap: 'butt' };
    case 'wall':
      return { colour: palette['map-building-line'], width: 0.8 };
    case 'treeRow':
      return { colour: palette['map-wood-ink'], width: 2.4 * near, dash: [0.1, 4 * near], cap: 'round' };
    case 'pier':
      return { colour: palette['map-building-line'], width: 2 * near, cap: 'butt' };
  }
}

const patterns = new Map<string, CanvasPattern | null>();
const PATTERN_PX = 32;

/** Small strokes of the pen for what has no edge of its own; a tile is a whole number of patterns wide, so they join. */
function patternFor(ctx: Context, kind: AreaKind, palette: Palette): CanvasPattern | undefined {
  if (kind !== 'wood' && kind !== 'wetland' && kind !== 'sand' && kind !== 'heath') return undefined;
  const colour = palette[kind === 'wood' || kind === 'heath' ? 'map-wood-ink' : 'map-water-line'];
  const key = `${kind} ${colour}`;
  let pattern = patterns.get(key);
  if (pattern === undefined) {
    const sheet = new OffscreenCanvas(PATTERN_PX, PATTERN_PX);
    const pen = sheet.getContext('2d');
    if (!pen) return undefined;
    pen.strokeStyle = colour;
    pen.lineWidth = 1;
    pen.globalAlpha = kind === 'wood' ? 0.9 : 0.55;
    for (const [x, y] of [
      [7, 9],
      [23, 25],
    ] as const)
      drawSign(pen, kind, x, y);
    pattern = ctx.createPattern(sheet, 'repeat');
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
