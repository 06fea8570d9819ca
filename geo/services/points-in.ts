import { given } from '../given.ts';
import { type Roads, type Tags, WAY_KIND } from '../roads/roads.ts';
import { pointKind, type ServicePoint } from './point.ts';

/** A point made of what is mapped; undefined where it is none. @param at of a way the middle of its outline */
export function pointOf(
  osm: ServicePoint['osm'],
  at: { readonly lat: number; readonly lon: number },
  tags: Tags,
): ServicePoint | undefined {
  const kind = pointKind(tags);
  if (kind === undefined) return undefined;
  const name = tags['name'] ?? tags['brand'] ?? tags['operator'];
  return { osm, kind, ...given({ name }), lat: at.lat, lon: at.lon, tags };
}

/** Every service point among the roads read, in order of the map. */
export function pointsIn(roads: Roads): ServicePoint[] {
  const { nodes, ways } = roads;
  const found: ServicePoint[] = [];
  for (const [node, tags] of nodes.tags) {
    const at = { lat: nodes.lat[node]!, lon: nodes.lon[node]! };
    const point = pointOf({ type: 'node', id: nodes.id[node]! }, at, tags);
    if (point !== undefined) found.push(point);
  }
  for (let way = 0; way < ways.count; way++) {
    if (ways.kind[way] !== WAY_KIND.around) continue;
    const tags = ways.tags[way]!;
    if (pointKind(tags) === undefined) continue;
    const refs = ways.refs.subarray(ways.start[way]!, ways.start[way + 1]!);
    const at = middleOf(refs, nodes);
    const point = pointOf({ type: 'way', id: ways.id[way]! }, at, tags);
    if (point !== undefined) found.push(point);
  }
  return found;
}

/** The middle of the box about some nodes. */
export function middleOf(
  refs: Uint32Array,
  { lat, lon }: { readonly lat: Float64Array; readonly lon: Float64Array },
): { lat: number; lon: number } {
  let [south, north, west, east] = [90, -90, 180, -180];
  for (const ref of refs) {
    south = Math.min(south, lat[ref]!);
    north = Math.max(north, lat[ref]!);
    west = Math.min(west, lon[ref]!);
    east = Math.max(east, lon[ref]!);
  }
  return { lat: (south + north) / 2, lon: (west + east) / 2 };
}
