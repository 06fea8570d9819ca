import type { RawTags } from './raw-map.ts';

/** `closed`: nobody may drive there. `perhaps`: it hangs on who, why or when, or cannot be told. */
export type PlainAccess = 'closed' | 'perhaps' | 'open';

const CLOSED = new Set(['no', 'private']);
const OPEN = new Set(['yes', 'designated', 'permissive', 'official', 'public']);
/** OSM wiki, Key:highway: not for motor vehicles unless tagged otherwise. */
const NOT_FOR_MOTORS = new Set([
  'footway',
  'cycleway',
  'path',
  'bridleway',
  'steps',
  'pedestrian',
  'corridor',
  'busway',
  'bus_guideway',
  'platform',
  'construction',
  'proposed',
]);

/** OSM wiki, Key:access: the most specific key decides. motorcar and hgv are beside the motorhome, not above it. */
export function accessOn(tags: RawTags, forward: boolean): PlainAccess {
  const direction = forward ? 'forward' : 'backward';
  const keys = ['motorhome', 'motor_vehicle', 'vehicle', 'access'];
  const doubtful = Object.keys(tags).some((key) =>
    /^(motorhome|motorcar|motor_vehicle|vehicle|access|hgv|goods)\b.*(:conditional|:lanes)/.test(key),
  );
  const value = keys
    .flatMap((key) => [tags[`${key}:${direction}`], tags[`${key}:both_ways`], tags[key]])
    .find((each) => each !== undefined);
  if (doubtful || (value === undefined && tags['motorcar'] !== undefined)) return 'perhaps';
  if (value === undefined) return NOT_FOR_MOTORS.has(tags['highway'] ?? '') ? 'closed' : 'open';
  if (CLOSED.has(value)) return 'closed';
  return OPEN.has(value) ? 'open' : 'perhaps';
}

/** OSM wiki, Key:oneway; roundabouts and motorways are one-way without it. `reversed`: driven against it. */
export function onewayOn(tags: RawTags, forward: boolean): 'along' | 'against' | 'perhaps' | 'both' {
  if (
    Object.keys(tags).some((key) =>
      /^oneway:(?!bicycle|foot|bus|psv|moped|mofa|horse|tram|source|note)/.test(key),
    )
  )
    return 'perhaps';
  const implied =
    tags['junction'] === 'roundabout' || tags['junction'] === 'circular' || tags['highway'] === 'motorway';
  const value = tags['oneway'] ?? (implied ? 'yes' : 'no');
  if (value === 'yes' || value === 'true' || value === '1') return forward ? 'along' : 'against';
  if (value === '-1' || value === 'reverse') return forward ? 'against' : 'along';
  return value === 'no' || value === 'false' || value === '0' ? 'both' : 'perhaps';
}
