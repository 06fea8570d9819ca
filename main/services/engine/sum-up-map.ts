import { type Roads, WAY_KIND } from '../../../geo/roads/roads.ts';
import type { MapSummary } from '../../contract/map-summary.ts';

/** What the page is told of an opened map. */
export function sumUpMap(roads: Roads, name: string): MapSummary {
  const { ways, nodes } = roads;
  const ids = new Set<number>();
  let [south, west, north, east] = [90, 180, -90, -180];
  for (let way = 0; way < ways.count; way++) {
    if (ways.kind[way] === WAY_KIND.around) continue;
    ids.add(ways.id[way]!);
    for (let at = ways.start[way]!; at < ways.start[way + 1]!; at++) {
      const node = ways.refs[at]!;
      const lat = nodes.lat[node]!;
      const lon = nodes.lon[node]!;
      south = Math.min(south, lat);
      north = Math.max(north, lat);
      west = Math.min(west, lon);
      east = Math.max(east, lon);
    }
  }
  const empty = ids.size === 0;
  return {
    name,
    sources: roads.sources.map((source) => ({ ...source })),
    roads: ids.size,
    bounds: empty ? null : { south, west, north, east },
    center: empty ? null : { lat: (south + north) / 2, lon: (west + east) / 2 },
    notes: [...roads.notes],
  };
}
