import { counted } from '../units/text.ts';
import type { KeptWay, RoadCollector } from './road-collector.ts';
import { type MapSource, type Roads, type Tags, WAY_KIND } from './roads.ts';
import { segmentIndexWhenAsked } from './segment-index.ts';

/**
 * Packs what was collected into Roads: nodes and ways in order of id, whatever order the files had.
 * A way is cut where a node is missing; a single node left of it is dropped.
 */
export function assembleRoads(
  collector: RoadCollector,
  sources: readonly MapSource[],
  said: Pick<Roads, 'notes' | 'incomplete'>,
): Roads {
  const kept = collector.waysWithinReach().sort((a, b) => a.id - b.id || a.kind - b.kind);
  const { ways, lacking } = packWays(collector, kept);
  const nodes = packNodes(collector, ways.refs);
  const lost = lostNotes(lacking);
  const driven = new Set(kept.filter(isDriven).map((way) => way.id));
  const restrictions = [...collector.restrictions.values()]
    .filter(({ from, to }) => from.some((id) => driven.has(id)) || to.some((id) => driven.has(id)))
    .sort((a, b) => a.id - b.id);
  return {
    nodes,
    ways,
    restrictions,
    index: segmentIndexWhenAsked(nodes, ways),
    sources,
    notes: [...said.notes, ...cutNotes(lacking), ...lost, ...differingNotes(collector.differing.size)],
    incomplete: [...(said.incomplete ?? []), ...lost, ...contradictionNotes(kept, collector.contradicted)],
  };
}

function isDriven(way: KeptWay): boolean {
  return way.kind !== WAY_KIND.around;
}

/** How many driven ways lack some of their nodes, and how many all. */
interface Lacking {
  some: number;
  all: number;
}

/** Ways with refs as places in the collected list of nodes; `packNodes` turns them into final ones. */
function packWays(
  collector: RoadCollector,
  kept: readonly KeptWay[],
): { ways: Roads['ways']; lacking: Lacking } {
  const refs = new Uint32Array(kept.reduce((sum, way) => sum + way.refs.length, 0));
  const lacking: Lacking = { some: 0, all: 0 };
  const pieces: KeptWay[] = [];
  const start = [0];
  let at = 0;
  for (const way of kept) {
    let missing = 0;
    let from = at;
    const endPiece = () => {
      if (at - from < 2) at = from;
      else {
        pieces.push(way);
        start.push(at);
      }
      from = at;
    };
    for (let i = 0; i < way.refs.length; i++) {
      const node = collector.nodes.indexOf(way.refs[i]!);
      if (node >= 0) refs[at++] = node;
      else {
        missing++;
        endPiece();
      }
    }
    endPiece();
    if (missing > 0 && isDriven(way)) lacking[missing === way.refs.length ? 'all' : 'some']++;
  }
  const ways = {
    count: pieces.length,
    id: Float64Array.from(pieces, (way) => way.id),
    start: Uint32Array.from(start),
    refs: refs.slice(0, at),
    kind: Uint8Array.from(pieces, (way) => way.kind),
    tags: pieces.map((way) => way.tags),
  };
  return { ways, lacking };
}

/** Nodes that ways use or that stand for themselves, in order of id; rewrites `refs` to their places. */
function packNodes(collector: RoadCollector, refs: Uint32Array): Roads['nodes'] {
  const { ids, count } = collector.nodes;
  const used = new Uint8Array(count);
  for (let at = 0; at < refs.length; at++) used[refs[at]!] = 1;
  for (const node of collector.nodeTags.keys()) if (collector.stands(node)) used[node] = 1;
  const usedIds = new Float64Array(count);
  let usedCount = 0;
  for (let node = 0; node < count; node++) if (used[node] === 1) usedIds[usedCount++] = ids[node]!;
  const id = usedIds.slice(0, usedCount);
  // as numbers, and each is looked up again: many times faster than sorting places by what they hold
  id.sort();
  const order = new Uint32Array(id.length);
  for (let at = 0; at < id.length; at++) order[at] = collector.nodes.indexOf(id[at]!);
  const place = new Uint32Array(count);
  const tags = new Map<number, Tags>();
  for (let at = 0; at < order.length; at++) {
    const node = order[at]!;
    place[node] = at;
    const nodeTags = collector.nodeTags.get(node);
    if (nodeTags) tags.set(at, nodeTags);
  }
  for (let at = 0; at < refs.length; at++) refs[at] = place[refs[at]!]!;
  return {
    count: order.length,
    id,
    lat: picked(collector.lat, order),
    lon: picked(collector.lon, order),
    tags,
  };
}

function picked(values: Float64Array, order: Uint32Array): Float64Array {
  const out = new Float64Array(order.length);
  for (let i = 0; i < order.length; i++) out[i] = values[order[i]!]!;
  return out;
}

function cutNotes({ some }: Lacking): string[] {
  if (some === 0) return [];
  return [
    some === 1
      ? '1 road lacks some of its nodes in the map files and is cut there, as at the edge of an extract.'
      : `${some} roads lack some of their nodes in the map files and are cut there, as at the edge of an extract.`,
  ];
}

function lostNotes({ all }: Lacking): string[] {
  if (all === 0) return [];
  return [
    `The map files hold none of the nodes of ${all === 1 ? '1 road, which is' : `${all} roads, which are`} missing from the map. Ask Overpass for "(._;>;); out body;", or use a complete extract.`,
  ];
}

function differingNotes(count: number): string[] {
  if (count === 0) return [];
  return [
    `The map files differ in ${counted(count, 'node or road', 'nodes or roads')} that several of them hold: they may be of different dates. The fuller or first one is used.`,
  ];
}

/** Where files contradict each other nobody here can tell which is right: that is said with the verdict. */
function contradictionNotes(kept: readonly KeptWay[], contradicted: ReadonlySet<number>): string[] {
  const ids = new Set(kept.filter((way) => isDriven(way) && contradicted.has(way.id)).map((way) => way.id));
  const [first] = ids;
  if (first === undefined) return [];
  return [
    `The map files say different things of ${ids.size === 1 ? `one road (way ${first})` : `${ids.size} roads (way ${first} first)`}: what only one of them says is taken in, and where they contradict each other one was chosen. Check again with the newest file alone.`,
  ];
}
