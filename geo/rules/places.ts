import type { Drive } from '../drive/drive.ts';
import { nodesOnDrive } from '../drive/nodes-along.ts';
import { oncePerDrive } from '../drive/once-per-drive.ts';
import { placeDriven } from '../drive/point-at.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { isPlainlyOpen } from '../tags/access.ts';
import { mayBeLimit, type Quantity } from '../tags/limit-key.ts';
import { type LimitClaim, limitClaims } from '../tags/limits.ts';

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
  return placeDriven(drive, roads, m);
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
  readonly spokenOf: readonly Place[];
}

/** Every subject asks the same of a drive. */
const placesOf = oncePerDrive((drive, roads): Places => {
  const ways = listWays(drive, roads);
  const nodes = listNodes(drive, roads);
  const limited = [...ways, ...nodes].filter((place) => hasLimitKey(place.tags));
  const spokenOf = ways.filter((place) => !isPlainlyOpen(place));
  return { ways, nodes, limited, spokenOf };
});

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
    const tags = mappedOn(roads, leg.way);
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

/** The driven ways but those that are open to every motor vehicle without a word that could say otherwise. */
export function waysSpokenOf(drive: Drive, roads: Roads): readonly Place[] {
  return placesOf(drive, roads).spokenOf;
}

/** Every tagged node the drive passes, in driving order; lifts, sea marks and locks on it are not for the road. */
export function passedNodes(drive: Drive, roads: Roads): readonly Place[] {
  return placesOf(drive, roads).nodes;
}

/** The driven ways, then the passed nodes, that carry a limit of any kind. */
export function limitedPlaces(drive: Drive, roads: Roads): readonly Place[] {
  return placesOf(drive, roads).limited;
}

const claimed = new WeakMap<Place, Map<string, readonly LimitClaim[]>>();

/** The limits of the wanted quantities at a place of a drive, read once for all vehicles. */
export function claimsAt(place: Place, quantities: readonly Quantity[]): readonly LimitClaim[] {
  const read = claimed.get(place) ?? new Map<string, readonly LimitClaim[]>();
  claimed.set(place, read);
  const key = quantities.join();
  const claims = read.get(key) ?? limitClaims(place, quantities);
  read.set(key, claims);
  return claims;
}

function listNodes(drive: Drive, roads: Roads): Place[] {
  const places: Place[] = [];
  for (const { node, atM, stretch } of nodesOnDrive(drive, roads)) {
    const tags = roads.nodes.tags.get(node);
    if (tags === undefined || isNotForRoad(tags)) continue;
    const wayTags = mappedOn(roads, stretch.way);
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
