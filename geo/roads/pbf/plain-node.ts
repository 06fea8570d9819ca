import type { NodeBatch } from '../sink.ts';
import { type Cursor, damaged } from './cursor.ts';
import { checkPlaces, toDegrees } from './degrees.ts';
import type { BlockFrame } from './frame.ts';
import { saysDeleted } from './info.ts';
import { newRoom, packedUints } from './packed.ts';

const keys = newRoom();
const values = newRoom();

/** Reads one Node message as a batch of one; a deleted node is left out. */
export function readPlainNode(cursor: Cursor, frame: BlockFrame, give: (batch: NodeBatch) => void): void {
  const id = new Float64Array(1).fill(Number.NaN);
  const lat = new Float64Array(1).fill(Number.NaN);
  const lon = new Float64Array(1).fill(Number.NaN);
  let keyCount = 0;
  let valueCount = 0;
  let deleted = false;
  while (cursor.next()) {
    const { field } = cursor;
    if (field === 1) id[0] = cursor.zigzag();
    else if (field === 2) keyCount = packedUints(cursor, keys);
    else if (field === 3) valueCount = packedUints(cursor, values);
    else if (field === 4) deleted = saysDeleted(cursor.inside());
    else if (field === 8) lat[0] = cursor.zigzag();
    else if (field === 9) lon[0] = cursor.zigzag();
    else cursor.skip();
  }
  if (deleted) return;
  if (Number.isNaN(id[0])) throw damaged('a node without an id');
  if (keyCount !== valueCount) throw damaged(`node ${id[0]} with a key and no value`);
  toDegrees(lat, 1, frame.granularity, frame.latOffset);
  toDegrees(lon, 1, frame.granularity, frame.lonOffset);
  checkPlaces(lat, lon, 1);
  give({
    count: 1,
    id,
    lat,
    lon,
    tags: () => (keyCount > 0 ? frame.strings.tags(keys.values, values.values, keyCount) : undefined),
  });
}
