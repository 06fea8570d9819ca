import { MOST_PARTS } from '../most-parts.ts';
import type { RawWay } from '../sink.ts';
import { type Cursor, damaged } from './cursor.ts';
import { toDegrees } from './degrees.ts';
import { ElementHead } from './element-head.ts';
import type { BlockFrame } from './frame.ts';
import { newRoom, packedSums } from './packed.ts';

const head = new ElementHead();
const refs = newRoom();
const lats = newRoom();
const lons = newRoom();

/** Reads one Way message; a deleted way is left out. */
export function readWay(cursor: Cursor, frame: BlockFrame, give: (way: RawWay) => void): void {
  const { strings } = frame;
  let count = 0;
  let latCount = 0;
  let lonCount = 0;
  head.clear();
  while (cursor.next()) {
    const { field } = cursor;
    if (head.take(cursor)) {
      if (head.deleted) return;
    } else if (field === 8) count = packedSums(cursor, refs, MOST_PARTS);
    else if (field === 9) latCount = packedSums(cursor, lats);
    else if (field === 10) lonCount = packedSums(cursor, lons);
    else cursor.skip();
  }
  head.check('way');
  const { id } = head;
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
    hasKey: (fits) => head.hasKey(strings, fits),
    tags: () => head.tags(strings),
  });
}
