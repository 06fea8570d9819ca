import type { Position } from 'geojson';
import { fail, ok, type Result } from '../../result.ts';
import type { RegionBox } from './region.ts';

/** Outlines that run on past ±180 do so by less than another time round. */
const MOST_LON = 360;

type Ring = Position[];

/**
 * The polygons of a GeoJSON Polygon or MultiPolygon, every number looked at, rings that are left open closed.
 * @returns a problem whose message ends a sentence: `its outline …`
 */
export function readOutline(type: string, coordinates: unknown): Result<Ring[][]> {
  const polygons = type === 'Polygon' ? [coordinates] : coordinates;
  if (!Array.isArray(polygons) || polygons.length === 0) return fail('outline', 'its outline holds no area');
  const read: Ring[][] = [];
  for (const polygon of polygons) {
    if (!Array.isArray(polygon) || polygon.length === 0) return fail('outline', 'its outline holds no area');
    const rings: Ring[] = [];
    for (const ring of polygon) {
      const closed = readRing(ring);
      if (!closed.ok) return closed;
      rings.push(closed.value);
    }
    read.push(rings);
  }
  return ok(read);
}

function readRing(ring: unknown): Result<Ring> {
  if (!Array.isArray(ring)) return fail('outline', 'a part of its outline is no list of positions');
  const closed: Ring = [];
  for (const position of ring) {
    const [lon, lat] = Array.isArray(position) ? (position as unknown[]) : [];
    if (!isDegree(lon, MOST_LON) || !isDegree(lat, 90))
      return fail('outline', 'its outline holds a position that is nowhere on Earth');
    closed.push([lon, lat]);
  }
  const [first] = closed;
  const last = closed.at(-1);
  if (first && last && (first[0] !== last[0] || first[1] !== last[1])) closed.push([...first]);
  if (closed.length < 4) return fail('outline', 'a part of its outline has fewer than three corners');
  return ok(closed);
}

function isDegree(value: unknown, most: number): value is number {
  return typeof value === 'number' && Math.abs(value) <= most;
}

export function boxOf(outline: readonly (readonly Ring[])[]): RegionBox {
  const box = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (const [outer = []] of outline)
    for (const [lon = 0, lat = 0] of outer) {
      box.west = Math.min(box.west, lon);
      box.east = Math.max(box.east, lon);
      box.south = Math.min(box.south, lat);
      box.north = Math.max(box.north, lat);
    }
  return box;
}
