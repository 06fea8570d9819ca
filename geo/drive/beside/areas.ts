import Flatbush from 'flatbush';
import { rayCrosses } from '../../earth/ring.ts';
import { type Roads, type Tags, WAY_KIND } from '../../roads/roads.ts';

/** Areas that lie around the roads, by place. */
export interface Areas {
  /** The areas that hold the place, the smaller box first; each by the index of its first way. */
  at(lat: number, lon: number): number[];
  /** Way indices of edges whose area is not whole in the map, so that nobody can tell what lies inside. */
  readonly openEdges: ReadonlySet<number>;
}

const known = new WeakMap<Roads, Areas>();

/**
 * The map's areas of land, water, sites and zones (buildings are none of them), indexed once per map: closed ways, and
 * outer edges of one relation (they share its tags) where together they close. Holes are not known.
 */
export function areasOf(roads: Roads): Areas {
  const before = known.get(roads);
  if (before !== undefined) return before;
  const areas = indexAreas(roads);
  known.set(roads, areas);
  return areas;
}

/** The ways that close an area, by their indices. */
export type Outline = readonly [number, ...number[]];

function indexAreas(roads: Roads): Areas {
  const { outlines, openEdges } = listAreas(roads);
  if (outlines.length === 0) return { at: () => [], openEdges };
  const tree = new Flatbush(outlines.length);
  const size = outlines.map((outline) => {
    const box = boxOf(roads, outline);
    tree.add(box.west, box.south, box.east, box.north);
    return (box.east - box.west) * (box.north - box.south);
  });
  tree.finish();
  return {
    at: (lat, lon) =>
      tree
        .search(lon, lat, lon, lat)
        .filter((found) => isInside(roads, outlines[found]!, lat, lon))
        .sort((a, b) => size[a]! - size[b]!)
        .map((found) => outlines[found]![0]),
    openEdges,
  };
}

function listAreas(roads: Roads): { outlines: Outline[]; openEdges: Set<number> } {
  const { count, kind, start, refs, tags } = roads.ways;
  const outlines: Outline[] = [];
  const edges = new Map<Tags, [number, ...number[]]>();
  for (let way = 0; way < count; way++) {
    const wayTags = tags[way];
    if (kind[way] !== WAY_KIND.around || wayTags === undefined || !isLand(wayTags)) continue;
    const first = start[way]!;
    const last = start[way + 1]! - 1;
    if (last - first >= 3 && refs[first] === refs[last]) outlines.push([way]);
    else {
      const outline = edges.get(wayTags);
      if (outline === undefined) edges.set(wayTags, [way]);
      else outline.push(way);
    }
  }
  const openEdges = new Set<number>();
  for (const outline of edges.values())
    if (closes(roads, outline)) outlines.push(outline);
    else for (const way of outline) openEdges.add(way);
  return { outlines, openEdges };
}

/** Whether every end of an edge is the end of another. */
function closes(roads: Roads, outline: Outline): boolean {
  const ends = new Set<number>();
  for (const way of outline)
    for (const at of [roads.ways.start[way]!, roads.ways.start[way + 1]! - 1]) {
      const node = roads.ways.refs[at]!;
      if (!ends.delete(node)) ends.add(node);
    }
  return ends.size === 0;
}

function isLand(tags: Tags): boolean {
  return ['natural', 'landuse', 'boundary', 'tourism', 'amenity', 'leisure'].some(
    (key) => tags[key] !== undefined && tags[key] !== 'tree_row' && tags[key] !== 'coastline',
  );
}

function boxOf(roads: Roads, outline: Outline) {
  const box = { west: 180, south: 90, east: -180, north: -90 };
  for (const way of outline)
    for (let at = roads.ways.start[way]!; at < roads.ways.start[way + 1]!; at++) {
      const node = roads.ways.refs[at]!;
      const lat = roads.nodes.lat[node]!;
      const lon = roads.nodes.lon[node]!;
      box.west = Math.min(box.west, lon);
      box.east = Math.max(box.east, lon);
      box.south = Math.min(box.south, lat);
      box.north = Math.max(box.north, lat);
    }
  return box;
}

/** Whether a place lies within an outline of ways. Even-odd rule: a ray eastwards leaves an area an odd number of times, in whatever order its edges stand. */
export function isInside(roads: Roads, outline: Outline, lat: number, lon: number): boolean {
  const { start, refs } = roads.ways;
  const { lat: lats, lon: lons } = roads.nodes;
  let inside = false;
  for (const way of outline)
    for (let at = start[way]! + 1; at < start[way + 1]!; at++) {
      const a = refs[at - 1]!;
      const b = refs[at]!;
      if (rayCrosses(lons[a]! - lon, lats[a]! - lat, lons[b]! - lon, lats[b]! - lat)) inside = !inside;
    }
  return inside;
}
