import type { Tags } from '../roads/roads.ts';
import type { BlockContent } from './block.ts';
import { decodeTags } from './tag-bytes.ts';

/** A block without the ways of some tags and without the nodes that then nobody uses; its relations stay. */
export function withoutWays(block: BlockContent, drops: (tags: Tags) => boolean): BlockContent {
  const { sets, nodes, ways } = block;
  const dropped = Array.from({ length: sets.length }, (_, set) => drops(decodeTags(sets.at(set)!)));
  if (!dropped.includes(true)) return block;
  const kept: number[] = [];
  for (let way = 0; way < ways.count; way++) if (dropped[ways.set[way]!] !== true) kept.push(way);
  const used = new Uint8Array(nodes.count);
  for (const node of nodes.tagged.node) used[node] = 1;
  for (const way of kept)
    for (let at = ways.start[way]!; at < ways.start[way + 1]!; at++) used[ways.refs[at]!] = 1;
  const nodeAt: number[] = [];
  const place = new Uint32Array(nodes.count);
  for (let node = 0; node < nodes.count; node++) {
    if (used[node] === 0) continue;
    place[node] = nodeAt.length;
    nodeAt.push(node);
  }
  const start = new Uint32Array(kept.length + 1);
  const refs: number[] = [];
  for (const [i, way] of kept.entries()) {
    for (let at = ways.start[way]!; at < ways.start[way + 1]!; at++) refs.push(place[ways.refs[at]!]!);
    start[i + 1] = refs.length;
  }
  return {
    ...block,
    nodes: {
      count: nodeAt.length,
      id: Float64Array.from(nodeAt, (node) => nodes.id[node]!),
      lat: Float64Array.from(nodeAt, (node) => nodes.lat[node]!),
      lon: Float64Array.from(nodeAt, (node) => nodes.lon[node]!),
      tagged: { node: Uint32Array.from(nodes.tagged.node, (node) => place[node]!), set: nodes.tagged.set },
    },
    ways: {
      count: kept.length,
      id: Float64Array.from(kept, (way) => ways.id[way]!),
      kind: Uint8Array.from(kept, (way) => ways.kind[way]!),
      set: Uint32Array.from(kept, (way) => ways.set[way]!),
      start,
      refs: Uint32Array.from(refs),
    },
  };
}
