import { crossing } from '../../earth/segment.ts';
import { distanceM, type Place } from '../../earth/sphere.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { roadName } from '../../rules/places.ts';
import { RANK, rankOf } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import { listed } from '../../units/text.ts';
import { OPEN } from '../price/judged.ts';
import type { Field } from '../search/question.ts';

/** Roads of this class and above do not end in nothing: where one does, the map ends. */
const LEADS_ON = RANK.tertiary;
/** So many closures are named. */
const MOST_NAMED = 3;

/** Whether some main road of a set ends where no other road is mapped: the border of what is loaded. */
export function meetsBorder({ costs }: Field, edges: ReadonlySet<number>, end: 'out' | 'in'): boolean {
  const { graph, judge } = costs;
  for (const directed of edges) {
    const node = end === 'out' ? graph.head[directed]! : graph.tail[directed]!;
    if (graph.outStart[node + 1]! - graph.outStart[node]! > 1) continue;
    if (rankOf(judge.tagsOf(graph.way[directed >> 1]!)['highway']) <= LEADS_ON) return true;
  }
  return false;
}

/** How far the vehicle gets, and from where it could go on: directed edges, and the gap between. */
export interface Apart {
  readonly ahead: ReadonlySet<number>;
  readonly behind: ReadonlySet<number>;
  readonly gap: readonly [Place, Place] | undefined;
}

/** What lies between where the vehicle gets to and where it could go on from; undefined where nothing mapped does. */
export function cutBetween(field: Field, { ahead, behind, gap }: Apart): string | undefined {
  const closures = closuresBetween(field, ahead, behind);
  if (closures.length > 0) {
    const named = closures.slice(0, MOST_NAMED).map(({ name }) => name);
    const more = closures.length > MOST_NAMED ? ` and ${closures.length - MOST_NAMED} more` : '';
    return `every road across is closed to this vehicle (${listed(named)}${more})`;
  }
  const line = gap && lineCrossed(field.costs.roads, gap);
  return line && `${line} lies between, and no other road across it is mapped`;
}

interface Closure {
  readonly name: string;
  readonly way: number;
}

/** Closed roads that can be come to, and from whose end the drive could be met again; each way once. */
function closuresBetween(
  { costs }: Field,
  ahead: ReadonlySet<number>,
  behind: ReadonlySet<number>,
): Closure[] {
  const { graph } = costs;
  const found = new Map<number, Closure>();
  for (const from of ahead) {
    const node = graph.head[from]!;
    for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
      const to = graph.out[i]!;
      const way = graph.way[to >> 1]!;
      if (to === (from ^ 1) || found.has(way) || !isClosed(costs.kind(to).open, costs.point(from).open))
        continue;
      if (!leadsTo(graph, to, behind)) continue;
      found.set(way, { way, name: nameOf(costs.judge.tagsOf(way)) });
    }
  }
  return [...found.values()];
}

function isClosed(road: number, point: number): boolean {
  return road !== OPEN.always || point !== OPEN.always;
}

function leadsTo(graph: Field['costs']['graph'], edge: number, behind: ReadonlySet<number>): boolean {
  const node = graph.head[edge]!;
  if (behind.has(edge)) return true;
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++)
    if (behind.has(graph.out[i]!)) return true;
  return false;
}

function nameOf(tags: Tags): string {
  return roadName(tags) ?? `a ${(tags['highway'] ?? 'road').replaceAll('_', ' ')} without a name`;
}

/** Nearer than this both ends of a gap are one place, and whatever lies there lies between. Metres. */
const ONE_PLACE_M = 50;

/** A river or a railway that the straight line over a gap crosses, by name. */
function lineCrossed(roads: Roads, [a, b]: readonly [Place, Place]): string | undefined {
  const [south, north] = [Math.min(a.lat, b.lat), Math.max(a.lat, b.lat)];
  const [west, east] = [Math.min(a.lon, b.lon), Math.max(a.lon, b.lon)];
  const isOnePlace = distanceM(a.lat, a.lon, b.lat, b.lon) < ONE_PLACE_M;
  for (const { way, seg } of roads.index.inBox(south, west, north, east, 'around')) {
    const tags = mappedOn(roads, way);
    const kind = lineKind(tags);
    if (kind === undefined || !(isOnePlace || isCrossed(roads, roads.ways.start[way]! + seg, [a, b])))
      continue;
    return tags['name'] === undefined ? `a ${kind}` : `${tags['name']} (a ${kind})`;
  }
  return undefined;
}

function isCrossed({ nodes, ways }: Roads, ref: number, [a, b]: readonly [Place, Place]): boolean {
  const at = (node: number) => ({ x: nodes.lon[node]!, y: nodes.lat[node]! });
  const line = [at(ways.refs[ref]!), at(ways.refs[ref + 1]!)] as const;
  return crossing({ x: a.lon, y: a.lat }, { x: b.lon, y: b.lat }, ...line) !== undefined;
}

function lineKind(tags: Tags): string | undefined {
  if (/^(river|canal)$/.test(textOf(tags, 'waterway'))) return tags['waterway'];
  return tags['railway'] === 'rail' ? 'railway' : undefined;
}
