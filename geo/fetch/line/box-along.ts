import type { Place } from '../../earth/sphere.ts';
import { largest, smallest } from '../../lists.ts';
import type { Box } from '../../roads/box.ts';
import { reachDeg } from '../../roads/discs.ts';

/** The box about places that do not cross the antimeridian, so many metres wider on each side; never beyond the Earth's edges. */
export function boxAlong(places: readonly Place[], marginM: number): Box {
  const lats = places.map(({ lat }) => lat);
  const lons = places.map(({ lon }) => lon);
  return grow(
    { south: smallest(lats), north: largest(lats), west: smallest(lons), east: largest(lons) },
    marginM,
  );
}

/** A box so many metres wider on each side. */
export function grow({ south, north, west, east }: Box, marginM: number): Box {
  const { dLat, dLon } = reachDeg(Math.max(Math.abs(south), Math.abs(north)), marginM);
  return {
    south: Math.max(-90, south - dLat),
    north: Math.min(90, north + dLat),
    west: Math.max(-180, west - dLon),
    east: Math.min(180, east + dLon),
  };
}
