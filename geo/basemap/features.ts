/** A tile is a square of this many units, x to the east and y to the south. */
export const TILE_UNITS = 4096;

/** A tile is drawn this many pixels wide, so a tile of zoom z belongs to what maps of 256-pixel tiles call zoom z + 1. */
export const TILE_PX = 512;

export const ZOOM_MAX = 19;

/** Areas, lowest first. `land` is what lies within a closed coastline. */
export const AREA_KINDS = [
  'land',
  'farm',
  'grass',
  'residential',
  'industrial',
  'park',
  'heath',
  'wood',
  'wetland',
  'sand',
  'paved',
  'water',
  'building',
] as const;
export type AreaKind = (typeof AREA_KINDS)[number];

/** Lines that are no roads, lowest first. */
export const LINE_KINDS = ['coastline', 'stream', 'river', 'ferry', 'wall', 'treeRow', 'pier'] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** Roads and rails, lowest first: casings of one level are all drawn before its fills. */
export const ROAD_KINDS = [
  'path',
  'track',
  'service',
  'pedestrian',
  'minor',
  'link',
  'tertiary',
  'secondary',
  'primary',
  'trunk',
  'motorway',
  'railMinor',
  'rail',
] as const;
export type RoadKind = (typeof ROAD_KINDS)[number];

export type DrawKind = AreaKind | LineKind | RoadKind;

/** All kinds in drawing order. */
export const DRAW_KINDS: readonly DrawKind[] = [...AREA_KINDS, ...LINE_KINDS, ...ROAD_KINDS];

/** What a text belongs to; the look follows from it. */
export const LABEL_KINDS = [
  'city',
  'town',
  'island',
  'village',
  'suburb',
  'hamlet',
  'locality',
  'ref',
  'road',
  'water',
  'station',
  'site',
] as const;
export type LabelKind = (typeof LABEL_KINDS)[number];

/** A text that may be drawn where there is room; the lower the rank, the sooner. */
export interface TileLabel {
  readonly say: string;
  readonly kind: LabelKind;
  readonly rank: number;
  /** middle of the text, tile units */
  readonly x: number;
  readonly y: number;
  /** clockwise from level, -90…90 degrees; 0 for upright ones */
  readonly angleDeg: number;
}

export interface TileLayer {
  readonly kind: DrawKind;
  /** -1 in a tunnel, 0 on the ground, 1…5 on a bridge */
  readonly level: number;
  /** one after another: number of positions, first x and y, then steps in x and y */
  readonly parts: readonly number[];
}

/** What is drawn of one tile, lowest first. */
export interface TileFeatures {
  readonly z: number;
  readonly x: number;
  readonly y: number;
  /** the tile lies on water wherever there is no `land` */
  readonly sea: boolean;
  readonly layers: readonly TileLayer[];
  readonly labels: readonly TileLabel[];
}
