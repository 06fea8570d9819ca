import type { RoadKind, TileLayer } from '../../../geo/basemap/features.ts';
import { type Brush, traceLines } from './trace.ts';
import { casingPx, roadWidthPx } from './widths.ts';

/** Narrower than this a road is one line of the pen; wider it has two edges and a surface. */
const EDGES_FROM_PX = 2.6;
/** A main road has its colour between two fine edges even then. */
const FINE_EDGE_PX = 0.6;
const MAIN_LEAST_PX = 1.5;
/** Farther out the tracks of a station would be one dark braid. */
const SLEEPERS_FROM_ZOOM = 16;

/** A layer of roads or rails, as it is told from areas and other lines. */
interface RoadLayer extends TileLayer {
  readonly kind: RoadKind;
}

/**
 * Paints roads and rails level by level, tunnels first and bridges last; within a level all edges before all
 * surfaces, so that junctions are open.
 * @param layers lowest first
 */
export function paintRoads(brush: Brush, layers: readonly RoadLayer[]): void {
  const levels = [...new Set(layers.map(({ level }) => level))].sort((a, b) => a - b);
  for (const level of levels) {
    const here = layers.filter((layer) => layer.level === level);
    for (const layer of here) paintEdges(brush, layer);
    for (const layer of here) paintSurface(brush, layer);
  }
  brush.ctx.setLineDash([]);
  brush.ctx.globalAlpha = 1;
}

function paintEdges(brush: Brush, { kind, level, parts }: RoadLayer): void {
  const { ctx, palette, zoom } = brush;
  const width = surfacePx(kind, zoom);
  const bridge = level > 0;
  const slight = isSlight(kind);
  if (!bridge && (slight || width < EDGES_FROM_PX) && !isMain(kind)) return;
  traceLines(brush, parts);
  const surface = slight ? Math.max(4, width + 3) : width;
  ctx.lineCap = bridge || level < 0 ? 'butt' : 'round';
  ctx.setLineDash(level < 0 ? [4, 3] : []);
  ctx.strokeStyle =
    palette[bridge || isMain(kind) ? 'map-casing-main' : isMinor(kind) ? 'map-casing-minor' : 'map-casing'];
  // a bridge's parapets stand out beyond the edges of its road
  const edge = width < EDGES_FROM_PX ? FINE_EDGE_PX : casingPx(zoom);
  ctx.lineWidth = surface + (edge + (bridge ? 1 : 0)) * 2;
  ctx.stroke();
  ctx.setLineDash([]);
  if (bridge && slight) {
    ctx.strokeStyle = palette['map-land'];
    ctx.lineWidth = surface;
    ctx.stroke();
  }
}

function paintSurface(brush: Brush, { kind, level, parts }: RoadLayer): void {
  const { ctx, zoom } = brush;
  const width = surfacePx(kind, zoom);
  traceLines(brush, parts);
  ctx.globalAlpha = level < 0 ? 0.55 : 1;
  if (kind === 'rail' || kind === 'railMinor') paintRail(brush, width);
  else if (kind === 'path' || kind === 'track') paintPath(brush, kind, width);
  else paintCarriageway(brush, kind, width);
  ctx.setLineDash([]);
  ctx.globalAlpha = 1;
}

function paintPath({ ctx, palette }: Brush, kind: 'path' | 'track', width: number): void {
  ctx.strokeStyle = palette['map-path'];
  ctx.lineWidth = width;
  ctx.lineCap = 'butt';
  ctx.setLineDash(kind === 'track' ? [6, 2.5] : [2.5, 2.5]);
  ctx.stroke();
}

function paintCarriageway({ ctx, palette }: Brush, kind: RoadKind, width: number): void {
  const thin = width < EDGES_FROM_PX && !isMain(kind);
  ctx.strokeStyle = palette[thin ? 'map-road-thin' : surfaceOf(kind)];
  ctx.lineWidth = thin ? Math.max(0.6, width * 0.8) : width;
  ctx.lineCap = 'round';
  ctx.stroke();
  if (thin || kind !== 'motorway' || width <= 3.4) return;
  ctx.strokeStyle = palette['map-casing-main'];
  ctx.lineWidth = 0.8;
  ctx.stroke();
}

/** A line with sleepers across it. */
function paintRail({ ctx, palette, zoom }: Brush, width: number): void {
  ctx.strokeStyle = palette['map-rail'];
  ctx.lineCap = 'butt';
  ctx.lineWidth = width;
  ctx.stroke();
  if (zoom < SLEEPERS_FROM_ZOOM) return;
  ctx.lineWidth = width * 2 + 2.6;
  ctx.setLineDash([1, zoom < 15 ? 6 : 8]);
  ctx.stroke();
}

/** How wide the surface is drawn, pixels. */
function surfacePx(kind: RoadKind, zoom: number): number {
  const width = roadWidthPx(kind, zoom);
  return isMain(kind) ? Math.max(MAIN_LEAST_PX, width) : width;
}

function surfaceOf(kind: RoadKind): 'map-road' | 'map-road-main' | 'map-road-trunk' | 'map-paved' {
  if (kind === 'motorway' || kind === 'trunk') return 'map-road-trunk';
  if (kind === 'primary' || kind === 'secondary') return 'map-road-main';
  return kind === 'pedestrian' ? 'map-paved' : 'map-road';
}

function isMain(kind: RoadKind): boolean {
  return kind === 'motorway' || kind === 'trunk' || kind === 'primary';
}

/** Where they lie dense, their edges must not outweigh the roads one drives through on. */
function isMinor(kind: RoadKind): boolean {
  return kind === 'minor' || kind === 'service' || kind === 'pedestrian';
}

function isSlight(kind: RoadKind): boolean {
  return kind === 'path' || kind === 'track' || kind === 'rail' || kind === 'railMinor';
}
