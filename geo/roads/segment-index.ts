import Flatbush from 'flatbush';
import { wrapLon } from '../earth/angles.ts';
import { localFrame } from '../earth/frame.ts';
import { shareNearest } from '../earth/segment.ts';
import { append } from '../lists.ts';
import { type NearSegment, type Roads, type SegmentIndex, type SegmentRef, WAY_KIND } from './roads.ts';

type Nodes = Pick<Roads['nodes'], 'lat' | 'lon'>;
type Ways = Pick<Roads['ways'], 'count' | 'start' | 'refs' | 'kind'>;

/** Segments of one sort with their boxes; `at` is the place of a segment's first node in refs. */
interface Shelf {
  readonly tree: Flatbush;
  readonly way: Uint32Array;
  readonly at: Uint32Array;
}

/**
 * Builds the index of all segments, roads and ferries apart from what lies around.
 * Distances are metres in a flat frame about the place asked for: exact to 0.1 % within 3 km (see localFrame).
 * Segments across the antimeridian are found from either side.
 */
export function buildSegmentIndex(nodes: Nodes, ways: Ways): SegmentIndex {
  const driven = fillShelf(nodes, ways, (kind) => kind !== WAY_KIND.around);
  const around = fillShelf(nodes, ways, (kind) => kind === WAY_KIND.around);
  return {
    near(lat, lon, radiusM) {
      if (!driven) return [];
      const frame = localFrame(lat, lon);
      // a hair more than the radius, so that rounding of degrees loses nothing
      const reach = radiusM * (1 + 1e-9) + 1e-6;
      const dLat = reach / frame.metresPerDegLat;
      const dLon = Math.min(180, reach / frame.metresPerDegLon);
      const found: NearSegment[] = [];
      const { metresPerDegLat, metresPerDegLon } = frame;
      // spelled out without an object per end: this runs for every position of a drive
      for (const hit of search(driven, lat - dLat, lon - dLon, lat + dLat, lon + dLon)) {
        const at = driven.at[hit]!;
        const a = ways.refs[at]!;
        const b = ways.refs[at + 1]!;
        const ax = wrapLon(nodes.lon[a]! - lon) * metresPerDegLon;
        const ay = (nodes.lat[a]! - lat) * metresPerDegLat;
        const dx = wrapLon(nodes.lon[b]! - lon) * metresPerDegLon - ax;
        const dy = (nodes.lat[b]! - lat) * metresPerDegLat - ay;
        const t = shareNearest(-ax, -ay, dx, dy);
        const ex = ax + t * dx;
        const ey = ay + t * dy;
        const distanceM = Math.sqrt(ex * ex + ey * ey);
        if (distanceM > radiusM) continue;
        const way = driven.way[hit]!;
        found.push({ way, seg: at - ways.start[way]!, distanceM, t });
      }
      return found;
    },
    inBox(south, west, north, east, kind) {
      const shelf = kind === 'driven' ? driven : around;
      return shelf ? search(shelf, south, west, north, east).map((hit) => refOf(shelf, ways, hit)) : [];
    },
  };
}

/** The same, built when it is first asked: maps that are only drawn never need it. */
export function segmentIndexWhenAsked(nodes: Nodes, ways: Ways): SegmentIndex {
  let built: SegmentIndex | undefined;
  const index = () => {
    built ??= buildSegmentIndex(nodes, ways);
    return built;
  };
  return {
    near: (lat, lon, radiusM) => index().near(lat, lon, radiusM),
    inBox: (south, west, north, east, kind) => index().inBox(south, west, north, east, kind),
  };
}

function fillShelf(nodes: Nodes, ways: Ways, takes: (kind: number) => boolean): Shelf | undefined {
  let count = 0;
  for (let way = 0; way < ways.count; way++)
    if (takes(ways.kind[way]!)) count += Math.max(0, ways.start[way + 1]! - ways.start[way]! - 1);
  if (count === 0) return undefined;
  const shelf: Shelf = {
    tree: new Flatbush(count, 16, Float64Array),
    way: new Uint32Array(count),
    at: new Uint32Array(count),
  };
  let next = 0;
  for (let way = 0; way < ways.count; way++) {
    if (!takes(ways.kind[way]!)) continue;
    for (let at = ways.start[way]!; at + 1 < ways.start[way + 1]!; at++) {
      const a = ways.refs[at]!;
      const b = ways.refs[at + 1]!;
      addBox(shelf.tree, nodes, a, b);
      shelf.way[next] = way;
      shelf.at[next++] = at;
    }
  }
  shelf.tree.finish();
  return shelf;
}

function addBox(tree: Flatbush, { lat, lon }: Nodes, a: number, b: number): void {
  const south = Math.min(lat[a]!, lat[b]!);
  const north = Math.max(lat[a]!, lat[b]!);
  const west = Math.min(lon[a]!, lon[b]!);
  const east = Math.max(lon[a]!, lon[b]!);
  // the short way round crosses the antimeridian: the box then runs on beyond 180
  if (east - west > 180) tree.add(east, south, west + 360, north);
  else tree.add(west, south, east, north);
}

/** Also asks one turn to the east and to the west where the box or the data may lie there. */
function search(shelf: Shelf, south: number, west: number, north: number, east: number): number[] {
  const hits = shelf.tree.search(west, south, east, north);
  if (shelf.tree.maxX > west + 360) append(hits, shelf.tree.search(west + 360, south, east + 360, north));
  if (shelf.tree.minX < east - 360) append(hits, shelf.tree.search(west - 360, south, east - 360, north));
  return hits;
}

function refOf(shelf: Shelf, ways: Ways, hit: number): SegmentRef {
  const way = shelf.way[hit]!;
  return { way, seg: shelf.at[hit]! - ways.start[way]! };
}
