import { readRestriction } from '../../graph/read-restriction.ts';
import { append } from '../../lists.ts';
import type { Roads, TurnRestriction } from '../../roads/roads.ts';

/** A place in the trie of way sequences that restrictions begin with. */
export interface WordNode {
  readonly depth: number;
  readonly next: Map<number, WordNode>;
  /** the longest shorter sequence that ends the same; undefined at the root */
  fallBack: WordNode | undefined;
  /** restrictions whose `from` and `via` ways have all been driven, those of shorter sequences included */
  readonly complete: TurnRestriction[];
}

/** Restrictions by way(s), as sequences of OSM way ids. */
export interface WayWords {
  readonly root: WordNode;
  /** sequences of two ways and more, by their last way */
  readonly longByWay: ReadonlyMap<number, readonly WordNode[]>;
}

/** More orders of one restriction's `via` ways than this are not mapped in earnest. */
const MOST_ORDERS = 24;

/**
 * The trie of all restrictions by way, with fall-back links (Aho and Corasick 1975), so that one restriction never
 * hides another. A restriction's `via` ways come in no order: every order in which they join is laid in.
 */
export function wayWords(roads: Roads): WayWords {
  const root = newNode(0);
  const longByWay = new Map<number, WordNode[]>();
  const byWays = roads.restrictions.filter(
    (restriction) => restriction.viaWays.length > 0 && readRestriction(restriction) !== undefined,
  );
  const nodesOf = nodesOfWays(roads, new Set(byWays.flatMap(({ from, viaWays }) => [...from, ...viaWays])));
  for (const restriction of byWays)
    for (const from of new Set(restriction.from))
      for (const order of orders(from, new Set(restriction.viaWays), nodesOf))
        lay(root, [from, ...order], longByWay).complete.push(restriction);
  linkBack(root);
  return { root, longByWay };
}

function newNode(depth: number): WordNode {
  return { depth, next: new Map(), fallBack: undefined, complete: [] };
}

function lay(root: WordNode, word: readonly number[], longByWay: Map<number, WordNode[]>): WordNode {
  let at = root;
  for (const way of word) {
    let below = at.next.get(way);
    if (below === undefined) {
      below = newNode(at.depth + 1);
      at.next.set(way, below);
      if (below.depth > 1) longByWay.set(way, [...(longByWay.get(way) ?? []), below]);
    }
    at = below;
  }
  return at;
}

/** Breadth first, so that a shorter sequence is linked before the longer ones that fall back to it. */
function linkBack(root: WordNode): void {
  const row = [root];
  for (const at of row)
    for (const [way, below] of at.next) {
      below.fallBack = at === root ? root : advance(at.fallBack ?? root, way);
      append(below.complete, below.fallBack.complete);
      row.push(below);
    }
}

/** The place after one more way. */
export function advance(from: WordNode, way: number): WordNode {
  for (let at: WordNode | undefined = from; at !== undefined; at = at.fallBack) {
    const below = at.next.get(way);
    if (below !== undefined) return below;
    if (at.fallBack === undefined) return at;
  }
  return from;
}

/** Orders of the via ways in which each joins the one before. */
function orders(
  from: number,
  vias: ReadonlySet<number>,
  nodesOf: ReadonlyMap<number, ReadonlySet<number>>,
): number[][] {
  const found: number[][] = [];
  const go = (last: number, soFar: readonly number[]) => {
    if (found.length >= MOST_ORDERS) return;
    if (soFar.length === vias.size) {
      found.push([...soFar]);
      return;
    }
    for (const via of vias) if (!soFar.includes(via) && joins(nodesOf, last, via)) go(via, [...soFar, via]);
  };
  go(from, []);
  return found;
}

function joins(nodesOf: ReadonlyMap<number, ReadonlySet<number>>, a: number, b: number): boolean {
  const [ofA, ofB] = [nodesOf.get(a), nodesOf.get(b)];
  if (ofA === undefined || ofB === undefined) return false;
  for (const node of ofA) if (ofB.has(node)) return true;
  return false;
}

/** Node indices of ways by OSM id; a way cut at the edge of the map is one here. */
function nodesOfWays({ ways }: Roads, wanted: ReadonlySet<number>): Map<number, Set<number>> {
  const nodes = new Map<number, Set<number>>();
  if (wanted.size === 0) return nodes;
  for (let way = 0; way < ways.count; way++) {
    const id = ways.id[way]!;
    if (!wanted.has(id)) continue;
    const known = nodes.get(id) ?? new Set<number>();
    for (let at = ways.start[way]!; at < ways.start[way + 1]!; at++) known.add(ways.refs[at]!);
    nodes.set(id, known);
  }
  return nodes;
}
