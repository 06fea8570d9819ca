import type { NoWayRound } from '../../report/way-round.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Tags } from '../../roads/roads.ts';
import { roadName } from '../../rules/places.ts';
import { RANK, rankOf } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import { listed } from '../../units/text.ts';
import type { Bar } from '../past/bars.ts';
import type { Trip } from '../past/trip.ts';
import { OPEN } from '../price/judged.ts';

/** Roads of this class and above do not end in nothing: where one does, the map ends. */
const LEADS_ON = RANK.tertiary;
/** So many closures are named. */
const MOST_NAMED = 3;

/** Whether some main road of a set ends where no other road is mapped: the border of what is loaded. */
export function meetsBorder({ field }: Trip, edges: ReadonlySet<number>, end: 'out' | 'in'): boolean {
  const { graph, judge } = field.costs;
  for (const directed of edges) {
    const node = end === 'out' ? graph.head[directed]! : graph.tail[directed]!;
    if (graph.outStart[node + 1]! - graph.outStart[node]! > 1) continue;
    if (rankOf(judge.tagsOf(graph.way[directed >> 1]!)['highway']) <= LEADS_ON) return true;
  }
  return false;
}

/** What lies between where the vehicle gets to and where it could go on from. */
export function cutBetween(
  trip: Trip,
  bar: Bar,
  ahead: ReadonlySet<number>,
  behind: ReadonlySet<number>,
): Pick<NoWayRound, 'why' | 'gives'> {
  const closures = closuresBetween(trip, ahead, behind);
  if (closures.length > 0) {
    const named = closures.slice(0, MOST_NAMED).map(({ name }) => name);
    const more = closures.length > MOST_NAMED ? ` and ${closures.length - MOST_NAMED} more` : '';
    return {
      why: `There is none: every road across is closed to this vehicle (${listed(named)}${more}).`,
    };
  }
  const line = lineCrossed(trip, bar);
  if (line !== undefined)
    return { why: `There is none: ${line} lies between, and no other road across it is mapped.` };
  return {
    why: 'There is none: no other road on the map leads from before it to behind it, one-way streets and private ground counted.',
  };
}

interface Closure {
  readonly name: string;
  readonly way: number;
}

/** Closed roads that can be come to, and from whose end the drive could be met again; each way once. */
function closuresBetween(
  { field }: Trip,
  ahead: ReadonlySet<number>,
  behind: ReadonlySet<number>,
): Closure[] {
  const { costs } = field;
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

function leadsTo(graph: Trip['field']['costs']['graph'], edge: number, behind: ReadonlySet<number>): boolean {
  const node = graph.head[edge]!;
  if (behind.has(edge)) return true;
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++)
    if (behind.has(graph.out[i]!)) return true;
  return false;
}

function nameOf(tags: Tags): string {
  return roadName(tags) ?? `a ${(tags['highway'] ?? 'road').replaceAll('_', ' ')} without a name`;
}

/** A river or a railway that the straight line past the bar crosses, by name. */
function lineCrossed({ input, steps, field }: Trip, bar: Bar): string | undefined {
  const { roads } = input.check;
  const before = steps.findLast(({ toM }) => toM <= bar.fromM + 1);
  const after = steps.find(({ fromM }) => fromM >= bar.toM - 1);
  if (before === undefined || after === undefined) return undefined;
  const a = field.costs.judge.placeOf(field.costs.graph.head[before.directed]!);
  const b = field.costs.judge.placeOf(field.costs.graph.tail[after.directed]!);
  const [south, north] = [Math.min(a.lat, b.lat), Math.max(a.lat, b.lat)];
  const [west, east] = [Math.min(a.lon, b.lon), Math.max(a.lon, b.lon)];
  for (const { way } of roads.index.inBox(south, west, north, east, 'around')) {
    const tags = mappedOn(roads, way);
    const kind = lineKind(tags);
    if (kind !== undefined) return tags['name'] === undefined ? `a ${kind}` : `${tags['name']} (a ${kind})`;
  }
  return undefined;
}

function lineKind(tags: Tags): string | undefined {
  if (/^(river|canal)$/.test(textOf(tags, 'waterway'))) return tags['waterway'];
  return tags['railway'] === 'rail' ? 'railway' : undefined;
}
