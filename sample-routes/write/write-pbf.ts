import { deflateSync } from 'node:zlib';
import { boundsOf, type District, type Node, type Relation, SURVEYED_S, type Way } from '../draw/elements.ts';
import type { Tags } from '../plan/words.ts';
import { Message } from './protobuf.ts';

/** As other writers do: this many elements to a block. */
const BLOCK = 8000;
const MEMBER_TYPES = { node: 0, way: 1, relation: 2 };

/** The district as an OSM PBF file: dense nodes, then ways, then relations, zlib blobs, sorted by type and id. */
export function writePbf(district: District): Uint8Array {
  const blobs = [
    fileBlock('OSMHeader', headerBlock(district)),
    ...chunks(district.nodes).map((nodes) =>
      fileBlock(
        'OSMData',
        primitiveBlock((strings) => dense(nodes, strings)),
      ),
    ),
    ...chunks(district.ways).map((ways) =>
      fileBlock(
        'OSMData',
        primitiveBlock((strings) => wayGroup(ways, strings)),
      ),
    ),
    ...chunks(district.relations).map((relations) =>
      fileBlock(
        'OSMData',
        primitiveBlock((strings) => relationGroup(relations, strings)),
      ),
    ),
  ];
  return Buffer.concat(blobs);
}

function chunks<T>(list: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(list.length / BLOCK) }, (_, i) =>
    list.slice(i * BLOCK, (i + 1) * BLOCK),
  );
}

function fileBlock(type: string, content: Uint8Array): Uint8Array {
  const blob = new Message()
    .integer(2, content.length)
    .raw(3, deflateSync(content, { level: 9 }))
    .finish();
  const header = new Message().text(1, type).integer(3, blob.length).finish();
  const size = Buffer.alloc(4);
  size.writeUInt32BE(header.length);
  return Buffer.concat([size, header, blob]);
}

function headerBlock(district: District): Uint8Array {
  const box = boundsOf(district.nodes);
  const nano = (degrees: number) => Math.round(degrees * 1e7) * 100;
  const bbox = new Message()
    .zigzag(1, nano(box.west))
    .zigzag(2, nano(box.east))
    .zigzag(3, nano(box.north))
    .zigzag(4, nano(box.south));
  return new Message()
    .message(1, bbox)
    .text(4, 'OsmSchema-V0.6')
    .text(4, 'DenseNodes')
    .text(5, 'Sort.Type_then_ID')
    .text(16, 'lanegauge sample-routes')
    .integer(32, SURVEYED_S)
    .finish();
}

/** Strings of one block by number; number 0 is kept empty, as the format asks. */
class Strings {
  readonly list: string[] = [''];
  private readonly numbers = new Map<string, number>();

  number(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    this.numbers.set(text, this.list.length);
    return this.list.push(text) - 1;
  }
}

function primitiveBlock(group: (strings: Strings) => Message): Uint8Array {
  const strings = new Strings();
  const content = group(strings);
  const table = new Message();
  for (const text of strings.list) table.text(1, text);
  return new Message().message(1, table).message(2, content).finish();
}

function dense(nodes: readonly Node[], strings: Strings): Message {
  const grid = (degrees: number) => Math.round(degrees * 1e7);
  const keysValues: number[] = [];
  for (const { tags } of nodes) {
    for (const [key, value] of Object.entries(tags))
      keysValues.push(strings.number(key), strings.number(value));
    keysValues.push(0);
  }
  const inner = new Message()
    .deltas(
      1,
      nodes.map((node) => node.id),
    )
    .deltas(
      8,
      nodes.map((node) => grid(node.lat)),
    )
    .deltas(
      9,
      nodes.map((node) => grid(node.lon)),
    )
    .packed(10, keysValues);
  return new Message().message(2, inner);
}

function tagged(id: number, tags: Tags, strings: Strings): Message {
  const entries = Object.entries(tags);
  return new Message()
    .integer(1, id)
    .packed(
      2,
      entries.map(([key]) => strings.number(key)),
    )
    .packed(
      3,
      entries.map(([, value]) => strings.number(value)),
    );
}

function wayGroup(ways: readonly Way[], strings: Strings): Message {
  const group = new Message();
  for (const way of ways) group.message(3, tagged(way.id, way.tags, strings).deltas(8, way.refs));
  return group;
}

function relationGroup(relations: readonly Relation[], strings: Strings): Message {
  const group = new Message();
  for (const { id, tags, members } of relations)
    group.message(
      4,
      tagged(id, tags, strings)
        .packed(
          8,
          members.map((member) => strings.number(member.role)),
        )
        .deltas(
          9,
          members.map((member) => member.ref),
        )
        .packed(
          10,
          members.map((member) => MEMBER_TYPES[member.type]),
        ),
    );
  return group;
}
