import {
  AREA_KINDS,
  type AreaKind,
  type DrawKind,
  LINE_KINDS,
  type LineKind,
  ROAD_KINDS,
  type RoadKind,
  TILE_PX,
  TILE_UNITS,
  type TileFeatures,
  type TileLayer,
} from '../../../geo/basemap/features.ts';
import type { Palette } from '../canvas/palette.ts';
import { paintRoads } from './paint-roads.ts';
import { patternFor } from './patterns.ts';
import { type Brush, type Context, traceAreas, traceLines } from './trace.ts';

/** Paints one tile, whole, at the given number of device pixels to the pixel. */
export function paintTile(ctx: Context, tile: TileFeatures, palette: Palette, density: number): void {
  const brush: Brush = { ctx, palette, unit: TILE_PX / TILE_UNITS, zoom: tile.z + 1 };
  ctx.setTransform(density, 0, 0, density, 0, 0);
  ctx.fillStyle = palette[tile.sea ? 'map-sea' : 'map-land'];
  ctx.fillRect(0, 0, TILE_PX, TILE_PX);
  ctx.lineJoin = 'round';
  if (tile.sea) {
    for (const layer of tile.layers) if (layer.kind === 'coastline') paintShore(brush, layer);
  }
  const areas = (which: (kind: AreaKind) => boolean) => {
    for (const layer of tile.layers) if (isArea(layer) && which(layer.kind)) paintArea(brush, layer);
  };
  const lines = (which: (kind: LineKind) => boolean) => {
    for (const layer of tile.layers) if (isLine(layer) && which(layer.kind)) paintLine(brush, layer);
  };
  // a river's own line runs through its area too, and must not be seen there
  areas((kind) => kind !== 'water' && kind !== 'building');
  lines(isStream);
  areas((kind) => kind === 'water' || kind === 'building');
  lines((kind) => !isStream(kind));
  paintRoads(brush, tile.layers.filter(isRoad));
}

function isStream(kind: LineKind): boolean {
  return kind === 'river' || kind === 'stream';
}

type Of<K extends DrawKind> = TileLayer & { readonly kind: K };

function isArea(layer: TileLayer): layer is Of<AreaKind> {
  return AREAS.has(layer.kind);
}

function isLine(layer: TileLayer): layer is Of<LineKind> {
  return LINES.has(layer.kind);
}

function isRoad(layer: TileLayer): layer is Of<RoadKind> {
  return ROADS.has(layer.kind);
}

const AREAS: ReadonlySet<DrawKind> = new Set(AREA_KINDS);
const LINES: ReadonlySet<DrawKind> = new Set(LINE_KINDS);
const ROADS: ReadonlySet<DrawKind> = new Set(ROAD_KINDS);

/** Lines along the shore, out into the water, in the manner of engraved charts. */
function paintShore(brush: Brush, layer: TileLayer): void {
  const { ctx, palette } = brush;
  traceLines(brush, layer.parts);
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

function paintArea(brush: Brush, { kind, parts }: Of<AreaKind>): void {
  const { ctx, palette, zoom } = brush;
  traceAreas(brush, parts);
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

function paintLine(brush: Brush, { kind, parts }: Of<LineKind>): void {
  const { ctx, palette, zoom } = brush;
  const { colour, width, dash, cap } = lineLook(kind, palette, zoom);
  traceLines(brush, parts);
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
