import type { MapSink } from '../sink.ts';
import { Cursor, damaged } from './cursor.ts';
import { readDense } from './dense.ts';
import type { BlockFrame } from './frame.ts';
import { readPlainNode } from './plain-node.ts';
import { readRelation } from './relation.ts';
import { StringTable } from './strings.ts';
import type { Unpack } from './unpack.ts';
import { readWay } from './way.ts';

/** Hands every element of one PrimitiveBlock to the sink. Throws a Refusal where the block is damaged. */
export function readBlock(bytes: Uint8Array, unpack: Unpack, sink: MapSink): void {
  let strings: StringTable | undefined;
  let granularity = 100;
  let latOffset = 0;
  let lonOffset = 0;
  const cursor = new Cursor(bytes);
  while (cursor.next()) {
    const { field } = cursor;
    if (field === 1) strings = new StringTable(cursor.inside(), unpack);
    else if (field === 17) granularity = cursor.signed();
    else if (field === 19) latOffset = cursor.signed();
    else if (field === 20) lonOffset = cursor.signed();
    else cursor.skip();
  }
  if (!strings) throw damaged('a block without texts');
  if (granularity <= 0) throw damaged('a block with coordinates of no size');
  const frame = { strings, granularity, latOffset, lonOffset };
  // from the start again, as the texts may stand behind what uses them; to keep millions of groups would cost more
  const groups = new Cursor(bytes);
  while (groups.next()) {
    if (groups.field === 2) readGroup(groups.inside(), frame, sink);
    else groups.skip();
  }
}

function readGroup(group: Cursor, frame: BlockFrame, sink: MapSink): void {
  while (group.next()) {
    const { field } = group;
    if (field === 1 && sink.nodes) readPlainNode(group.inside(), frame, sink.nodes);
    else if (field === 2 && sink.nodes) readDense(group.inside(), frame, sink.nodes);
    else if (field === 3 && sink.way) readWay(group.inside(), frame, sink.way);
    else if (field === 4 && sink.relation) readRelation(group.inside(), frame, sink.relation);
    else group.skip();
  }
}
