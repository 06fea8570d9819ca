import { type Roads, WAY_KIND } from '../../../geo/roads/roads.ts';
import type { MapSummary } from '../../contract/views.ts';

/** What the page is told of an opened map. */
export function viewMap(roads: Roads, name: string): MapSummary {
  const { ways, nodes } = roads;
  const ids = new Set<number>();
  let [south, west, north, east] = [90, 180, -90, -180];
  for (let way = 0; way < ways.count; way++) {
    if (ways.kind[way] === WAY_KIND.around) continue;
    ids.add(ways.id[way] as number);
    for (let at = ways.start[way] as number; at < (ways.start[way + 1] as number); at++) {
      const node = ways.refs[at] as number;
      const lat = nodes.lat[node] as number;
      const lon = nodes.lon[node] as number;
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
