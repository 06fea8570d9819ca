import { localFrame } from '../../../geo/earth/frame.ts';
import type { Point } from '../../../geo/earth/point.ts';
import { isInRing } from '../../../geo/earth/ring.ts';
import { awayFrom, crossing } from '../../../geo/earth/segment.ts';
import type { MapFile, MapRelation, MapWay } from '../../sample-routes/read-district.ts';
import type { Filter } from './parse-query.ts';

type Around = Filter & { readonly is: 'around' };
type BoxFilter = Filter & { readonly is: 'box' };
type Line = readonly { readonly lat: number; readonly lon: number }[];

/** A map that can be asked what lies near a line, in a box, or around a place. */
export class MapInMemory {
  readonly file: MapFile;
  readonly ways: ReadonlyMap<number, MapWay>;
  readonly relations: ReadonlyMap<number, MapRelation>;
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
    const lats = filter.line.map(([lat]) => lat);
    const lons = filter.line.map(([, lon]) => lon);
    const frame = localFrame(
      (Math.min(...lats) + Math.max(...lats)) / 2,
      (Math.min(...lons) + Math.max(...lons)) / 2,
    );
    const line = filter.line.map(([lat, lon]) => frame.toXY(lat, lon));
    const close = (place: Point) =>
      line.some((to, i) => i > 0 && awayFrom(place, line[i - 1]!, to) <= filter.radiusM);
    const found = new Set<string>();
    const spot = new Set<number>();
    for (const node of this.file.nodes.values())
      if (close(frame.toXY(node.lat, node.lon))) {
        spot.add(node.id);
        found.add(`n${node.id}`);
      }
    for (const way of this.file.ways) {
      const flat = this.lineOf(way).map(({ lat, lon }) => frame.toXY(lat, lon));
      if (
        way.refs.some((ref) => spot.has(ref)) ||
        flat.some((to, i) => i > 0 && passes(line, flat[i - 1]!, to, filter.radiusM))
      )
        found.add(`w${way.id}`);
    }
    this.near.set(filter.text, found);
    return found;
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

function passes(line: readonly Point[], a: Point, b: Point, withinM: number): boolean {
  return line.some((to, i) => {
    if (i === 0) return false;
    const from = line[i - 1]!;
    return (
      awayFrom(from, a, b) <= withinM ||
      awayFrom(to, a, b) <= withinM ||
      crossing(from, to, a, b) !== undefined
    );
  });
}

/** How often a ray eastwards meets the line, open or closed. */
function crossings(at: Point, line: readonly Point[]): number {
  return line.filter((to, i) => {
    const from = line[i - 1];
    if (!from || from.y > at.y === to.y > at.y) return false;
    return from.x + ((at.y - from.y) / (to.y - from.y)) * (to.x - from.x) > at.x;
  }).length;
}
