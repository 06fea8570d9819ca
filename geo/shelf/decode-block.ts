import { Refusal } from '../roads/refusal.ts';
import type { Member } from '../roads/sink.ts';
import type { BlockContent, BlockNodes, BlockRelation, BlockWays } from './block.ts';
import { Reader, ShortBytes } from './bytes.ts';
import { MEMBER_TYPES, PER_DEGREE, PLACES } from './encode-block.ts';
import { readText } from './tag-bytes.ts';
import { readTagSets } from './tag-sets.ts';

/** Of all that a tile holds relations take the most memory for their bytes; a country's have some thousand members. */
const MEMBERS_MOST = 1 << 20;

/**
 * What `encodeBlock` wrote. Throws a Refusal where the bytes cannot be that; the sets are views of them. Whatever the
 * bytes, what is made of them takes at most some twelve times their room, relations apart.
 */
export function decodeBlock(bytes: Uint8Array): BlockContent {
  try {
    const reader = new Reader(bytes);
    const sets = readTagSets(reader);
    const nodes = readNodes(reader, sets.length);
    const ways = readWays(reader, sets.length, nodes.count);
    const relations = readRelations(reader, sets.length);
    if (reader.pos !== reader.end) throw new ShortBytes();
    return { sets, nodes, ways, relations };
  } catch (thrown) {
    if (thrown instanceof ShortBytes) throw new Refusal('shelf.damaged', 'a block that cannot be read');
    throw thrown;
  }
}

function readNodes(reader: Reader, sets: number): BlockNodes {
  const count = reader.count(2);
  const id = new Float64Array(count);
  for (let i = 0, before = 0; i < count; before = id[i++]!) id[i] = before + reader.int();
  const lacking = readSteps(reader, reader.count(), count);
  const lat = new Float64Array(count);
  const lon = new Float64Array(count);
  for (const node of lacking) {
    lat[node] = Number.NaN;
    lon[node] = Number.NaN;
  }
  const places = reader.uint();
  if (places !== PLACES.tenMillionths && places !== PLACES.doubles) throw new ShortBytes();
  for (const [values, most] of [
    [lat, 90],
    [lon, 180],
  ] as const) {
    let units = 0;
    for (let i = 0; i < count; i++) {
      if (lacking.length > 0 && Number.isNaN(values[i]!)) continue;
      if (places === PLACES.doubles) values[i] = reader.double();
      else {
        units += reader.int();
        values[i] = units / PER_DEGREE;
      }
      if (!(Math.abs(values[i]!) <= most)) throw new ShortBytes();
    }
  }
  const taggedCount = reader.count(2);
  const node = readSteps(reader, taggedCount, count);
  const set = new Uint32Array(taggedCount);
  for (let i = 0; i < taggedCount; i++) set[i] = within(reader.uint(), sets);
  return { count, id, lat, lon, tagged: { node, set } };
}

function readSteps(reader: Reader, count: number, below: number): Uint32Array {
  const values = new Uint32Array(count);
  for (let i = 0, value = 0; i < count; i++) {
    value = within(value + reader.uint(), below);
    values[i] = value;
  }
  return values;
}

function within(value: number, below: number): number {
  if (!(value < below)) throw new ShortBytes();
  return value;
}

function readWays(reader: Reader, sets: number, nodes: number): BlockWays {
  const count = reader.count(3);
  const id = new Float64Array(count);
  const kind = new Uint8Array(count);
  const set = new Uint32Array(count);
  const start = new Uint32Array(count + 1);
  let refs = new Uint32Array(1024);
  let at = 0;
  let beforeId = 0;
  let ref = 0;
  for (let way = 0; way < count; way++) {
    beforeId += reader.int();
    id[way] = beforeId;
    const setAndKind = reader.uint();
    kind[way] = setAndKind % 4;
    set[way] = within(Math.floor(setAndKind / 4), sets);
    const length = reader.count();
    if (at + length > refs.length) refs = longer(refs, at + length);
    for (const end = at + length; at < end; at++) {
      ref += reader.int();
      if (!(ref >= 0)) throw new ShortBytes();
      refs[at] = within(ref, nodes);
    }
    start[way + 1] = at;
  }
  return { count, id, kind, set, start, refs: refs.subarray(0, at) };
}

function longer(values: Uint32Array, least: number): Uint32Array<ArrayBuffer> {
  const larger = new Uint32Array(Math.max(least, values.length * 2));
  larger.set(values);
  return larger;
}

function atMost(count: number): number {
  if (count > MEMBERS_MOST) throw new ShortBytes();
  return count;
}

function readRelations(reader: Reader, sets: number): BlockRelation[] {
  const relations: BlockRelation[] = [];
  const count = atMost(reader.count(3));
  let id = 0;
  let all = 0;
  for (let i = 0; i < count; i++) {
    id += reader.int();
    const set = within(reader.uint(), sets);
    const members: Member[] = [];
    let member = 0;
    let left = reader.count(3);
    all = atMost(all + left);
    for (; left > 0; left--) {
      const type = MEMBER_TYPES[reader.uint()];
      if (type === undefined) throw new ShortBytes();
      const role = readText(reader);
      member += reader.int();
      members.push({ type, id: member, role });
    }
    relations.push({ id, set, members });
  }
  return relations;
}
