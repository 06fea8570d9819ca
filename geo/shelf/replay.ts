import { isRestriction } from '../roads/keep.ts';
import type { Tags } from '../roads/roads.ts';
import { mergeTags } from '../roads/set-tag.ts';
import type { MapSink, Member, NodeBatch, RawRelation } from '../roads/sink.ts';
import type { BlockContent, BlockNodes } from './block.ts';
import type { Needed } from './needed.ts';
import { decodeTags, hasKeyIn } from './tag-bytes.ts';

/**
 * Tells a sink what some tiles of one part hold, as reading their source would: nodes, then ways, then relations, each
 * once however many tiles hold it. Relations of which each tile has some members are put together again.
 * @param needed of each tile what is to be told of its nodes and ways; all of it where left out
 */
export function createReplay(
  blocks: readonly BlockContent[],
  needed?: readonly Needed[],
): (sink: MapSink) => void {
  const tagsOf = blocks.map(readSets);
  const nodes = whenAsked(() => blocks.map((block, i) => told(block.nodes, needed?.[i])));
  const relations = joinRelations(blocks, tagsOf);
  return (sink) => {
    if (sink.nodes) for (const [i, each] of nodes().entries()) giveNodes(each, tagsOf[i]!, sink.nodes);
    if (sink.way) giveWays(blocks, tagsOf, sink.way, needed);
    if (sink.relation) for (const relation of relations) sink.relation(relation);
  };
}

type SetReader = (set: number) => Tags;

/** Each set is decoded when it is first asked for. */
function readSets({ sets }: BlockContent): SetReader {
  const known: (Tags | undefined)[] = new Array(sets.length);
  return (set) => {
    const there = known[set];
    if (there !== undefined) return there;
    const tags = decodeTags(sets.at(set)!);
    known[set] = tags;
    return tags;
  };
}

/** What is told of a tile's nodes. */
interface ToldNodes extends Omit<NodeBatch, 'tags'> {
  /** by place: one more than the set, 0 without tags */
  readonly setOf: Uint32Array;
}

function giveNodes(nodes: ToldNodes, tagsOf: SetReader, give: (batch: NodeBatch) => void): void {
  const { setOf } = nodes;
  give({
    ...nodes,
    tags(index) {
      const set = setOf[index]!;
      return set === 0 ? undefined : tagsOf(set - 1);
    },
  });
}

/** Nodes that are needed, without those that the source lacked. */
function told({ count, id, lat, lon, tagged }: BlockNodes, needed?: Needed): ToldNodes {
  const setOf = new Uint32Array(count);
  for (let i = 0; i < tagged.node.length; i++) setOf[tagged.node[i]!] = tagged.set[i]! + 1;
  const at = new Uint32Array(count);
  let kept = 0;
  for (let i = 0; i < count; i++) {
    if (needed !== undefined && needed.nodes[i] === 0) continue;
    if (!Number.isNaN(lat[i]!)) at[kept++] = i;
  }
  if (kept === count) return { count, id, lat, lon, setOf };
  const picked = <T extends Float64Array | Uint32Array>(from: T, into: T): T => {
    for (let i = 0; i < kept; i++) into[i] = from[at[i]!]!;
    return into;
  };
  return {
    count: kept,
    id: picked(id, new Float64Array(kept)),
    lat: picked(lat, new Float64Array(kept)),
    lon: picked(lon, new Float64Array(kept)),
    setOf: picked(setOf, new Uint32Array(kept)),
  };
}

function whenAsked<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

function giveWays(
  blocks: readonly BlockContent[],
  tagsOf: readonly SetReader[],
  give: NonNullable<MapSink['way']>,
  needed?: readonly Needed[],
): void {
  const given = new Set<number>();
  let refs = new Float64Array(256);
  for (const [i, { sets, nodes, ways }] of blocks.entries()) {
    const told = needed?.[i]?.ways;
    for (let next = 0; next < (told?.length ?? ways.count); next++) {
      const way = told?.[next] ?? next;
      const id = ways.id[way]!;
      if (given.has(id)) continue;
      given.add(id);
      const from = ways.start[way]!;
      const count = ways.start[way + 1]! - from;
      if (count > refs.length) refs = new Float64Array(2 * count);
      for (let at = 0; at < count; at++) refs[at] = nodes.id[ways.refs[from + at]!]!;
      const set = ways.set[way]!;
      give({
        id,
        refs,
        count,
        hasKey: (fits) => hasKeyIn(sets.at(set)!, fits),
        tags: () => tagsOf[i]!(set),
      });
    }
  }
}

/** A restriction stands whole in each tile; of others, such as areas, each has the members that are in it. */
function joinRelations(blocks: readonly BlockContent[], tagsOf: readonly SetReader[]): RawRelation[] {
  const byId = new Map<number, { tags: Tags; members: Member[]; known: Set<string> }>();
  for (const [i, { relations }] of blocks.entries())
    for (const { id, set, members } of relations) {
      const there = byId.get(id);
      if (there !== undefined && isRestriction(there.tags)) continue;
      // tags of its own: by them the edges of one area are known from another's
      const whole = there ?? { tags: mergeTags([tagsOf[i]!(set)]), members: [], known: new Set<string>() };
      if (there === undefined) byId.set(id, whole);
      for (const member of members) {
        const key = `${member.type} ${member.id} ${member.role}`;
        if (whole.known.has(key) && there !== undefined) continue;
        whole.known.add(key);
        whole.members.push(member);
      }
    }
  return [...byId]
    .sort(([a], [b]) => a - b)
    .map(([id, { tags, members }]) => ({ id, tags, members: () => members }));
}
