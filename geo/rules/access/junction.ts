import type { Roads } from '../../roads/roads.ts';

/** Radius that finds a node's own segments and no others that matter. Metres. */
const AT_NODE_M = 0.5;

/** Whether more than two roads leave a node: a barrier mapped there may stand on any of them. */
export function isJunction(roads: Roads, node: number): boolean {
  const { lat, lon } = roads.nodes;
  const neighbours = new Set<number>();
  for (const { way, seg } of roads.index.near(lat[node]!, lon[node]!, AT_NODE_M)) {
    const at = roads.ways.start[way]! + seg;
    const a = roads.ways.refs[at]!;
    const b = roads.ways.refs[at + 1]!;
    if (a === node) neighbours.add(b);
    else if (b === node) neighbours.add(a);
  }
  return neighbours.size > 2;
}
