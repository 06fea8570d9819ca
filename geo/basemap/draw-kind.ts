import { type Tags, WAY_KIND } from '../roads/roads.ts';
import { rankOf, withoutSlip } from '../tags/road-class.ts';
import type { DrawKind } from './features.ts';

/** What a way is drawn as. */
export interface Drawing {
  readonly kind: DrawKind;
  /** -1 in a tunnel, 0 on the ground, 1…5 on a bridge */
  readonly level: number;
  readonly area: boolean;
}

/** First zoom (of 256-pixel tiles) at which a kind is worth its ink. */
export const MIN_ZOOM: Readonly<Record<DrawKind, number>> = {
  land: 0,
  farm: 12,
  grass: 12,
  residential: 9,
  industrial: 11,
  park: 11,
  heath: 10,
  wood: 8,
  wetland: 11,
  sand: 12,
  paved: 15,
  water: 7,
  building: 15,
  coastline: 0,
  stream: 13,
  river: 8,
  ferry: 8,
  wall: 17,
  treeRow: 15,
  pier: 13,
  path: 14,
  track: 13,
  service: 14,
  pedestrian: 14,
  minor: 12,
  link: 12,
  tertiary: 11,
  secondary: 9,
  primary: 7,
  trunk: 6,
  motorway: 5,
  railMinor: 13,
  rail: 9,
};

/** By rank, motorways first. */
const ROADS: readonly DrawKind[] = [
  'motorway',
  'trunk',
  'primary',
  'secondary',
  'tertiary',
  'minor',
  'minor',
  'service',
  'track',
];

/** Highways that are no roads for motor vehicles. */
const OTHER_HIGHWAYS: Readonly<Record<string, DrawKind>> = {
  busway: 'service',
  pedestrian: 'pedestrian',
  footway: 'path',
  path: 'path',
  cycleway: 'path',
  bridleway: 'path',
  steps: 'path',
  construction: 'track',
};

const RAILWAY: Readonly<Record<string, DrawKind>> = {
  rail: 'rail',
  narrow_gauge: 'rail',
  light_rail: 'rail',
  preserved: 'rail',
  tram: 'railMinor',
  miniature: 'railMinor',
  funicular: 'railMinor',
};

const WATERWAY: Readonly<Record<string, DrawKind>> = {
  river: 'river',
  canal: 'river',
  stream: 'stream',
  ditch: 'stream',
  drain: 'stream',
};

/** Areas by key, then value. */
const AREAS: Readonly<Record<string, Readonly<Record<string, DrawKind>>>> = {
  natural: {
    water: 'water',
    bay: 'water',
    wood: 'wood',
    scrub: 'heath',
    heath: 'heath',
    grassland: 'grass',
    wetland: 'wetland',
    beach: 'sand',
    sand: 'sand',
  },
  landuse: {
    residential: 'residential',
    commercial: 'industrial',
    retail: 'industrial',
    industrial: 'industrial',
    railway: 'industrial',
    farmland: 'farm',
    farmyard: 'residential',
    orchard: 'farm',
    vineyard: 'farm',
    meadow: 'grass',
    grass: 'grass',
    village_green: 'park',
    recreation_ground: 'park',
    cemetery: 'park',
    allotments: 'park',
    forest: 'wood',
    reservoir: 'water',
    basin: 'water',
  },
  leisure: {
    park: 'park',
    garden: 'park',
    golf_course: 'park',
    pitch: 'park',
    common: 'park',
    nature_reserve: 'grass',
  },
  amenity: { parking: 'paved' },
  tourism: { camp_site: 'park', caravan_site: 'park' },
  waterway: { riverbank: 'water', dock: 'water' },
  aeroway: { aerodrome: 'industrial', apron: 'paved' },
};

/** Hollow in the ground or cut off from sight: a tunnel through which a road runs is drawn as one, a culvert not at all. */
const HIDDEN_KINDS: ReadonlySet<DrawKind> = new Set(['stream', 'river']);

interface DrawnWay {
  readonly tags: Tags;
  /** as in Roads */
  readonly kind: number;
  /** ends where it begins */
  readonly closed: boolean;
}

/** What a way is drawn as, if at all. */
export function drawKind(way: DrawnWay): Drawing | undefined {
  const { tags, kind } = way;
  if (kind === WAY_KIND.ferry) return { kind: 'ferry', level: 0, area: false };
  const line = lineKind(tags, kind);
  if (line !== undefined) {
    const level = levelOf(tags);
    return level < 0 && HIDDEN_KINDS.has(line) ? undefined : { kind: line, level, area: false };
  }
  const area = areaKind(way);
  return area === undefined ? undefined : { kind: area, level: 0, area: true };
}

function lineKind(tags: Tags, kind: number): DrawKind | undefined {
  const { highway, railway, waterway, natural, barrier } = tags;
  if (kind === WAY_KIND.road && highway !== undefined) return roadKind(highway);
  if (railway !== undefined && own(RAILWAY, railway) !== undefined)
    return tags['service'] === undefined ? own(RAILWAY, railway) : 'railMinor';
  if (waterway !== undefined && own(WATERWAY, waterway) !== undefined && tags['area'] !== 'yes')
    return own(WATERWAY, waterway);
  if (natural === 'coastline') return 'coastline';
  if (natural === 'tree_row') return 'treeRow';
  if (tags['man_made'] === 'pier' || tags['man_made'] === 'breakwater' || tags['man_made'] === 'groyne')
    return 'pier';
  if (barrier !== undefined && barrier !== 'kerb' && tags['landuse'] === undefined) return 'wall';
  return undefined;
}

function roadKind(highway: string): DrawKind {
  const kind = ROADS[rankOf(highway)];
  if (kind === undefined) return own(OTHER_HIGHWAYS, highway) ?? 'minor';
  return withoutSlip(highway) === highway ? kind : 'link';
}

function areaKind({ tags, closed }: DrawnWay): DrawKind | undefined {
  if (tags['building'] !== undefined)
    return closed || tags['type'] === 'multipolygon' ? 'building' : undefined;
  for (const key in AREAS) {
    const value = tags[key];
    const kind = value === undefined ? undefined : own(AREAS[key]!, value);
    if (kind !== undefined) return kind;
  }
  const highway = tags['highway'];
  if (closed && (highway === 'pedestrian' || highway === 'services' || highway === 'rest_area'))
    return 'paved';
  return undefined;
}

function levelOf(tags: Tags): number {
  if (isTrue(tags['tunnel']) || tags['covered'] === 'yes') return -1;
  if (!isTrue(tags['bridge'])) return 0;
  const layer = Number(tags['layer']);
  return Number.isFinite(layer) ? Math.min(5, Math.max(1, Math.round(layer))) : 1;
}

function isTrue(value: string | undefined): boolean {
  return value !== undefined && value !== 'no';
}

// names in map data may be those of an object's own makings
function own<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
