import type { RawWay } from '../sink.ts';
import type { BlockFrame } from './block.ts';
import { type Cursor, damaged } from './cursor.ts';
import { toDegrees } from './degrees.ts';
import { saysDeleted } from './info.ts';
import { newRoom, packedSums, packedUints } from './packed.ts';

const keys = newRoom();
const values = newRoom();
const refs = newRoom();
const lats = newRoom();
const lons = newRoom();

/** Reads one Way message; a deleted way is left out. */
export function readWay(cursor: Cursor, frame: BlockFrame, give: (way: RawWay) => void): void {
  const { strings } = frame;
  let id: number | undefined;
  let keyCount = 0;
  let valueCount = 0;
  let count = 0;
  let latCount = 0;
  let lonCount = 0;
  while (cursor.next()) {
    const { field } = cursor;
    if (field === 1) id = cursor.signed();
    else if (field === 2) keyCount = packedUints(cursor, keys);
    else if (field === 3) valueCount = packedUints(cursor, values);
    else if (field === 4) {
      if (saysDeleted(cursor.inside())) return;
    } else if (field === 8) count = packedSums(cursor, refs);
    else if (field === 9) latCount = packedSums(cursor, lats);
    else if (field === 10) lonCount = packedSums(cursor, lons);
    else cursor.skip();
  }
  if (id === undefined) throw damaged('a way without an id');
  if (keyCount !== valueCount) throw damaged(`way ${id} with a key and no value`);
  if (latCount !== lonCount || (latCount > 0 && latCount !== count))
    throw damaged(`way ${id} with half a place`);
  if (latCount > 0) {
    toDegrees(lats.values, count, frame.granularity, frame.latOffset);
    toDegrees(lons.values, count, frame.granularity, frame.lonOffset);
  }
  give({
    id,
    refs: refs.values,
    count,
    lat: latCount > 0 ? lats.values : undefined,
    lon: latCount > 0 ? lons.values : undefined,
    hasKey(fits) {
      for (let i = 0; i < keyCount; i++) if (fits(strings.get(keys.values[i]!))) return true;
      return false;
    },
    tags: () => strings.tags(keys.values, values.values, keyCount),
  });
}
