import { isRestriction } from '../roads/keep.ts';
import type { Tags } from '../roads/roads.ts';
import { mergeTags } from '../roads/set-tag.ts';
import type { MapSink, Member, NodeBatch, RawRelation } from '../roads/sink.ts';
import type { BlockContent, BlockNodes } from './block.ts';
import { decodeTags, hasKeyIn } from './tag-bytes.ts';

/**
 * Tells a sink what some tiles of one part hold, as reading their source would: nodes, then ways, then relations, each
 * once however many tiles hold it. Relations of which each tile has some members are put together again.
 */
export function createReplay(blocks: readonly BlockContent[]): (sink: MapSink) => void {
  const tagsOf = blocks.map(readSets);
  const relations = joinRelations(blocks, tagsOf);
  return (sink) => {
    if (sink.nodes) for (const [i, block] of blocks.entries()) giveNodes(block.nodes, tagsOf[i]!, sink.nodes);
    if (sink.way) giveWays(blocks, tagsOf, sink.way);
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

function giveNodes(nodes: BlockNodes, tagsOf: SetReader, give: (batch: NodeBatch) => void): void {
  const { tagged } = nodes;
  // by place in the list: one more than the set, 0 without
  const setOf = new Uint32Array(nodes.count);
  for (let i = 0; i < tagged.node.length; i++) setOf[tagged.node[i]!] = tagged.set[i]! + 1;
  const there = withPlace(nodes);
  give({
    ...there,
    tags(index) {
      const set = setOf[there.at?.[index] ?? index]!;
      return set === 0 ? undefined : tagsOf(set - 1);
    },
  });
}

/** Nodes without those that the source lacked; `at` is their place in the block's list where that is another. */
function withPlace({ count, id, lat, lon }: BlockNodes): Omit<NodeBatch, 'tags'> & { at?: Uint32Array } {
  let lacking = 0;
  for (let i = 0; i < count; i++) if (Number.isNaN(lat[i]!)) lacking++;
  if (lacking === 0) return { count, id, lat, lon };
  const at = new Uint32Array(count - lacking);
  for (let i = 0, next = 0; i < count; i++) if (!Number.isNaN(lat[i]!)) at[next++] = i;
  const picked = (values: Float64Array) => Float64Array.from(at, (i) => values[i]!);
  return { count: at.length, id: picked(id), lat: picked(lat), lon: picked(lon), at };
}

function giveWays(
  blocks: readonly BlockContent[],
  tagsOf: readonly SetReader[],
  give: NonNullable<MapSink['way']>,
): void {
  const given = new Set<number>();
  let refs = new Float64Array(256);
  for (const [i, { sets, nodes, ways }] of blocks.entries())
    for (let way = 0; way < ways.count; way++) {
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
