import { MOST_PARTS } from '../most-parts.ts';
import type { RawWay } from '../sink.ts';
import { type Cursor, damaged } from './cursor.ts';
import { toDegrees } from './degrees.ts';
import { ElementHead, type PackedList } from './element-head.ts';
import type { BlockFrame } from './frame.ts';
import { newRoom, packedSums } from './packed.ts';
import { emptyTable, type StringTable } from './strings.ts';

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
  current.strings = strings;
  current.id = id;
  current.refs = refs.values;
  current.count = count;
  current.lat = latCount > 0 ? lats.values : undefined;
  current.lon = latCount > 0 ? lons.values : undefined;
  head.pack(strings, current.packed);
  give(current);
}

/** Handed over for every way: to make another each time costs more than to read it. */
interface CurrentWay extends RawWay {
  strings: StringTable;
  id: number;
  refs: Float64Array;
  count: number;
  lat: Float64Array | undefined;
  lon: Float64Array | undefined;
  readonly packed: PackedList;
}

const NO_STRINGS = emptyTable();

const current: CurrentWay = {
  strings: NO_STRINGS,
  id: Number.NaN,
  refs: refs.values,
  count: 0,
  lat: undefined,
  lon: undefined,
  hasKey: (fits) => head.hasKey(current.strings, fits),
  tags: () => head.tags(current.strings),
  packed: { texts: NO_STRINGS, keys: new Float64Array(0), values: new Float64Array(0), count: 0 },
};
