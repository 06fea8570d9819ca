import type { BlockContent, BlockNodes, BlockRelation, BlockWays } from './block.ts';
import { Writer } from './bytes.ts';
import { writeText } from './tag-bytes.ts';

/** How a block's places are written. */
export const PLACES = { tenMillionths: 0, doubles: 1 } as const;
/** Places of OSM are whole ten-millionths of a degree: https://wiki.openstreetmap.org/wiki/Node#Structure */
export const PER_DEGREE = 1e7;

export const MEMBER_TYPES = ['node', 'way', 'relation'] as const;

/** Tag sets one behind the other: set s is bytes[start[s] .. start[s + 1]). */
interface JoinedSets {
  readonly count: number;
  readonly bytes: Uint8Array;
  readonly start: Uint32Array;
}

/** The content of a block with its sets joined. */
export interface TileBlock extends Omit<BlockContent, 'sets'> {
  readonly sets: JoinedSets;
}

/** The bytes of a block, for `decodeBlock`. The same content gives the same bytes. */
export function encodeBlock({ sets, ...content }: BlockContent): Uint8Array<ArrayBuffer> {
  const start = new Uint32Array(sets.length + 1);
  for (const [i, set] of sets.entries()) start[i + 1] = start[i]! + set.length;
  const bytes = new Uint8Array(start[sets.length]!);
  for (const [i, set] of sets.entries()) bytes.set(set, start[i]);
  return encodeJoined({ ...content, sets: { count: sets.length, bytes, start } });
}

/** The same of sets that lie one behind the other. */
export function encodeJoined({ sets, nodes, ways, relations }: TileBlock): Uint8Array<ArrayBuffer> {
  // about what it will be
  const out = new Writer(4096 + sets.start[sets.count]! + nodes.count * 10 + ways.refs.length * 2);
  out.uint(sets.count);
  for (let set = 0; set < sets.count; set++) {
    out.uint(sets.start[set + 1]! - sets.start[set]!);
    out.appendPart(sets.bytes, sets.start[set]!, sets.start[set + 1]!);
  }
  writeNodes(nodes, out);
  writeWays(ways, out);
  out.uint(relations.length);
  let before = 0;
  for (const relation of relations) {
    out.int(relation.id - before);
    before = relation.id;
    writeRelation(relation, out);
  }
  return out.done();
}

function writeNodes(nodes: BlockNodes, out: Writer): void {
  const { count, id, lat, lon, tagged } = nodes;
  out.uint(count);
  for (let i = 0, before = 0; i < count; before = id[i++]!) out.int(id[i]! - before);
  const lacking: number[] = [];
  for (let i = 0; i < count; i++) if (Number.isNaN(lat[i]!)) lacking.push(i);
  out.uint(lacking.length);
  writeSteps(lacking, out);
  const whole = isWhole(lat, count) && isWhole(lon, count);
  out.uint(whole ? PLACES.tenMillionths : PLACES.doubles);
  for (const values of [lat, lon]) {
    let before = 0;
    for (let i = 0; i < count; i++) {
      const value = values[i]!;
      if (Number.isNaN(lat[i]!)) continue;
      if (whole) {
        const units = Math.round(value * PER_DEGREE);
        out.int(units - before);
        before = units;
      } else out.double(value);
    }
  }
  out.uint(tagged.node.length);
  writeSteps(tagged.node, out);
  for (const set of tagged.set) out.uint(set);
}

/** Whether dividing whole ten-millionths gives back every value to the last bit. */
function isWhole(values: Float64Array, count: number): boolean {
  for (let i = 0; i < count; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    // a zero with a minus sign is another double than what the division gives
    if (!Object.is(Math.round(value * PER_DEGREE) / PER_DEGREE, value)) return false;
  }
  return true;
}

/** Ascending numbers as their steps. */
function writeSteps(values: ArrayLike<number>, out: Writer): void {
  for (let i = 0, before = 0; i < values.length; before = values[i++]!) out.uint(values[i]! - before);
}

function writeWays({ count, id, kind, set, start, refs }: BlockWays, out: Writer): void {
  out.uint(count);
  let beforeId = 0;
  let beforeRef = 0;
  for (let way = 0; way < count; way++) {
    out.int(id[way]! - beforeId);
    beforeId = id[way]!;
    out.uint(set[way]! * 4 + kind[way]!);
    out.uint(start[way + 1]! - start[way]!);
    for (let at = start[way]!; at < start[way + 1]!; at++) {
      out.int(refs[at]! - beforeRef);
      beforeRef = refs[at]!;
    }
  }
}

function writeRelation({ set, members }: BlockRelation, out: Writer): void {
  out.uint(set);
  out.uint(members.length);
  let before = 0;
  for (const member of members) {
    out.uint(MEMBER_TYPES.indexOf(member.type));
    writeText(member.role, out);
    out.int(member.id - before);
    before = member.id;
  }
}
