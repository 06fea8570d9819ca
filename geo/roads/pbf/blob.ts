import { Refusal } from '../refusal.ts';
import { Cursor, damaged } from './cursor.ts';
import type { Unpack } from './unpack.ts';

/** Maps unpack to some ten times their size. More is made to fill memory and time, not with roads. */
const MOST_UNPACKED = 200;
/** A small block may be all alike. */
const SMALL_BYTES = 1024 * 1024;

/** Limits of the format itself: https://wiki.openstreetmap.org/wiki/PBF_Format#Encoding_OSM_entities_into_fileblocks */
export const HEADER_MAX_BYTES = 64 * 1024;
const BLOB_MAX_BYTES = 32 * 1024 * 1024;

export interface BlobHeader {
  readonly type: 'OSMHeader' | 'OSMData';
  /** bytes of the blob that follows */
  readonly size: number;
}

/** Reads the short header before each blob. Throws a Refusal. */
export function readBlobHeader(bytes: Uint8Array, unpack: Unpack): BlobHeader {
  const cursor = new Cursor(bytes);
  let type = '';
  let size = -1;
  while (cursor.next()) {
    if (cursor.field === 1) type = unpack.text(cursor.view()) ?? '';
    else if (cursor.field === 3) size = cursor.number();
    else cursor.skip();
  }
  // the format would have unknown kinds passed over; none is in use, and a damaged name must not lose its roads
  if (type !== 'OSMHeader' && type !== 'OSMData') throw damaged('a block of no known kind');
  if (size < 0 || size > BLOB_MAX_BYTES)
    throw damaged(`a block said to hold ${size < 0 ? 'nothing' : `${size} bytes, over the format's 32 MB`}`);
  return { type, size };
}

const COMPRESSIONS: Readonly<Record<number, string>> = { 4: 'lzma', 5: 'bzip2', 6: 'lz4', 7: 'zstd' };

/** The content of a blob, inflated. Throws a Refusal. */
export function unpackBlob(bytes: Uint8Array, unpack: Unpack): Uint8Array {
  const cursor = new Cursor(bytes);
  let raw: Uint8Array | undefined;
  let zlib: Uint8Array | undefined;
  let rawSize = -1;
  while (cursor.next()) {
    const { field } = cursor;
    const compression = COMPRESSIONS[field];
    if (field === 1) raw = cursor.view();
    else if (field === 2) rawSize = cursor.number();
    else if (field === 3) zlib = cursor.view();
    else if (compression !== undefined)
      throw new Refusal(
        'map.compression',
        `a block is compressed with ${compression}, which is not read here; rewrite the file with zlib (for instance: osmium cat IN.osm.pbf -o OUT.osm.pbf)`,
      );
    else cursor.skip();
  }
  if (raw && zlib) throw damaged('a block with its content twice');
  if (raw) {
    if (raw.length > BLOB_MAX_BYTES) throw damaged("a block over the format's 32 MB");
    if (rawSize >= 0 && rawSize !== raw.length) throw damaged('a block of another size than it says');
    return raw;
  }
  if (!zlib) throw damaged('a block without content');
  if (rawSize < 0 || rawSize > BLOB_MAX_BYTES) throw damaged('a block whose size is missing or over 32 MB');
  if (rawSize > SMALL_BYTES && rawSize > MOST_UNPACKED * zlib.length)
    throw damaged(`a block that unpacks to over ${MOST_UNPACKED} times its size, which no map does`);
  let inflated: Uint8Array;
  try {
    inflated = unpack.inflate(zlib, rawSize);
  } catch {
    throw damaged('a block that does not decompress');
  }
  if (inflated.length !== rawSize) throw damaged('a block of another size than it says');
  return inflated;
}
