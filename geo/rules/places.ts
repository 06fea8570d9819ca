import type { Drive } from '../drive/drive.ts';
import { nodesOnDrive } from '../drive/nodes-along.ts';
import { pointAt } from '../drive/point-at.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { mayBeLimit } from '../tags/limit-key.ts';

/** One thing the drive uses that can say something: a driven way, a node passed on one, a turn restriction. */
export interface Place {
  readonly type: 'way' | 'node' | 'relation';
  /** OSM id */
  readonly id: number;
  /** index into Roads.ways or Roads.nodes; -1 for a relation */
  readonly index: number;
  readonly tags: Tags;
  /** driven direction along the drawn order, of the way or of the way the node is on */
  readonly forward: boolean;
  /** metres along the drive; equal for a node */
  readonly fromM: number;
  readonly toM: number;
  /** the driven way's name and number, where mapped */
  readonly road: string | undefined;
  /** the driven way's tags */
  readonly wayTags: Tags;
}

/** Where the drive is after so many metres; nowhere (0, 0) for a drive without legs. */
export function placeAt(
  { drive, roads }: { readonly drive: Drive; readonly roads: Roads },
  m: number,
): { readonly lat: number; readonly lon: number } {
  const point = pointAt(drive, roads, m);
  return { lat: point?.lat ?? 0, lon: point?.lon ?? 0 };
}

/** A road as people call it: `Mill Lane (B1234)`. */
export function roadName(tags: Tags): string | undefined {
  const { name, ref } = tags;
  if (name !== undefined && ref !== undefined) return `${name} (${ref})`;
  return name ?? ref;
}

interface Places {
  readonly ways: readonly Place[];
  readonly nodes: readonly Place[];
  readonly limited: readonly Place[];
}

/** Every subject asks the same of a drive, and a grid of vehicles asks it again: looked up once per drive. */
const lookedUp = new WeakMap<Drive, { readonly roads: Roads; readonly places: Places }>();

function placesOf(drive: Drive, roads: Roads): Places {
  const known = lookedUp.get(drive);
  if (known?.roads === roads) return known.places;
  const ways = listWays(drive, roads);
  const nodes = listNodes(drive, roads);
  const limited = [...ways, ...nodes].filter((place) => hasLimitKey(place.tags));
  const places = { ways, nodes, limited };
  lookedUp.set(drive, { roads, places });
  return places;
}

/** Most ways and nodes carry no limit of any kind, and need no closer look. */
function hasLimitKey(tags: Tags): boolean {
  return Object.keys(tags).some(mayBeLimit);
}

/** Every driven stretch in driving order. Only these ways speak; what lies beside, above or below does not. */
export function drivenWays(drive: Drive, roads: Roads): readonly Place[] {
  return placesOf(drive, roads).ways;
}

function listWays(drive: Drive, roads: Roads): Place[] {
  const places: Place[] = [];
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch') continue;
    const tags = roads.ways.tags[leg.way] ?? {};
    places.push({
      type: 'way',
      id: roads.ways.id[leg.way]!,
      index: leg.way,
      tags,
      forward: leg.forward,
      fromM: leg.fromM,
      toM: leg.toM,
      road: roadName(tags),
      wayTags: tags,
    });
  }
  return places;
}

/** Every tagged node the drive passes, in driving order; lifts, sea marks and locks on it are not for the road. */
export function passedNodes(drive: Drive, roads: Roads): readonly Place[] {
  return placesOf(drive, roads).nodes;
}

/** The driven ways, then the passed nodes, that carry a limit of any kind. */
export function limitedPlaces(drive: Drive, roads: Roads): readonly Place[] {
  return placesOf(drive, roads).limited;
}

function listNodes(drive: Drive, roads: Roads): Place[] {
  const places: Place[] = [];
  for (const { node, atM, stretch } of nodesOnDrive(drive, roads)) {
    const tags = roads.nodes.tags.get(node);
    if (tags === undefined || isNotForRoad(tags)) continue;
    const wayTags = roads.ways.tags[stretch.way] ?? {};
    places.push({
      type: 'node',
      id: roads.nodes.id[node]!,
      index: node,
      tags,
      forward: stretch.forward,
      fromM: atM,
      toM: atM,
      road: roadName(wayTags),
      wayTags,
    });
  }
  return places;
}

function isNotForRoad(tags: Tags): boolean {
  if (tags['highway'] === 'elevator' || tags['waterway'] !== undefined) return true;
  return Object.keys(tags).some((key) => key.startsWith('seamark:'));
}
