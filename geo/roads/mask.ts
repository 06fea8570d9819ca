import { type Box, boxOfDiscs } from './box.ts';
import { type Disc, type DrawnRoute, discsAlong, type Reach, reachDeg } from './discs.ts';

/** Tells whether a place or a box lies within reach of a drive. */
export interface Mask {
  /** In constant time. */
  has(lat: number, lon: number): boolean;
  /** Whether any place of the box lies within reach (roads) or near (what lies around them). */
  meets(box: Box, within: 'reach' | 'near'): boolean;
  /** Boxes that together hold every place within reach, or near; they may run beyond ±180. */
  boxes(within: 'reach' | 'near'): Box[];
}

/** A fifth of what is near: little more is kept than asked for. */
const CELL_DEG = 0.001;
const MAX_CELLS = 4_000_000;
const REACH = 1;
const NEAR = 2;

/** The cells within reach of the route's line. Gaps between segments are not driven and reach nothing. */
export function corridorMask(route: DrawnRoute, reach: Reach = {}): Mask {
  const discs = discsAlong(route, reach);
  const box = boxOfDiscs(discs);
  if (!box) return { has: () => false, meets: () => false, boxes: () => [] };
  const cellDeg = cellSize(box);
  const rows = Math.ceil((box.north - box.south) / cellDeg) + 1;
  const columns = Math.ceil((box.east - box.west) / cellDeg) + 1;
  const cells = new Uint8Array(rows * columns);
  const { south, north, west } = box;
  const width = box.east - west;
  const perDegree = 1 / cellDeg;
  const fill = (reachM: (disc: Disc) => number, mark: number) => {
    for (const disc of discs) {
      const { dLat, dLon } = reachDeg(disc.lat, reachM(disc));
      const bottom = Math.max(0, Math.floor((disc.lat - dLat - south) * perDegree));
      const top = Math.min(rows - 1, Math.floor((disc.lat + dLat - south) * perDegree));
      const left = Math.max(0, Math.floor((disc.lon - dLon - west) * perDegree));
      const right = Math.min(columns - 1, Math.floor((disc.lon + dLon - west) * perDegree));
      for (let row = bottom; row <= top; row++)
        cells.fill(mark, row * columns + left, row * columns + right + 1);
    }
  };
  fill((disc) => disc.reachM, REACH);
  fill((disc) => disc.nearM, NEAR);

  const anyCell = (low: number, high: number, from: number, to: number, least: number): boolean => {
    if (!(to >= 0 && from <= width)) return false;
    const bottom = Math.max(0, Math.floor((low - south) * perDegree));
    const top = Math.min(rows - 1, Math.floor((high - south) * perDegree));
    const left = Math.max(0, Math.floor(from * perDegree));
    const right = Math.min(columns - 1, Math.floor(to * perDegree));
    for (let row = bottom; row <= top; row++)
      for (let at = row * columns + left; at <= row * columns + right; at++)
        if (cells[at]! >= least) return true;
    return false;
  };
  return {
    has(lat, lon) {
      if (!(lat >= south && lat <= north)) return false;
      let x = lon - west;
      if (x < 0) x += 360;
      else if (x > 360) x -= 360;
      if (!(x <= width)) return false;
      return cells[Math.floor((lat - south) * perDegree) * columns + Math.floor(x * perDegree)] !== 0;
    },
    meets(asked, within) {
      if (!(asked.north >= south && asked.south <= north)) return false;
      const least = within === 'near' ? NEAR : REACH;
      const from = (((asked.west - west) % 360) + 360) % 360;
      const to = from + asked.east - asked.west;
      return (
        anyCell(asked.south, asked.north, from, to, least) ||
        anyCell(asked.south, asked.north, from - 360, to - 360, least)
      );
    },
    boxes: (within) =>
      discs.map((disc) => boxOfDisc(disc, within === 'near' ? disc.nearM : disc.reachM, cellDeg)),
  };
}

/** With the whole cells that its edges run through. */
function boxOfDisc({ lat, lon }: Disc, reachM: number, cellDeg: number): Box {
  const { dLat, dLon } = reachDeg(lat, reachM);
  return {
    south: lat - dLat - cellDeg,
    north: lat + dLat + cellDeg,
    west: lon - dLon - cellDeg,
    east: lon + dLon + cellDeg,
  };
}

function cellSize(box: Box): number {
  const area = (box.north - box.south) * (box.east - box.west);
  return Math.max(CELL_DEG, Math.sqrt(area / MAX_CELLS));
}
