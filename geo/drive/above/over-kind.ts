import type { Tags } from '../../roads/roads.ts';
import { isTrunkRoad } from '../../tags/road-class.ts';
import { saysYes } from '../../tags/says-yes.ts';
import { textOf } from '../../tags/text-of.ts';
import { hangsOver } from './underside.ts';

/** What crosses over a road, the most worrying first: where several cross together, the first names them. */
export const OVER_KINDS = [
  'railway',
  'gateway',
  'roof',
  'pipe',
  'aqueduct',
  'foot',
  'road',
  'structure',
  'mainRoad',
  'building',
  'gantry',
] as const;
export type OverKind = (typeof OVER_KINDS)[number];

/** Railways that are gone, or not there yet, leave no bridge. */
const NO_TRACK = new Set([
  'proposed',
  'planned',
  'razed',
  'dismantled',
  'platform',
  'platform_edge',
  'station',
]);
const FOOT = new Set(['footway', 'cycleway', 'path', 'steps', 'bridleway', 'pedestrian', 'corridor']);
const NO_ROAD = new Set(['proposed', 'planned', 'razed', 'elevator', 'platform', 'traffic_island']);

/** What a way would be if it lay over a road; undefined for what stops nobody from above. */
export function overKind(tags: Tags): OverKind | undefined {
  const { highway, railway, building } = tags;
  if (highway !== undefined) {
    if (NO_ROAD.has(highway)) return undefined;
    if (FOOT.has(highway)) return 'foot';
    return isTrunkRoad(tags) ? 'mainRoad' : 'road';
  }
  if (railway !== undefined) return NO_TRACK.has(railway) ? undefined : 'railway';
  if (isGateway(tags)) return 'gateway';
  if (tags['man_made'] === 'bridge') return 'structure';
  if (tags['man_made'] === 'gantry') return 'gantry';
  if (tags['man_made'] === 'pipeline' || tags['man_made'] === 'goods_conveyor') return 'pipe';
  if (tags['waterway'] !== undefined) return 'aqueduct';
  if (building !== undefined && saysYes(building)) return ROOFS.has(building) ? 'roof' : 'building';
  const part = tags['building:part'];
  if (part !== undefined && saysYes(part) && hangsOver(tags)) return ROOFS.has(part) ? 'roof' : 'building';
  return saysYes(tags['bridge']) ? 'structure' : undefined;
}

const ROOFS = new Set(['roof', 'canopy', 'carport']);

const GATE_BUILDINGS = new Set(['city_gate', 'gatehouse', 'gate_house', 'arch']);
const ARCHES = new Set(['arch', 'torii']);

/** An arch over the road that belongs to no bridge: a city gate, a lych gate. */
export function isGateway(tags: Tags): boolean {
  return (
    tags['historic'] === 'city_gate' ||
    tags['barrier'] === 'lych_gate' ||
    GATE_BUILDINGS.has(textOf(tags, 'building')) ||
    ARCHES.has(textOf(tags, 'man_made'))
  );
}
