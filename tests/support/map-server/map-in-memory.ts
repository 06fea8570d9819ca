import Flatbush from 'flatbush';
import { localFrame } from '../../../geo/earth/frame.ts';
import type { Point } from '../../../geo/earth/point.ts';
import { isInRing } from '../../../geo/earth/ring.ts';
import { awayFrom, crossing } from '../../../geo/earth/segment.ts';
import { reachDeg } from '../../../geo/roads/discs.ts';
import type { MapFile, MapRelation, MapWay } from '../../sample-routes/read-district.ts';
import type { Filter } from './parse-query.ts';

type Around = Filter & { readonly is: 'around' };
type BoxFilter = Filter & { readonly is: 'box' };
type LatLon = readonly [number, number];
type Line = readonly { readonly lat: number; readonly lon: number }[];

interface Span {
  readonly key: string;
  readonly a: Line[number];
  readonly b: Line[number];
}

interface Index {
  readonly tree: Flatbush;
  readonly spans: readonly Span[];
}

/** A map that can be asked what lies near a line, in a box, or around a place. */
export class MapInMemory {
  readonly file: MapFile;
  readonly ways: ReadonlyMap<number, MapWay>;
  readonly relations: ReadonlyMap<number, MapRelation>;
  private index: Index | undefined;
  private readonly near = new Map<string, ReadonlySet<string>>();

  constructor(file: MapFile) {
    this.file = file;
    this.ways = new Map(file.ways.map((way) => [way.id, way]));
    this.relations = new Map(file.relations.map((relation) => [relation.id, relation]));
  }

  lineOf({ refs }: MapWay): Line {
    return refs.flatMap((ref) => this.file.nodes.get(ref) ?? []);
  }

  /** Ids of nodes and ways of which some part lies so near the line: `n1`, `w2`. */
  around(filter: Around): ReadonlySet<string> {
    const known = this.near.get(filter.text);
    if (known) return known;
    const found = new Set<string>();
    for (const [i, to] of filter.line.entries()) {
      const from = filter.line[i - 1];
      if (from) this.addNear(found, from, to, filter.radiusM);
    }
    this.near.set(filter.text, found);
    return found;
  }

  /** Adds what lies so near one segment of the line, in a flat frame about it. */
  private addNear(found: Set<string>, from: LatLon, to: LatLon, radiusM: number): void {
    this.index ??= indexOf(this);
    const { tree, spans } = this.index;
    const frame = localFrame((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
    const [a, b] = [frame.toXY(...from), frame.toXY(...to)];
    const { dLat, dLon } = reachDeg(Math.max(Math.abs(from[0]), Math.abs(to[0])), radiusM);
    const hits = tree.search(
      Math.min(from[1], to[1]) - dLon,
      Math.min(from[0], to[0]) - dLat,
      Math.max(from[1], to[1]) + dLon,
      Math.max(from[0], to[0]) + dLat,
    );
    for (const hit of hits) {
      const span = spans[hit];
      if (!span || found.has(span.key)) continue;
      const [c, d] = [frame.toXY(span.a.lat, span.a.lon), frame.toXY(span.b.lat, span.b.lon)];
      if (comesWithin(a, b, { c, d }, radiusM)) found.add(span.key);
    }
  }

  inBox(line: Line, { south, west, north, east }: BoxFilter): boolean {
    const holds = ({ lat, lon }: { lat: number; lon: number }) =>
      lat >= south && lat <= north && lon >= west && lon <= east;
    if (line.some(holds)) return true;
    const corners = [
      [west, south],
      [east, south],
      [east, north],
      [west, north],
      [west, south],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const flat = line.map(({ lat, lon }) => ({ x: lon, y: lat }));
    return flat.some(
      (to, i) =>
        i > 0 && corners.some((corner, j) => j > 0 && crossing(flat[i - 1]!, to, corners[j - 1]!, corner)),
    );
  }

  /** The closed ways and the area relations that hold a place. */
  holding(lat: number, lon: number): { readonly ways: number[]; readonly relations: number[] } {
    const at = { x: lon, y: lat };
    const ring = (way: MapWay) => this.lineOf(way).map((place) => ({ x: place.lon, y: place.lat }));
    const closed = (way: MapWay) => way.refs.length > 3 && way.refs[0] === way.refs.at(-1);
    const ways = this.file.ways.filter((way) => closed(way) && isInRing(at, ring(way))).map(({ id }) => id);
    const relations = this.file.relations.filter(({ tags, members }) => {
      if (tags['type'] !== 'multipolygon' && tags['type'] !== 'boundary') return false;
      const outer = members.flatMap(({ type, ref, role }) =>
        type === 'way' && role !== 'inner' ? (this.ways.get(ref) ?? []) : [],
      );
      return outer.filter((way) => crossings(at, ring(way)) % 2 === 1).length % 2 === 1;
    });
    return { ways, relations: relations.map(({ id }) => id) };
  }
}

/** Nodes, and segments of ways, by place. */
function indexOf(map: MapInMemory): Index {
  const spans: Span[] = [];
  for (const node of map.file.nodes.values()) spans.push({ key: `n${node.id}`, a: node, b: node });
  for (const way of map.file.ways)
    map.lineOf(way).forEach((b, i, line) => {
      const a = line[i - 1];
      if (a) spans.push({ key: `w${way.id}`, a, b });
    });
  const tree = new Flatbush(spans.length);
  for (const { a, b } of spans)
    tree.add(Math.min(a.lon, b.lon), Math.min(a.lat, b.lat), Math.max(a.lon, b.lon), Math.max(a.lat, b.lat));
  tree.finish();
  return { tree, spans };
}

function comesWithin(a: Point, b: Point, { c, d }: { c: Point; d: Point }, withinM: number): boolean {
  return (
    awayFrom(c, a, b) <= withinM ||
    awayFrom(d, a, b) <= withinM ||
    awayFrom(a, c, d) <= withinM ||
    awayFrom(b, c, d) <= withinM ||
    crossing(a, b, c, d) !== undefined
  );
}

/** How often a ray eastwards meets the line, open or closed. */
function crossings(at: Point, line: readonly Point[]): number {
  return line.filter((to, i) => {
    const from = line[i - 1];
    if (!from || from.y > at.y === to.y > at.y) return false;
    return from.x + ((at.y - from.y) / (to.y - from.y)) * (to.x - from.x) > at.x;
  }).length;
}
