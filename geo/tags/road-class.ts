import type { Tags } from '../roads/roads.ts';

/**
 * The one ranked table of roads: highways that motor vehicles may use unless tagged otherwise, the most important
 * first. A slip road ranks with the road it serves.
 */
export const RANK = {
  motorway: 0,
  trunk: 1,
  primary: 2,
  secondary: 3,
  tertiary: 4,
  unclassified: 5,
  road: 5,
  residential: 6,
  living_street: 6,
  service: 7,
  track: 8,
} as const;
/** Ranks below every road's: what is no road for motor vehicles, and what nobody knows. */
const NO_ROAD = 9;
const SLIP = '_link';

const RANK_BY_HIGHWAY: ReadonlyMap<string, number> = new Map(
  Object.entries(RANK).flatMap(([highway, rank]): [string, number][] =>
    rank <= RANK.tertiary
      ? [
          [highway, rank],
          [highway + SLIP, rank],
        ]
      : [[highway, rank]],
  ),
);

/** How important a road is by its `highway` value, as in RANK: the lower the more; 9 for what is none. */
export function rankOf(highway: string | undefined): number {
  return RANK_BY_HIGHWAY.get(highway ?? '') ?? NO_ROAD;
}

/** The kind of road a slip road serves; of any other, its own. */
export function withoutSlip(highway: string): string {
  return highway.endsWith(SLIP) ? highway.slice(0, -SLIP.length) : highway;
}

/** Ways made for others, or not made yet, with the words a person reads. */
const CLOSED_CLASSES: ReadonlyMap<string, string> = new Map([
  ['footway', 'a footway'],
  ['cycleway', 'a cycleway'],
  ['pedestrian', 'a pedestrian street'],
  ['path', 'a path'],
  ['bridleway', 'a bridleway'],
  ['steps', 'steps'],
  ['corridor', 'a corridor'],
  ['elevator', 'a lift'],
  ['platform', 'a platform'],
  ['via_ferrata', 'a climbing path'],
  ['busway', 'a busway'],
  ['bus_guideway', 'a guided busway'],
  ['construction', 'a road under construction'],
  ['proposed', 'a road not built yet'],
]);

export type BuiltFor =
  | { readonly kind: 'motor' }
  | { readonly kind: 'ferry' }
  | { readonly kind: 'closed'; readonly what: string }
  | { readonly kind: 'unknown' };

/** What a driven way's class says about motor vehicles when nothing else is tagged. */
export function builtFor(tags: Tags): BuiltFor {
  const highway = tags['highway'];
  if (highway === undefined) return tags['route'] === 'ferry' ? { kind: 'ferry' } : { kind: 'unknown' };
  if (rankOf(highway) < NO_ROAD) return { kind: 'motor' };
  const what = CLOSED_CLASSES.get(highway);
  return what === undefined ? { kind: 'unknown' } : { kind: 'closed', what };
}

/** Minor roads: tertiary and below, service roads and tracks included. */
export function isMinorRoad(tags: Tags): boolean {
  return rankOf(tags['highway']) > RANK.secondary;
}

/** Motorways and trunk roads. */
export function isTrunkRoad(tags: Tags): boolean {
  return rankOf(tags['highway']) <= RANK.trunk;
}

/** Roads of a site rather than of the public network. */
export function isSiteRoad(tags: Tags): boolean {
  const rank = rankOf(tags['highway']);
  return rank === RANK.service || rank === RANK.track;
}

/** On or off a road by a slip. */
export function isSlipRoad(tags: Tags): boolean {
  return tags['highway']?.endsWith(SLIP) === true;
}
