import type { Gather, KeptWay } from './gather.ts';
import { type MapSource, type Roads, type Tags, WAY_KIND } from './roads.ts';
import { buildSegmentIndex } from './segment-index.ts';

/**
 * Packs what was gathered into Roads: nodes and ways in order of id, whatever order the files had.
 * A way is cut where a node is missing; what is left of it with a single node is dropped.
 */
export function assembleRoads(
  gather: Gather,
  sources: readonly MapSource[],
  notes: readonly string[],
): Roads {
  const kept = gather.keptWays().sort((a, b) => a.id - b.id || a.kind - b.kind);
  const pieces = kept.flatMap((way) => cutAtMissing(gather, way));
  const { nodes, newIndex } = packNodes(gather, pieces);
  const ways = packWays(pieces, newIndex);
  const driven = new Set(kept.filter((way) => way.kind !== WAY_KIND.around).map((way) => way.id));
  const restrictions = [...gather.restrictions.values()]
    .filter(({ from, to }) => [...from, ...to].some((id) => driven.has(id)))
    .sort((a, b) => a.id - b.id);
  return {
    nodes,
    ways,
    restrictions,
    index: buildSegmentIndex(nodes, ways),
    sources,
    notes: [...notes, ...notesOf(gather, kept, pieces)],
  };
}

/** A run of a way whose nodes are all there, as places in the gathered node list. */
interface Piece {
  readonly way: KeptWay;
  readonly nodes: readonly number[];
}

function cutAtMissing(gather: Gather, way: KeptWay): Piece[] {
  const runs: number[][] = [[]];
  for (const ref of way.refs) {
    const index = gather.nodes.indexOf(ref);
    if (index < 0) runs.push([]);
    else runs.at(-1)?.push(index);
  }
  return runs.filter((run) => run.length > 1).map((nodes) => ({ way, nodes }));
}

function packNodes(gather: Gather, pieces: readonly Piece[]) {
  const used = new Uint8Array(gather.nodes.count);
  for (const { nodes } of pieces) for (const node of nodes) used[node] = 1;
  for (const node of gather.nodeTags.keys()) if (gather.stands(node)) used[node] = 1;
  const { ids } = gather.nodes;
  const order: number[] = [];
  for (let i = 0; i < used.length; i++) if (used[i] === 1) order.push(i);
  order.sort((a, b) => (ids[a] as number) - (ids[b] as number));
  const newIndex = new Uint32Array(gather.nodes.count);
  const tags = new Map<number, Tags>();
  for (const [index, old] of order.entries()) {
    newIndex[old] = index;
    const nodeTags = gather.nodeTags.get(old);
    if (nodeTags) tags.set(index, nodeTags);
  }
  const pick = (values: Float64Array) => Float64Array.from(order, (old) => values[old] as number);
  const nodes = { count: order.length, id: pick(ids), lat: pick(gather.lat), lon: pick(gather.lon), tags };
  return { nodes, newIndex };
}

function packWays(pieces: readonly Piece[], newIndex: Uint32Array): Roads['ways'] {
  const start = new Uint32Array(pieces.length + 1);
  for (const [i, { nodes }] of pieces.entries()) start[i + 1] = (start[i] as number) + nodes.length;
  const refs = new Uint32Array(start[pieces.length] as number);
  let next = 0;
  for (const { nodes } of pieces) for (const node of nodes) refs[next++] = newIndex[node] as number;
  return {
    count: pieces.length,
    id: Float64Array.from(pieces, ({ way }) => way.id),
    start,
    refs,
    kind: Uint8Array.from(pieces, ({ way }) => way.kind),
    tags: pieces.map(({ way }) => way.tags),
  };
}

function notesOf(gather: Gather, kept: readonly KeptWay[], pieces: readonly Piece[]): string[] {
  const whole = new Set(
    pieces.filter(({ way, nodes }) => nodes.length === way.refs.length).map(({ way }) => way),
  );
  const cut = kept.filter((way) => way.kind !== WAY_KIND.around && !whole.has(way)).length;
  const notes: string[] = [];
  if (cut > 0)
    notes.push(
      `${cut} ${cut === 1 ? 'road lacks some of its nodes' : 'roads lack some of their nodes'} in the map files and ${cut === 1 ? 'is' : 'are'} cut there, as at the edge of an extract.`,
    );
  if (gather.differing.size > 0)
    notes.push(
      `The map files differ in ${gather.differing.size} nodes or roads that several of them hold: they may be of different dates. The fuller or first one is used.`,
    );
  return notes;
}
