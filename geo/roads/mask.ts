import { type Box, boxOfDiscs } from './box.ts';
import { type Disc, type DrawnRoute, discsAlong, type Reach, reachDeg } from './discs.ts';

/** How close a place lies to a drive, as far as a Disc says; what is near is close, and what is close within reach. */
export const WITHIN = { nothing: 0, reach: 1, close: 2, near: 3 } as const;
type Within = Exclude<keyof typeof WITHIN, 'nothing'>;

/** Tells whether a place or a box lies within reach of a drive. */
export interface Mask {
  /** In constant time. */
  has(lat: number, lon: number): boolean;
  /** How close, of WITHIN; in constant time. Of what is no number: nothing. */
  within(lat: number, lon: number): number;
  /** Whether any place of the box lies within reach (roads), close to the drive, or near (what lies around). */
  meets(box: Box, within: Within): boolean;
  /** Boxes that together hold every place within reach, or near; they may run beyond ±180. */
  boxes(within: 'reach' | 'near'): Box[];
}

/** A fifth of what is near: little more is kept than asked for. */
const CELL_DEG = 0.001;
const MAX_CELLS = 4_000_000;

/** The cells within reach of the route's line. Gaps between segments are not driven and reach nothing. */
export function corridorMask(route: DrawnRoute, reach: Reach = {}): Mask {
  const discs = discsAlong(route, reach);
  const box = boxOfDiscs(discs);
  if (!box) return { has: () => false, within: () => WITHIN.nothing, meets: () => false, boxes: () => [] };
  const cellDeg = cellSize(box);
  const rows = Math.ceil((box.north - box.south) / cellDeg) + 1;
  const columns = Math.ceil((box.east - box.west) / cellDeg) + 1;
  const cells = new Uint8Array(rows * columns);
  const { south, north, west } = box;
  const width = box.east - west;
  const perDegree = 1 / cellDeg;
  const fill = (reachM: (disc: Disc) => number, mark: number) => {
    // of each row what was filled last: discs follow each other closely, and most of one is filled already
    const [first, last] = [new Int32Array(rows).fill(columns), new Int32Array(rows).fill(-1)];
    for (const disc of discs) {
      const { dLat, dLon } = reachDeg(disc.lat, reachM(disc));
      const bottom = Math.max(0, Math.floor((disc.lat - dLat - south) * perDegree));
      const top = Math.min(rows - 1, Math.floor((disc.lat + dLat - south) * perDegree));
      const left = Math.max(0, Math.floor((disc.lon - dLon - west) * perDegree));
      const right = Math.min(columns - 1, Math.floor((disc.lon + dLon - west) * perDegree));
      for (let row = bottom; row <= top; row++) {
        if (left >= first[row]! && right <= last[row]!) continue;
        cells.fill(mark, row * columns + left, row * columns + right + 1);
        first[row] = left;
        last[row] = right;
      }
    }
  };
  fill((disc) => disc.reachM, WITHIN.reach);
  if (reach.roadsAlone !== true) {
    fill((disc) => disc.closeM, WITHIN.close);
    fill((disc) => disc.nearM, WITHIN.near);
  }

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
  const within = (lat: number, lon: number): number => {
    if (!(lat >= south && lat <= north)) return WITHIN.nothing;
    let x = lon - west;
    if (x < 0) x += 360;
    else if (x > 360) x -= 360;
    if (!(x <= width)) return WITHIN.nothing;
    return cells[Math.floor((lat - south) * perDegree) * columns + Math.floor(x * perDegree)]!;
  };
  return {
    within,
    has: (lat, lon) => within(lat, lon) !== WITHIN.nothing,
    meets(asked, level) {
      if (!(asked.north >= south && asked.south <= north)) return false;
      const least = WITHIN[level];
      const from = (((asked.west - west) % 360) + 360) % 360;
      const to = from + asked.east - asked.west;
      return (
        anyCell(asked.south, asked.north, from, to, least) ||
        anyCell(asked.south, asked.north, from - 360, to - 360, least)
      );
    },
    boxes: (level) =>
      level === 'near' && reach.roadsAlone === true
        ? []
        : discs.map((disc) => boxOfDisc(disc, level === 'near' ? disc.nearM : disc.reachM, cellDeg)),
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
