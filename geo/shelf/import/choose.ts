import { drawKind, MIN_ZOOM } from '../../basemap/draw-kind.ts';
import { placeMinZoom } from '../../basemap/places.ts';
import {
  isArea,
  isNearOnly,
  isRestriction,
  isStandingNode,
  isZone,
  mayBeEdge,
  mayKeepWay,
  wayKind,
} from '../../roads/keep.ts';
import { type Tags, WAY_KIND } from '../../roads/roads.ts';
import { pointKind } from '../../services/point.ts';
import { RANK, rankOf } from '../../tags/road-class.ts';
import { EDGE } from '../layers.ts';
import type { NameKind } from '../names.ts';

/** What follows is no road for motor vehicles. */
const LAST_RANK = RANK.track;

/** In which of the thinned layers something is drawn. */
export const DRAWN = { no: 0, at8: 1, at8and5: 2 } as const;

/** The zooms (of 256-pixel tiles) up to which the thinned layers are drawn. */
const ZOOM_OF_8 = 11;
const ZOOM_OF_5 = 8;

function drawnFrom(minZoom: number | undefined): number {
  if (minZoom === undefined || minZoom > ZOOM_OF_8) return DRAWN.no;
  return minZoom > ZOOM_OF_5 ? DRAWN.at8 : DRAWN.at8and5;
}

/** How a way counts among the roads of a map. */
export const ROAD_CLASS = { none: 0, main: 1, minor: 2 } as const;

/** As what a thing stands in the name index, if it has a name. */
export interface Naming {
  readonly kind: NameKind;
  readonly what: string;
}

/** What an import takes of a way. */
export interface WayChoice {
  /** of WAY_KIND, or EDGE */
  readonly kind: number;
  /** its own tags mean nothing and are left out */
  readonly bare: boolean;
  readonly nearOnly: boolean;
  readonly zone: boolean;
  readonly drawn: number;
  /** drawn thinned as a line, joined with others like it */
  readonly line: boolean;
  /** of ROAD_CLASS */
  readonly roadClass: number;
  readonly service: boolean;
  readonly naming: Naming | undefined;
}

/** A way of which nothing is asked but its kind. */
export const PLAIN_EDGE: WayChoice = {
  kind: EDGE,
  bare: false,
  nearOnly: false,
  zone: false,
  drawn: DRAWN.no,
  line: false,
  roadClass: ROAD_CLASS.none,
  service: false,
  naming: undefined,
};
const BARE_EDGE: WayChoice = { ...PLAIN_EDGE, bare: true };

/**
 * What a way is taken as; undefined where it is nothing to us.
 * @param tags undefined where no key of it can matter
 */
export function chooseWay(
  tags: Tags | undefined,
  { edge, closed }: { readonly edge: boolean; readonly closed: boolean },
): WayChoice | undefined {
  const kind = tags && wayKind(tags);
  if (tags === undefined || kind === undefined) return edge && mayBeEdge(tags) ? BARE_EDGE : undefined;
  const drawing = drawKind({ tags, kind, closed });
  return {
    kind,
    bare: false,
    nearOnly: kind === WAY_KIND.around && isNearOnly(tags),
    zone: isZone(tags),
    drawn: drawing === undefined || (drawing.area && !closed) ? DRAWN.no : drawnFrom(MIN_ZOOM[drawing.kind]),
    line: drawing !== undefined && !drawing.area,
    roadClass: kind === WAY_KIND.road ? roadClassOf(tags) : ROAD_CLASS.none,
    service: kind === WAY_KIND.around && pointKind(tags) !== undefined,
    naming: kind === WAY_KIND.road ? roadNaming(tags) : siteNaming(tags),
  };
}

/**
 * Keys that `chooseWay` looks at: all tags with other keys may be left out of what it is given, and whatever has the
 * same of these is taken as the same.
 */
export function decidesWay(key: string): boolean {
  return mayKeepWay(key) || DECISIVE.has(key);
}

const DECISIVE = new Set(['area', 'covered', 'service', 'tunnel', 'type']);

/** The name of a way or node; its number stands for a road without one. */
export function nameOf(tags: Tags, { kind }: Naming): string | undefined {
  return tags['name'] ?? (kind === 'road' ? tags['ref'] : undefined);
}

/** What an import takes of a node with tags. */
export interface NodeChoice {
  /** kept without any way that uses it */
  readonly stands: boolean;
  readonly service: boolean;
  readonly drawn: number;
  readonly naming: Naming | undefined;
}

