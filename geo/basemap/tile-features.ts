import { clipLine, clipRing, type Flat } from './clip.ts';
import { DRAW_KINDS, TILE_PX, TILE_UNITS, type TileFeatures, type TileLayer } from './features.ts';
import { type BaseMap, type Drawn, onShelf } from './prepare.ts';
import { tileLabels } from './tile-labels.ts';
import { weighLine } from './weigh-line.ts';

/** Drawn beyond the edge, tile units, so that wide lines of one tile end outside it. */
const LINE_MARGIN = 320;
const AREA_MARGIN = 32;
/** A line may stray by this much from the map's, pixels. */
const STRAY_PX = 0.5;
/** An area must be this large to be seen, pixels. */
const AREA_MIN_PX = 2.5;
/** Up to this zoom (of 256-pixel tiles) bridges and tunnels are drawn as roads like others. */
const LEVEL_FROM_ZOOM = 13;
/** Up to this zoom lines are drawn on half pixels and what falls on the same ones is drawn once. */
const COARSE_TO_ZOOM = 11;
const COARSE_UNITS = TILE_UNITS / TILE_PX / 2;

/**
 * What is drawn of one tile: simplified for its zoom, clipped to the square with a margin, in whole tile units.
 * The same map and tile always give the same answer. A tile where nothing lies is empty.
 * @param z zoom of 512-pixel tiles, x from 180° W, y from 85.05° N
 */
export function tileFeatures(map: BaseMap, z: number, x: number, y: number): TileFeatures {
  const side = 2 ** -z;
  const scale = TILE_UNITS / side;
  const zoom = z + 1;
  const margin = LINE_MARGIN / scale;
  const box = [
    x * side - margin,
    y * side - margin,
    (x + 1) * side + margin,
    (y + 1) * side + margin,
  ] as const;
  const cut: Cut = {
    map,
    scale,
    originX: x * side,
    originY: y * side,
    tolerance: (STRAY_PX * (side / TILE_PX)) ** 2,
    step: zoom <= COARSE_TO_ZOOM ? COARSE_UNITS : 1,
    seen: new Set(),
  };
  const layers = new Map<number, number[]>();
  for (const { minZoom, shelf } of map.shelves) {
    if (minZoom > zoom) break;
    for (const drawn of onShelf(shelf, box)) {
      const level = zoom < LEVEL_FROM_ZOOM ? 0 : drawn.level;
      const key = (level + 1) * 64 + DRAW_KINDS.indexOf(drawn.kind);
      const parts = layers.get(key) ?? [];
      layers.set(key, parts);
      if (drawn.area) cutArea(drawn, cut, parts);
      else cutLine(drawn, cut, key, parts);
    }
  }
  return {
    z,
    x,
    y,
    sea: map.sea !== undefined && meets(map.sea, box),
    layers: [...layers]
      .filter(([, parts]) => parts.length > 0)
      .sort(([a], [b]) => a - b)
      .map(([key, parts]) => toLayer(key, parts)),
    labels: tileLabels(map, z, x, y),
  };
}

function meets(a: NonNullable<BaseMap['sea']>, b: typeof a): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}

function toLayer(key: number, parts: number[]): TileLayer {
  return { kind: DRAW_KINDS[key % 64] as TileLayer['kind'], level: Math.floor(key / 64) - 1, parts };
}

interface Cut {
  readonly map: BaseMap;
  /** tile units per unit square */
  readonly scale: number;
  readonly originX: number;
  readonly originY: number;
  /** squared, unit square */
  readonly tolerance: number;
  /** positions are rounded to this many units */
  readonly step: number;
  /** short lines already drawn, where rounding is coarse */
  readonly seen: Set<string>;
}

function cutLine(drawn: Drawn, cut: Cut, layer: number, parts: number[]): void {
  const line = project(drawn, cut);
  for (const part of clipLine(line, -LINE_MARGIN, TILE_UNITS + LINE_MARGIN)) {
    const rounded = round(part, cut.step);
    if (rounded.length < 4) continue;
    if (cut.step > 1) {
      const key = `${layer},${rounded.join()}`;
      const turned = `${layer},${turnedRound(rounded).join()}`;
      if (cut.seen.has(key) || cut.seen.has(turned)) continue;
      cut.seen.add(key);
    }
    push(rounded, parts);
  }
}

function cutArea(drawn: Drawn, cut: Cut, parts: number[]): void {
  const ring = project(drawn, cut);
  ring.length -= 2;
  let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ring.length; i += 2) {
    west = Math.min(west, ring[i]!);
    east = Math.max(east, ring[i]!);
    north = Math.min(north, ring[i + 1]!);
    south = Math.max(south, ring[i + 1]!);
  }
  const least = (AREA_MIN_PX * TILE_UNITS) / TILE_PX;
  if (east - west < least && south - north < least) return;
  const rounded = round(clipRing(ring, -AREA_MARGIN, TILE_UNITS + AREA_MARGIN), 1);
  if (rounded.length >= 6) push(rounded, parts);
}

/** Positions in tile units, those left out that the zoom does not show. */
function project(drawn: Drawn, { map, scale, originX, originY, tolerance }: Cut): number[] {
  const { refs } = drawn;
  const { x, y } = map;
  drawn.weight ??= weighLine(refs, x, y);
  const { weight } = drawn;
  const out: number[] = [];
  let before = Number.NaN;
  for (let i = 0; i < refs.length; i++) {
    if (weight[i]! < tolerance) continue;
    const ref = refs[i]!;
    let px = x[ref]!;
    // the short way round crosses the antimeridian
    if (px - before > 0.5) px -= 1;
    else if (before - px > 0.5) px += 1;
    before = px;
    out.push((px - originX) * scale, (y[ref]! - originY) * scale);
  }
  return out;
}

/** Whole steps, what falls on the position before it left out. */
function round(line: Flat, step: number): number[] {
  const out: number[] = [];
  for (let i = 0; i < line.length; i += 2) {
    const px = Math.round(line[i]! / step) * step;
    const py = Math.round(line[i + 1]! / step) * step;
    const last = out.length;
    if (last === 0 || out[last - 2] !== px || out[last - 1] !== py) out.push(px, py);
  }
  return out;
}

function turnedRound(line: Flat): number[] {
  const out: number[] = [];
  for (let i = line.length - 2; i >= 0; i -= 2) out.push(line[i]!, line[i + 1]!);
  return out;
}

function push(line: Flat, parts: number[]): void {
  parts.push(line.length / 2, line[0]!, line[1]!);
  for (let i = 2; i < line.length; i += 2) parts.push(line[i]! - line[i - 2]!, line[i + 1]! - line[i - 1]!);
}
