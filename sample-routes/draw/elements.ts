import type { Tags } from '../plan/words.ts';

/** OSM elements as written: ids, degrees, tags. */
export interface Node {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tags: Tags;
}

export interface Way {
  readonly id: number;
  readonly refs: readonly number[];
  readonly tags: Tags;
}

export interface Member {
  readonly type: 'node' | 'way' | 'relation';
  readonly ref: number;
  readonly role: string;
}

export interface Relation {
  readonly id: number;
  readonly members: readonly Member[];
  readonly tags: Tags;
}

/** All elements, each kind in the order of its ids. */
export interface District {
  readonly nodes: readonly Node[];
  readonly ways: readonly Way[];
  readonly relations: readonly Relation[];
}

/** Far above the ids in real use, so that the district can be read together with a real map. */
export const FIRST_ID = { node: 90_000_000_001, way: 9_000_000_001, relation: 900_000_001 };

/** The moment the invented survey was finished: Unix seconds, 1 May 2026. */
export const SURVEYED_S = 1_777_593_600;

/** Degrees around all nodes. */
export function boundsOf(nodes: readonly Node[]): {
  south: number;
  west: number;
  north: number;
  east: number;
} {
  const box = { south: 90, west: 180, north: -90, east: -180 };
  for (const { lat, lon } of nodes) {
    box.south = Math.min(box.south, lat);
    box.north = Math.max(box.north, lat);
    box.west = Math.min(box.west, lon);
    box.east = Math.max(box.east, lon);
  }
  return box;
}
