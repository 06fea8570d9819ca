import type { RoadKind, TileLayer } from '../../../geo/basemap/features.ts';
import type { Palette } from '../palette.ts';
import { type Context, tracePart } from './trace.ts';
import { casingPx, roadWidthPx } from './widths.ts';

/** Narrower than this a road is one line of the pen; wider it has two edges and a surface. */
const EDGES_FROM_PX = 2.6;

/**
 * Paints roads and rails level by level, tunnels first and bridges last; within a level all edges before all
 * surfaces, so that junctions are open.
 * @param layers of roads only, lowest first
 */
export function paintRoads(
  ctx: Context,
  layers: readonly TileLayer[],
  palette: Palette,
  unit: number,
  zoom: number,
): void {
  const levels = [...new Set(layers.map(({ level }) => level))].sort((a, b) => a - b);
  for (const level of levels) {
    const here = layers.filter((layer) => layer.level === level);
    for (const layer of here) paintEdges(ctx, layer, palette, unit, zoom);
    for (const layer of here) paintSurface(ctx, layer, palette, unit, zoom);
  }
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
}

function paintEdges(ctx: Context, layer: TileLayer, palette: Palette, unit: number, zoom: number): void {
  const kind = layer.kind as RoadKind;
  const width = roadWidthPx(kind, zoom);
  const bridge = layer.level > 0;
  const slight = isSlight(kind);
  if (!bridge && (slight || width < EDGES_FROM_PX)) return;
  tracePart(ctx, layer.parts, unit, false);
  const surface = slight ? Math.max(4, width + 3) : width;
  ctx.lineCap = bridge || layer.level < 0 ? 'butt' : 'round';
  ctx.setLineDash(layer.level < 0 ? [4, 3] : []);
  ctx.strokeStyle = palette[bridge || isMain(kind) ? 'map-casing-main' : 'map-casing'];
  // a bridge's parapets stand out beyond the edges of its road
  ctx.lineWidth = surface + (casingPx(zoom) + (bridge ? 1 : 0)) * 2;
  ctx.stroke();
  ctx.setLineDash([]);
  if (bridge && slight) {
    ctx.strokeStyle = palette['map-land'];
    ctx.lineWidth = surface;
    ctx.stroke();
  }
}

function paintSurface(ctx: Context, layer: TileLayer, palette: Palette, unit: number, zoom: number): void {
  const kind = layer.kind as RoadKind;
  const width = roadWidthPx(kind, zoom);
  tracePart(ctx, layer.parts, unit, false);
  ctx.globalAlpha = layer.level < 0 ? 0.55 : 1;
  if (kind === 'rail' || kind === 'railMinor') paintRail(ctx, width, palette, zoom);
  else if (kind === 'path' || kind === 'track') {
    ctx.strokeStyle = palette['map-path'];
    ctx.lineWidth = width;
    ctx.lineCap = 'butt';
    ctx.setLineDash(kind === 'track' ? [6, 2.5] : [2.5, 2.5]);
    ctx.stroke();
  } else if (width < EDGES_FROM_PX) {
    ctx.strokeStyle = palette[isMain(kind) ? 'map-casing-main' : 'map-casing'];
    ctx.lineWidth = Math.max(0.6, width * 0.8);
    ctx.lineCap = 'round';
    ctx.stroke();
  } else {
    ctx.strokeStyle = palette[surfaceOf(kind)];
    ctx.lineWidth = width;
    ctx.lineCap = 'round';
    ctx.stroke();
    if (kind === 'motorway' && width > 3.4) {
      ctx.strokeStyle = palette['map-casing-main'];
      ctx.lineWidth = 0.8;
      ctx.stroke();
    }
  }
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
}

/** A line with sleepers across it. */
function paintRail(ctx: Context, width: number, palette: Palette, zoom: number): void {
  ctx.strokeStyle = palette['map-rail'];
  ctx.lineCap = 'butt';
  ctx.lineWidth = width;
  ctx.stroke();
  if (zoom < 12) return;
  ctx.lineWidth = width * 2 + 2.6;
  ctx.setLineDash([1, zoom < 15 ? 6 : 8]);
  ctx.stroke();
}

function surfaceOf(kind: RoadKind): 'map-road' | 'map-road-main' | 'map-road-trunk' | 'map-paved' {
  if (kind === 'motorway' || kind === 'trunk') return 'map-road-trunk';
  if (kind === 'primary' || kind === 'secondary') return 'map-road-main';
  return kind === 'pedestrian' ? 'map-paved' : 'map-road';
}

function isMain(kind: RoadKind): boolean {
  return kind === 'motorway' || kind === 'trunk' || kind === 'primary';
}

function isSlight(kind: RoadKind): boolean {
  return kind === 'path' || kind === 'track' || kind === 'rail' || kind === 'railMinor';
}
