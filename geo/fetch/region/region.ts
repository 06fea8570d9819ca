import type { Position } from 'geojson';

/** Degrees; longitudes may run beyond ±180 where an outline does. */
export interface RegionBox {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** One region that a server has a map file of. */
export interface Region {
  readonly id: string;
  readonly name: string;
  /** the region it is a part of, as the index says */
  readonly parent?: string;
  /** address of its .osm.pbf */
  readonly url: string;
  /** polygons, each an outer ring and its holes, every ring closed */
  readonly outline: Position[][][];
  readonly box: RegionBox;
  readonly areaKm2: number;
}

/** A server's list of regions. */
export interface RegionIndex {
  readonly regions: readonly Region[];
  /** one sentence for each of the first entries that could not be used */
  readonly refused: readonly string[];
  readonly refusedCount: number;
}
