import { type Tags, WAY_KIND, type WayKind } from './roads.ts';

/** Values of a key that are kept. */
export type Values = 'any' | readonly string[];

/** highway values that are no road on the ground, now */
const NOT_BUILT = [
  'proposed',
  'planned',
  'disused',
  'abandoned',
  'historic',
  'razed',
  'demolished',
  'dismantled',
  'removed',
  'no',
];

/** highway values that are places beside the road even when drawn as lines or areas */
const NOT_DRIVEN = [
  'platform',
  'rest_area',
  'services',
  'emergency_bay',
  'bus_stop',
  'elevator',
  'street_lamp',
  'traffic_island',
];

/** What lies around a road and may matter to it or is drawn under it: key → values. */
export const AROUND: Readonly<Record<string, Values>> = {
  railway: 'any',
  waterway: 'any',
  natural: [
    'wood',
    'water',
    'tree_row',
    'beach',
    'sand',
    'wetland',
    'coastline',
    'cliff',
    'scrub',
    'heath',
    'grassland',
    'bare_rock',
    'scree',
    'glacier',
    'bay',
    'mud',
    'shoal',
    'dune',
  ],
  landuse: 'any',
  building: 'any',
  'building:part': 'any',
  man_made: [
    'bridge',
    'pier',
    'pipeline',
    'embankment',
    'cutline',
    'goods_conveyor',
    'gantry',
    'groyne',
    'breakwater',
    'arch',
    'torii',
  ],
  historic: ['city_gate'],
  bridge: 'any',
  bridge_support: 'any',
  leisure: 'any',
  amenity: ['parking', 'fuel', 'school', 'hospital', 'university', 'ferry_terminal', 'sanitary_dump_station'],
  tourism: ['camp_site', 'caravan_site', 'zoo', 'theme_park'],
  boundary: ['low_emission_zone', 'limited_traffic_zone', 'low_emission', 'limited_traffic'],
  barrier: 'any',
  aeroway: 'any',
  aerialway: 'any',
  place: 'any',
  'area:highway': 'any',
  highway: [...NOT_DRIVEN, 'pedestrian', 'footway', 'service', 'residential'],
};

/** Nodes of their own worth keeping: key → values. */
export const STANDING_NODES: Readonly<Record<string, Values>> = {
  place: 'any',
  amenity: ['fuel', 'sanitary_dump_station', 'water_point', 'drinking_water'],
  tourism: ['camp_site', 'caravan_site'],
  natural: ['tree'],
};

/** Whether a key alone may make a way worth its tags being read. */
export function mayKeepWay(key: string): boolean {
  return key === 'highway' || key === 'route' || Object.hasOwn(AROUND, key);
}

/** What a way with these tags is to us, undefined: nothing. */
export function wayKind(tags: Tags): WayKind | undefined {
  const highway = tags['highway'];
  if (highway !== undefined && isDriven(highway, tags)) return WAY_KIND.road;
  if (tags['route'] === 'ferry') return WAY_KIND.ferry;
  return fitsAny(tags, AROUND) ? WAY_KIND.around : undefined;
}

/** Roads, tracks and paths, those being built included; an area is crossed by no line of its own. */
function isDriven(highway: string, tags: Tags): boolean {
  return tags['area'] !== 'yes' && !NOT_BUILT.includes(highway) && !NOT_DRIVEN.includes(highway);
}

/** Whether a key alone may make a way matter that has no node within reach: zones, ferries. */
export function mayReachFar(key: string): boolean {
  return key === 'boundary' || key === 'route';
}

/** Keys of what runs along or over the drive from afar, or names where it is: kept as far as roads are. */
const FAR_AROUND = ['railway', 'waterway', 'bridge', 'place', 'boundary'];

/** Whether something around matters only near the drive: most of a map, such as buildings and woods. */
export function isNearOnly(tags: Tags): boolean {
  return tags['man_made'] !== 'bridge' && !FAR_AROUND.some((key) => Object.hasOwn(tags, key));
}

/** Whether a way may be the edge of an area that a relation describes; buildings are too many to wait for one. */
export function mayBeEdge(tags: Tags | undefined): boolean {
  return tags === undefined || !(Object.hasOwn(tags, 'building') || Object.hasOwn(tags, 'building:part'));
}

const SAYS_NOTHING = /^(?:addr:|source|note|fixme|created_by|name|check_date|ref:|entrance$)/u;

/** Whether a key alone says more of a node than an address, a name or a mapper's note. */
export function saysSomething(key: string): boolean {
  return !SAYS_NOTHING.test(key);
}

/** Whether a node's tags are no more than an address, a name or a mapper's note. */
export function saysNothing(tags: Tags): boolean {
  for (const key in tags) if (saysSomething(key)) return false;
  return true;
}

/** Zones hold for all that lies within, however far off their edge is. */
export function isZone(tags: Tags): boolean {
  const boundary = tags['boundary'];
  return boundary !== undefined && fits(AROUND['boundary'], boundary);
}

/** Whether a node that no kept way passes is kept for what its tags say. */
export function isStandingNode(tags: Tags): boolean {
  return fitsAny(tags, STANDING_NODES);
}

/** Whether a key alone may make a node stand for itself. */
export function mayStand(key: string): boolean {
  return Object.hasOwn(STANDING_NODES, key);
}

/** Relations whose tags belong to their outer ways. Their outlines are never driven: a square's edge is no road. */
export function isArea(tags: Tags): boolean {
  const type = tags['type'];
  return (type === 'multipolygon' || type === 'boundary') && fitsAny(tags, AROUND);
}

/** `type=restriction` and its variants by mode (`restriction:hgv`). */
export function isRestriction(tags: Tags): boolean {
  const type = tags['type'];
  return type === 'restriction' || type?.startsWith('restriction:') === true;
}

function fitsAny(tags: Tags, table: Readonly<Record<string, Values>>): boolean {
  for (const key in tags) if (Object.hasOwn(table, key) && fits(table[key], tags[key]!)) return true;
  return false;
}

function fits(values: Values | undefined, value: string): boolean {
  return value !== 'no' && (values === 'any' || values?.includes(value) === true);
}
