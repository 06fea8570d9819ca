import { booleanPointInPolygon } from '@turf/turf';
import type { Pieces } from './cut-line.ts';
import type { Region, RegionBox, RegionIndex } from './region.ts';

/** A region and the pieces of the line that lie in it. */
export interface Touched {
  readonly region: Region;
  /** rising */
  readonly pieces: readonly number[];
}

/** The same place counted once more round the Earth, either way. */
const TURNS = [0, -360, 360];

/** The regions that a line runs through. */
export function touchedBy({ regions }: RegionIndex, pieces: Pieces): Touched[] {
  const line = boxOfLine(pieces);
  return regions.flatMap((region) => {
    const turns = TURNS.filter((turn) => mayMeet(region.box, line, turn));
    if (turns.length === 0) return [];
    const held: number[] = [];
    for (let piece = 0; piece < pieces.count; piece++)
      if (holds(region, pieces.lat[piece]!, pieces.lon[piece]!, turns)) held.push(piece);
    return held.length === 0 ? [] : [{ region, pieces: held }];
  });
}

/** Whether a place lies in a region, whichever side of ±180 either is counted from. */
export function holds({ box, outline }: Region, lat: number, lon: number, turns = TURNS): boolean {
  for (const turn of turns)
    if (isInBox(box, lat, lon + turn) && isInOutline(outline, lat, lon + turn)) return true;
  return false;
}

function isInOutline(outline: Region['outline'], lat: number, lon: number): boolean {
  return booleanPointInPolygon([lon, lat], { type: 'MultiPolygon', coordinates: outline });
}

function isInBox({ west, south, east, north }: RegionBox, lat: number, lon: number): boolean {
  return lat >= south && lat <= north && lon >= west && lon <= east;
}

function boxOfLine({ count, lat, lon }: Pieces): RegionBox {
  const box = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (let piece = 0; piece < count; piece++) {
    box.west = Math.min(box.west, lon[piece]!);
    box.east = Math.max(box.east, lon[piece]!);
    box.south = Math.min(box.south, lat[piece]!);
    box.north = Math.max(box.north, lat[piece]!);
  }
  return box;
}

function mayMeet(region: RegionBox, line: RegionBox, turn: number): boolean {
  return (
    region.west <= line.east + turn &&
    region.east >= line.west + turn &&
    region.south <= line.north &&
    region.north >= line.south
  );
}
