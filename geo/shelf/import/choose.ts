import { drawKind, MIN_ZOOM } from '../../basemap/draw-kind.ts';
import { placeMinZoom } from '../../basemap/places.ts';
import {
  isArea,
  isNearOnly,
  isRestriction,
  isStandingNode,
  isZone,
  mayBeEdge,
  saysNothing,
  wayKind,
} from '../../roads/keep.ts';
import { type Tags, WAY_KIND } from '../../roads/roads.ts';
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

/** A name for the index. */
export interface ChosenName {
  readonly name: string;
  readonly kind: NameKind;
  readonly what: string;
}

/** What an import takes of a way. */
export interface WayChoice {
  /** of WAY_KIND, or EDGE */
  readonly kind: number;
  readonly nearOnly: boolean;
  readonly zone: boolean;
  readonly drawn: number;
  /** of ROAD_CLASS */
  readonly roadClass: number;
  readonly service: boolean;
  readonly name: ChosenName | undefined;
}

const BARE_EDGE: WayChoice = {
  kind: EDGE,
  nearOnly: false,
  zone: false,
  drawn: DRAWN.no,
  roadClass: ROAD_CLASS.none,
  service: false,
  name: undefined,
};

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
    nearOnly: kind === WAY_KIND.around && isNearOnly(tags),
    zone: isZone(tags),
    drawn: drawing === undefined || (drawing.area && !closed) ? DRAWN.no : drawnFrom(MIN_ZOOM[drawing.kind]),
    roadClass: kind === WAY_KIND.road ? roadClassOf(tags) : ROAD_CLASS.none,
    service: kind === WAY_KIND.around && isServicePoint(tags),
    name: kind === WAY_KIND.road ? roadName(tags) : siteName(tags),
  };
}

/** What an import takes of a node with tags. */
export interface NodeChoice {
  /** kept without any way that uses it */
  readonly stands: boolean;
  readonly service: boolean;
  readonly drawn: number;
  readonly name: ChosenName | undefined;
}

/** What a node is taken as for its tags; undefined where they say nothing. */
export function chooseNode(tags: Tags): NodeChoice | undefined {
  if (saysNothing(tags)) return undefined;
  return {
    stands: isStandingNode(tags),
    service: isServicePoint(tags),
    drawn: drawnFrom(placeMinZoom(tags)),
    name: siteName(tags),
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

function isServicePoint(tags: Tags): boolean {
  return SERVICE_AMENITIES.includes(tags['amenity'] ?? '') || SERVICE_TOURISM.includes(tags['tourism'] ?? '');
}

/** Its number stands for a road without a name. */
function roadName(tags: Tags): ChosenName | undefined {
  const what = tags['highway'] ?? '';
  const name = tags['name'] ?? tags['ref'];
  return name === undefined || rankOf(what) > LAST_RANK ? undefined : { name, kind: 'road', what };
}

function siteName(tags: Tags): ChosenName | undefined {
  const { name, place, railway, amenity, tourism } = tags;
  if (name === undefined) return undefined;
  if (place !== undefined) return { name, kind: 'place', what: place };
  if (railway === 'station' || railway === 'halt') return { name, kind: 'site', what: railway };
  if (amenity === 'ferry_terminal') return { name, kind: 'site', what: amenity };
  if (!isServicePoint(tags)) return undefined;
  return {
    name,
    kind: 'site',
    what: tourism !== undefined && SERVICE_TOURISM.includes(tourism) ? tourism : (amenity ?? ''),
  };
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

/** Of the tags those that a thinned layer needs. */
export function drawnTags(tags: Tags): Tags {
  return Object.fromEntries(Object.entries(tags).filter(([key]) => DRAWN_KEYS.has(key)));
}
