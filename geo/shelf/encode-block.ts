import type { BlockContent, BlockNodes, BlockRelation, BlockWays } from './block.ts';
import { Writer } from './bytes.ts';
import { writeText } from './tag-bytes.ts';
import type { TagSets } from './tag-sets.ts';

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

/** In place of a latitude in ten-millionths that is not there. */
export const LACKING = 0x7fffffff;

/** The nodes of a block, their places in ten-millionths of a degree as far as they are whole. */
interface WholeNodes extends Pick<BlockNodes, 'count' | 'id' | 'tagged'> {
  /** LACKING for a node that the source lacks */
  readonly lat7: Int32Array;
  readonly lon7: Int32Array;
  /** degrees of those that are not whole, by place in the list */
  readonly fine: ReadonlyMap<number, FinePlace>;
}

export interface FinePlace {
  readonly lat: number;
  readonly lon: number;
}

/** The content of a block as it is written. */
export interface TileBlock extends Omit<BlockContent, 'sets' | 'nodes'> {
  readonly sets: JoinedSets;
  readonly nodes: WholeNodes;
}

/** The bytes of a block, for `decodeBlock`. The same content gives the same bytes. */
export function encodeBlock({ sets, nodes, ...content }: BlockContent): Uint8Array<ArrayBuffer> {
  const out = new Writer();
  writeBlock({ ...content, sets: joined(sets), nodes: wholeNodes(nodes) }, out);
  return out.done();
}

function joined(sets: TagSets): JoinedSets {
  const start = new Uint32Array(sets.length + 1);
  for (let i = 0; i < sets.length; i++) start[i + 1] = start[i]! + sets.at(i)!.length;
  const bytes = new Uint8Array(start[sets.length]!);
  for (let i = 0; i < sets.length; i++) bytes.set(sets.at(i)!, start[i]);
  return { count: sets.length, bytes, start };
}

function wholeNodes({ count, id, lat, lon, tagged }: BlockNodes): WholeNodes {
  const lat7 = new Int32Array(count);
  const lon7 = new Int32Array(count);
  const fine = new Map<number, FinePlace>();
  for (let i = 0; i < count; i++) {
    lat7[i] = Number.isNaN(lat[i]!) ? LACKING : Math.round(lat[i]! * PER_DEGREE);
    lon7[i] = Math.round(lon[i]! * PER_DEGREE);
    if (lat7[i] !== LACKING && !isWhole(lat[i]!, lon[i]!)) fine.set(i, { lat: lat[i]!, lon: lon[i]! });
  }
  return { count, id, lat7, lon7, fine, tagged };
}

/** Whether dividing whole ten-millionths gives back both degrees to the last bit. */
export function isWhole(lat: number, lon: number): boolean {
  // a zero with a minus sign is another double than what the division of whole numbers gives
  return (
    Object.is((Math.round(lat * PER_DEGREE) | 0) / PER_DEGREE, lat) &&
    Object.is((Math.round(lon * PER_DEGREE) | 0) / PER_DEGREE, lon)
  );
}

/** Writes a block behind what was written before. */
export function writeBlock({ sets, nodes, ways, relations }: TileBlock, out: Writer): void {
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
}

function writeNodes(nodes: WholeNodes, out: Writer): void {
  const { count, id, lat7, lon7, fine, tagged } = nodes;
  out.uint(count);
  out.steps(id, 0, count, 0);
  const lacking: number[] = [];
  for (let i = 0; i < count; i++) if (lat7[i] === LACKING) lacking.push(i);
  out.uint(lacking.length);
  writeSteps(lacking, out);
  out.uint(fine.size === 0 ? PLACES.tenMillionths : PLACES.doubles);
  if (fine.size === 0 && lacking.length === 0) {
    out.steps(lat7, 0, count, 0);
    out.steps(lon7, 0, count, 0);
  } else if (fine.size === 0) writeWholePlaces(nodes, out);
  else writeDoubles(nodes, out);
  out.uint(tagged.node.length);
  writeSteps(tagged.node, out);
  for (const set of tagged.set) out.uint(set);
}

function writeWholePlaces({ count, lat7, lon7 }: WholeNodes, out: Writer): void {
  for (const values of [lat7, lon7])
    for (let i = 0, before = 0; i < count; i++) {
      if (lat7[i] === LACKING) continue;
      out.int(values[i]! - before);
      before = values[i]!;
    }
}

function writeDoubles({ count, lat7, lon7, fine }: WholeNodes, out: Writer): void {
  for (let i = 0; i < count; i++)
    if (lat7[i] !== LACKING) out.double(fine.get(i)?.lat ?? lat7[i]! / PER_DEGREE);
  for (let i = 0; i < count; i++)
    if (lat7[i] !== LACKING) out.double(fine.get(i)?.lon ?? lon7[i]! / PER_DEGREE);
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
    const to = start[way + 1]!;
    out.steps(refs, start[way]!, to, beforeRef);
    if (to > 0) beforeRef = refs[to - 1]!;
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
