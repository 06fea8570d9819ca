import { BoxMaker } from '../roads/box.ts';
import { isArea, mayReachFar, mayStand } from '../roads/keep.ts';
import { type Mask, WITHIN } from '../roads/mask.ts';
import { WAY_KIND } from '../roads/roads.ts';
import type { BlockContent } from './block.ts';
import { decodeTags, hasKeyIn } from './tag-bytes.ts';
import type { TagSets } from './tag-sets.ts';

/** What of a tile a drive may need. */
export interface Needed {
  /** places of ways in the tile's list, ascending */
  readonly ways: readonly number[];
  /** by place in the tile's list of nodes: 1 where one is needed */
  readonly nodes: Uint8Array;
  readonly nodeCount: number;
}

interface Asked {
  readonly mask: Mask;
  /** how close a road must come, of WITHIN */
  readonly least: number;
  /** ids of ways that areas are made of: all of them or none */
  readonly edges: ReadonlySet<number>;
}

/** Longer segments, in degrees both ways together, may pass close by though neither of their ends lies there. */
const LONG_DEG = 0.004;

/**
 * What of the tiles of one part a drive may need, so that the rest need not be told: ways with a node within reach,
 * those that matter from farther off, edges of areas, each with its nodes, and nodes that stand for themselves.
 * @param roads only those roads that come close to the drive, or all within reach. One that lacks a node is told
 * whichever it is, so that roads cut at the edge of a map are counted alike.
 */
export function neededOf(
  blocks: readonly BlockContent[],
  mask: Mask,
  roads: 'close' | 'reach',
): readonly Needed[] {
  const asked = { mask, least: WITHIN[roads], edges: edgesOfAreas(blocks) };
  return blocks.map((block) => neededOfBlock(block, asked));
}

function edgesOfAreas(blocks: readonly BlockContent[]): Set<number> {
  const edges = new Set<number>();
  for (const { relations, sets } of blocks)
    for (const { set, members } of relations)
      if (isArea(decodeTags(sets.at(set)!))) for (const { id } of members) edges.add(id);
  return edges;
}

function neededOfBlock(block: BlockContent, { mask, least, edges }: Asked): Needed {
  const { nodes, ways, sets } = block;
  const within = new Uint8Array(nodes.count);
  for (let i = 0; i < nodes.count; i++) within[i] = mask.within(nodes.lat[i]!, nodes.lon[i]!);
  const reachesFar = oncePerSet(sets, mayReachFar);
  const needed: number[] = [];
  const used = new Uint8Array(nodes.count);
  for (let way = 0; way < ways.count; way++) {
    const from = ways.start[way]!;
    const to = ways.start[way + 1]!;
    let closest = 0;
    for (let at = from; at < to; at++) {
      const here = within[ways.refs[at]!]!;
      if (here > closest) closest = here;
    }
    const enough = ways.kind[way] === WAY_KIND.road ? least : WITHIN.reach;
    const isNeeded =
      closest >= enough ||
      edges.has(ways.id[way]!) ||
      reachesFar(ways.set[way]!) ||
      (closest > 0 && passesClose(block, mask, from, to));
    if (!isNeeded) continue;
    needed.push(way);
    for (let at = from; at < to; at++) used[ways.refs[at]!] = 1;
  }
  const mayStandAlone = oncePerSet(sets, mayStand);
  const { node, set } = nodes.tagged;
  for (let i = 0; i < node.length; i++)
    if (within[node[i]!]! > 0 && mayStandAlone(set[i]!)) used[node[i]!] = 1;
  let nodeCount = 0;
  for (let i = 0; i < used.length; i++) nodeCount += used[i]!;
  return { ways: needed, nodes: used, nodeCount };
}

/** Whether a long segment of a way comes close by, or a node is lacking, so that nobody can tell. */
function passesClose({ nodes: { lat, lon }, ways }: BlockContent, mask: Mask, from: number, to: number) {
  for (let at = from; at < to; at++) {
    const b = ways.refs[at]!;
    if (Number.isNaN(lat[b]!)) return true;
    if (at === from) continue;
    const a = ways.refs[at - 1]!;
    if (Math.abs(lat[a]! - lat[b]!) + Math.abs(lon[a]! - lon[b]!) < LONG_DEG) continue;
    const maker = new BoxMaker();
    maker.add(lat[a]!, lon[a]!);
    maker.add(lat[b]!, lon[b]!);
    const box = maker.box();
    if (box !== undefined && mask.meets(box, 'close')) return true;
  }
  return false;
}

/** Whether any key of a set fits, asked when it is first wanted. */
function oncePerSet(sets: TagSets, fits: (key: string) => boolean): (set: number) => boolean {
  const known = new Int8Array(sets.length);
  return (set) => {
    if (known[set] === 0) known[set] = hasKeyIn(sets.at(set)!, fits) ? 1 : -1;
    return known[set] === 1;
  };
}
