import type { Tags } from '../roads/roads.ts';

/** Highways that motor vehicles may use unless tagged otherwise. */
const MOTOR_ROADS = new Set([
  'motorway',
  'motorway_link',
  'trunk',
  'trunk_link',
  'primary',
  'primary_link',
  'secondary',
  'secondary_link',
  'tertiary',
  'tertiary_link',
  'unclassified',
  'residential',
  'living_street',
  'service',
  'track',
  'road',
]);

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

const MAJOR = /^(motorway|trunk|primary|secondary)(_link)?$/;

export type BuiltFor =
  | { readonly kind: 'motor' }
  | { readonly kind: 'ferry' }
  | { readonly kind: 'closed'; readonly what: string }
  | { readonly kind: 'unknown' };

/** What a driven way's class says about motor vehicles when nothing else is tagged. */
export function builtFor(tags: Tags): BuiltFor {
  const highway = tags['highway'];
  if (highway === undefined) return tags['route'] === 'ferry' ? { kind: 'ferry' } : { kind: 'unknown' };
  if (MOTOR_ROADS.has(highway)) return { kind: 'motor' };
  const what = CLOSED_CLASSES.get(highway);
  return what === undefined ? { kind: 'unknown' } : { kind: 'closed', what };
}

/** Minor roads: tertiary and below, service roads and tracks included. */
export function isMinorRoad(tags: Tags): boolean {
  return !MAJOR.test(tags['highway'] ?? '');
}

/** Roads of a site rather than of the public network. */
export function isSiteRoad(tags: Tags): boolean {
  return tags['highway'] === 'service' || tags['highway'] === 'track';
}

/** On or off a road by a slip. */
export function isSlipRoad(tags: Tags): boolean {
  return tags['highway']?.endsWith('_link') === true;
}
