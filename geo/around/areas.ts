import Flatbush from 'flatbush';
import { type Roads, type Tags, WAY_KIND } from '../roads/roads.ts';

/** Closed ways that lie around the roads, by place. */
export interface Areas {
  /** Way indices of the areas that hold the place, the smaller box first. */
  at(lat: number, lon: number): number[];
}

const known = new WeakMap<Roads, Areas>();

/**
 * The map's areas of land, water, sites and zones (buildings are none of them), indexed once per map.
 * Only closed ways: areas drawn as relations are not there.
 */
export function areasOf(roads: Roads): Areas {
  const before = known.get(roads);
  if (before !== undefined) return before;
  const areas = indexAreas(roads);
  known.set(roads, areas);
  return areas;
}

function indexAreas(roads: Roads): Areas {
  const ways = listAreas(roads);
  if (ways.length === 0) return { at: () => [] };
  const tree = new Flatbush(ways.length);
  const size = new Map<number, number>();
  for (const way of ways) {
    const box = boxOf(roads, way);
    size.set(way, (box.east - box.west) * (box.north - box.south));
    tree.add(box.west, box.south, box.east, box.north);
  }
  tree.finish();
  return {
    at: (lat, lon) =>
      tree
        .search(lon, lat, lon, lat)
        .map((found) => ways[found] as number)
        .filter((way) => isInside(roads, way, lat, lon))
        .sort((a, b) => (size.get(a) as number) - (size.get(b) as number)),
  };
}

function listAreas(roads: Roads): number[] {
  const { count, kind, start, refs, tags } = roads.ways;
  const ways: number[] = [];
  for (let way = 0; way < count; way++) {
    if (kind[way] !== WAY_KIND.around || !isLand(tags[way] ?? {})) continue;
    const first = start[way] as number;
    const last = (start[way + 1] as number) - 1;
    if (last - first >= 3 && refs[first] === refs[last]) ways.push(way);
  }
  return ways;
}

function isLand(tags: Tags): boolean {
  return ['natural', 'landuse', 'boundary', 'tourism', 'amenity', 'leisure'].some(
    (key) => tags[key] !== undefined && tags[key] !== 'tree_row' && tags[key] !== 'coastline',
  );
}

function boxOf(roads: Roads, way: number) {
  const box = { west: 180, south: 90, east: -180, north: -90 };
  for (let at = roads.ways.start[way] as number; at < (roads.ways.start[way + 1] as number); at++) {
    const node = roads.ways.refs[at] as number;
    const lat = roads.nodes.lat[node] as number;
    const lon = roads.nodes.lon[node] as number;
    box.west = Math.min(box.west, lon);
    box.east = Math.max(box.east, lon);
    box.south = Math.min(box.south, lat);
    box.north = Math.max(box.north, lat);
  }
  return box;
}

/** Even-odd rule: a ray eastwards leaves an area an odd number of times. */
function isInside(roads: Roads, way: number, lat: number, lon: number): boolean {
  const { start, refs } = roads.ways;
  const { lat: lats, lon: lons } = roads.nodes;
  let inside = false;
  for (let at = (start[way] as number) + 1; at < (start[way + 1] as number); at++) {
    const a = refs[at - 1] as number;
    const b = refs[at] as number;
    const [ya, yb] = [lats[a] as number, lats[b] as number];
    if (ya > lat === yb > lat) continue;
    const x = (lons[a] as number) + ((lat - ya) / (yb - ya)) * ((lons[b] as number) - (lons[a] as number));
    if (lon < x) inside = !inside;
  }
  return inside;
}
