import { distanceM, EARTH_RADIUS_M, wrapLon } from '../route/measure.ts';
import type { Route } from '../route/route.ts';

/** Tells in constant time whether a place lies within reach of a drive. */
export interface Mask {
  has(lat: number, lon: number): boolean;
}

/**
 * Nodes on a driven road may lie half a segment from the place driven. Segments over 2.5 km are hardly known on
 * roads; this holds for 5 km and a road 500 m beside the route.
 */
const REACH_M = 3_000;
/** Between sparse points the road may swing out: half the straight leg is a detour of 1.4 times its length. */
const REACH_PER_LEG = 0.5;
const CELL_DEG = 0.01;
const MAX_CELLS = 16_000_000;
const METRES_PER_DEGREE = (EARTH_RADIUS_M * Math.PI) / 180;

interface Disc {
  readonly lat: number;
  /** may run beyond ±180 so that neighbours stay neighbours */
  readonly lon: number;
  readonly reachM: number;
}

/** The cells within reach of the route's line. Gaps between segments are not driven and reach nothing. */
export function corridorMask(route: Route): Mask {
  const discs = discsAlong(route);
  const box = boxOf(discs);
  if (!box) return { has: () => false };
  const cellDeg = cellSize(box);
  const rows = Math.ceil((box.north - box.south) / cellDeg) + 1;
  const columns = Math.ceil((box.east - box.west) / cellDeg) + 1;
  const cells = new Uint8Array(rows * columns);
  for (const disc of discs) {
    const { dLat, dLon } = reachDeg(disc);
    const bottom = Math.max(0, Math.floor((disc.lat - dLat - box.south) / cellDeg));
    const top = Math.min(rows - 1, Math.floor((disc.lat + dLat - box.south) / cellDeg));
    const left = Math.max(0, Math.floor((disc.lon - dLon - box.west) / cellDeg));
    const right = Math.min(columns - 1, Math.floor((disc.lon + dLon - box.west) / cellDeg));
    for (let row = bottom; row <= top; row++) cells.fill(1, row * columns + left, row * columns + right + 1);
  }
  const { south, north, west } = box;
  const width = box.east - box.west;
  const perDegree = 1 / cellDeg;
  return {
    has(lat, lon) {
      if (!(lat >= south && lat <= north)) return false;
      let x = lon - west;
      if (x < 0) x += 360;
      else if (x > 360) x -= 360;
      if (!(x <= width)) return false;
      return cells[Math.floor((lat - south) * perDegree) * columns + Math.floor(x * perDegree)] === 1;
    },
  };
}

/** Overlapping discs along the drawn line, close enough that no place within reach of it falls between. */
function discsAlong(route: Route): Disc[] {
  const discs: Disc[] = [];
  let before: number | undefined;
  for (const { lat, lon } of route.segments) {
    for (let i = 0; i < lat.length; i++) {
      const here = lat[i] as number;
      // each longitude is brought next to the one before
      const there: number =
        before === undefined ? (lon[i] as number) : before + wrapLon((lon[i] as number) - before);
      if (i > 0 && before !== undefined) {
        const lastLat = lat[i - 1] as number;
        const legM = distanceM(lastLat, before, here, there);
        const reachM = REACH_M + REACH_PER_LEG * legM;
        const steps = Math.ceil(legM / reachM) * 2;
        for (let step = 0; step < steps; step++) {
          const share = step / steps;
          discs.push({
            lat: lastLat + share * (here - lastLat),
            lon: before + share * (there - before),
            reachM,
          });
        }
        discs.push({ lat: here, lon: there, reachM });
      } else discs.push({ lat: here, lon: there, reachM: REACH_M });
      before = there;
    }
  }
  return thinned(discs);
}

/** Of dense points one in a hundred metres is enough; its reach grows by what was left out. */
function thinned(discs: readonly Disc[]): Disc[] {
  const kept: Disc[] = [];
  let last: Disc | undefined;
  for (const disc of discs) {
    if (last && disc.reachM <= last.reachM && distanceM(last.lat, last.lon, disc.lat, disc.lon) < 100)
      continue;
    last = disc;
    kept.push({ ...disc, reachM: disc.reachM + 100 });
  }
  return kept;
}

function reachDeg({ lat, reachM }: Disc): { dLat: number; dLon: number } {
  const dLat = reachM / METRES_PER_DEGREE;
  // the meridians stand closest at the poleward edge
  const edge = Math.min(90, Math.abs(lat) + dLat);
  const cos = Math.cos((edge * Math.PI) / 180);
  return { dLat, dLon: Math.min(180, dLat / Math.max(cos, 1e-9)) };
}

interface Box {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
}

function boxOf(discs: readonly Disc[]): Box | undefined {
  if (discs.length === 0) return undefined;
  const box = { south: 90, north: -90, west: Number.POSITIVE_INFINITY, east: Number.NEGATIVE_INFINITY };
  for (const disc of discs) {
    const { dLat, dLon } = reachDeg(disc);
    box.south = Math.min(box.south, disc.lat - dLat);
    box.north = Math.max(box.north, disc.lat + dLat);
    box.west = Math.min(box.west, disc.lon - dLon);
    box.east = Math.max(box.east, disc.lon + dLon);
  }
  return box;
}

function cellSize(box: Box): number {
  const area = (box.north - box.south) * (box.east - box.west);
  return Math.max(CELL_DEG, Math.sqrt(area / MAX_CELLS));
}
