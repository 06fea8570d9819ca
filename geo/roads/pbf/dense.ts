import { grown } from '../id-table.ts';
import type { Tags } from '../roads.ts';
import { setTag } from '../set-tag.ts';
import type { NodeBatch } from '../sink.ts';
import { type Cursor, damaged } from './cursor.ts';
import { checkPlaces, toDegrees } from './degrees.ts';
import type { PackedList } from './element-head.ts';
import type { BlockFrame } from './frame.ts';
import { newRoom, packedSums, packedUints } from './packed.ts';
import { emptyTable, type StringTable } from './strings.ts';

const ids = newRoom();
const lats = newRoom();
const lons = newRoom();
const keysValues = newRoom();
const visibles = newRoom();

/** Reads a DenseNodes message as one batch. Deleted nodes are left out. */
export function readDense(cursor: Cursor, frame: BlockFrame, give: (batch: NodeBatch) => void): void {
  let count = 0;
  let latCount = 0;
  let lonCount = 0;
  let textCount = 0;
  let visibleCount = 0;
  while (cursor.next()) {
    const { field } = cursor;
    if (field === 1) count = packedSums(cursor, ids);
    else if (field === 5) visibleCount = readVisible(cursor.inside());
    else if (field === 8) latCount = packedSums(cursor, lats);
    else if (field === 9) lonCount = packedSums(cursor, lons);
    else if (field === 10) textCount = packedUints(cursor, keysValues);
    else cursor.skip();
  }
  if (latCount !== count || lonCount !== count) throw damaged('nodes without places');
  if (visibleCount !== 0 && visibleCount !== count) throw damaged('nodes with too few marks');
  const tagStart = textCount > 0 ? startsOf(count, textCount) : undefined;
  toDegrees(lats.values, count, frame.granularity, frame.latOffset);
  toDegrees(lons.values, count, frame.granularity, frame.lonOffset);
  if (visibleCount > 0) count = dropDeleted(count, tagStart);
  checkPlaces(lats.values, lons.values, count);
  give({
    count,
    id: ids.values,
    lat: lats.values,
    lon: lons.values,
    tags: (index) => (tagStart ? tagsAt(tagStart[index]!, frame.strings) : undefined),
    packed: (index) => (tagStart ? packedAt(tagStart[index]!, frame.strings) : undefined),
  });
}

function readVisible(info: Cursor): number {
  let count = 0;
  while (info.next()) {
    if (info.field === 6) count = packedUints(info, visibles);
    else info.skip();
  }
  return count;
}

/** keys_vals holds key, value, key, value, … 0 for each node in turn. */
function startsOf(count: number, textCount: number): Uint32Array {
  const texts = keysValues.values;
  const start = new Uint32Array(count);
  let at = 0;
  for (let i = 0; i < count; i++) {
    start[i] = at;
    while (at < textCount && texts[at] !== 0) at += 2;
    if (at >= textCount) throw damaged('node tags cut off');
    at++;
  }
  if (at !== textCount) throw damaged('more node tags than nodes');
  return start;
}

function tagsAt(start: number, strings: StringTable): Tags | undefined {
  const texts = keysValues.values;
  if (texts[start] === 0) return undefined;
  const tags: Record<string, string> = {};
  for (let at = start; texts[at] !== 0; at += 2)
    setTag(tags, strings.get(texts[at]!), strings.get(texts[at + 1]!));
  return tags;
}

/** Used over and over. */
const packed: PackedList = {
  texts: emptyTable(),
  keys: new Float64Array(64),
  values: new Float64Array(64),
  count: 0,
};

function packedAt(start: number, strings: StringTable): PackedList | undefined {
  const texts = keysValues.values;
  if (texts[start] === 0) return undefined;
  packed.texts = strings;
  packed.count = 0;
  for (let at = start; texts[at] !== 0; at += 2) {
    if (packed.count === packed.keys.length) {
      packed.keys = grown(packed.keys);
      packed.values = grown(packed.values);
    }
    packed.keys[packed.count] = texts[at]!;
    packed.values[packed.count++] = texts[at + 1]!;
  }
  return packed;
}

function dropDeleted(count: number, tagStart: Uint32Array | undefined): number {
  let kept = 0;
  for (let i = 0; i < count; i++) {
    if (visibles.values[i] === 0) continue;
    ids.values[kept] = ids.values[i]!;
    lats.values[kept] = lats.values[i]!;
    lons.values[kept] = lons.values[i]!;
    if (tagStart) tagStart[kept] = tagStart[i]!;
    kept++;
  }
  return kept;
}