/** Keys that `chooseNode` looks at, besides whether any key says something. */
export function decidesNode(key: string): boolean {
  return DECISIVE_OF_NODES.has(key);
}

const DECISIVE_OF_NODES = new Set(['amenity', 'natural', 'place', 'railway', 'tourism']);

/** What a node whose tags say something is taken as. */
export function chooseNode(tags: Tags): NodeChoice {
  return {
    stands: isStandingNode(tags),
    service: pointKind(tags) !== undefined,
    drawn: drawnFrom(placeMinZoom(tags)),
    naming: siteNaming(tags),
  };
}

/** How a relation is taken. */
export const RELATION = { restriction: 1, area: 2, route: 4, zone: 8, drawn8: 16, drawn5: 32 } as const;

/** What a relation is taken as, as a sum of RELATION; 0: not at all. */
export function chooseRelation(tags: Tags): number {
  if (isRestriction(tags)) return RELATION.restriction;
  if (tags['type'] === 'route' && (tags['route'] === 'ferry' || tags['duration'] !== undefined))
    return RELATION.route;
  if (!isArea(tags)) return 0;
  const drawing = drawKind({ tags, kind: WAY_KIND.around, closed: true });
  const drawn = drawing?.area === true ? drawnFrom(MIN_ZOOM[drawing.kind]) : DRAWN.no;
  return (
    RELATION.area +
    (isZone(tags) ? RELATION.zone : 0) +
    (drawn === DRAWN.no ? 0 : RELATION.drawn8) +
    (drawn === DRAWN.at8and5 ? RELATION.drawn5 : 0)
  );
}

function roadClassOf(tags: Tags): number {
  const rank = rankOf(tags['highway']);
  if (rank > LAST_RANK) return ROAD_CLASS.none;
  return rank <= RANK.tertiary ? ROAD_CLASS.main : ROAD_CLASS.minor;
}

const SERVICE_AMENITIES = ['fuel', 'sanitary_dump_station', 'water_point', 'drinking_water'];
const SERVICE_TOURISM = ['camp_site', 'caravan_site'];

function roadNaming(tags: Tags): Naming | undefined {
  const what = tags['highway'] ?? '';
  return rankOf(what) > LAST_RANK ? undefined : { kind: 'road', what };
}

function siteNaming({ place, railway, amenity, tourism }: Tags): Naming | undefined {
  if (place !== undefined) return { kind: 'place', what: place };
  if (railway === 'station' || railway === 'halt') return { kind: 'site', what: railway };
  if (tourism !== undefined && SERVICE_TOURISM.includes(tourism)) return { kind: 'site', what: tourism };
  if (amenity === 'ferry_terminal' || SERVICE_AMENITIES.includes(amenity ?? ''))
    return { kind: 'site', what: amenity ?? '' };
  return undefined;
}

/** What `drawKind`, the labels and the choice of ways read. */
const DRAWN_KEYS = new Set([
  'aeroway',
  'amenity',
  'area',
  'barrier',
  'bridge',
  'building',
  'covered',
  'highway',
  'landuse',
  'layer',
  'leisure',
  'man_made',
  'name',
  'natural',
  'place',
  'railway',
  'ref',
  'route',
  'service',
  'tourism',
  'tunnel',
  'type',
  'waterway',
]);

/** Whether a thinned layer needs a tag of this key. */
export function isDrawnKey(key: string): boolean {
  return DRAWN_KEYS.has(key);
}

/** Of the tags those that a thinned layer needs. */
export function drawnTags(tags: Tags): Tags {
  return Object.fromEntries(Object.entries(tags).filter(([key]) => DRAWN_KEYS.has(key)));
}

/**
 * Of a line that is drawn zoomed out no name is written yet, and bridges and tunnels look like what leads to them: what
 * is alike in these is drawn as one.
 */
const LINE_KEYS = new Set(['area', 'highway', 'natural', 'railway', 'ref', 'route', 'waterway']);

/** Whether a line in a thinned layer needs a tag of this key. */
export function isLineKey(key: string): boolean {
  return LINE_KEYS.has(key);
}

/** Of the tags those that a line in a thinned layer needs. */
export function lineTags(tags: Tags): Tags {
  return Object.fromEntries(Object.entries(tags).filter(([key]) => LINE_KEYS.has(key)));
}
