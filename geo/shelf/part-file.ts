import { Refusal } from '../roads/refusal.ts';
import { FORMAT_VERSION } from './versions.ts';

/*
 * A part file: PART_MAGIC, the blocks, the directory, the meta (JSON, UTF-8), the trailer. The trailer is written
 * last; without it the file is nothing. All numbers are little-endian.
 */

/** First bytes of a part file. */
export const PART_MAGIC: Uint8Array = ascii('LANEGAUGE SHELF\n');
const TRAILER_MAGIC = ascii('WHOLE\n\r\n');
/** magic 8, versions 2 × 4, offsets and lengths 5 × 8, checksums 3 × 4 */
export const TRAILER_BYTES = 68;

/** A block, the directory, the meta: larger ones are neither written nor believed. A continent's directory has a tenth. */
export const SECTION_MOST_BYTES: number = 64 * 1024 * 1024;

/** Where the sections of a part file lie, bytes from its start. */
export interface Trailer {
  readonly choiceVersion: number;
  readonly directory: Section;
  readonly meta: Section;
  /** of the whole file, trailer included */
  readonly fileBytes: number;
}

export interface Section {
  readonly offset: number;
  readonly length: number;
  /** CRC-32 */
  readonly crc: number;
}

/** A checksum of bytes: CRC-32 as in zlib. */
export type Crc = (bytes: Uint8Array) => number;

/** The last bytes of a part file. */
export function encodeTrailer({ choiceVersion, directory, meta, fileBytes }: Trailer, crc: Crc): Uint8Array {
  const bytes = new Uint8Array(TRAILER_BYTES);
  const view = new DataView(bytes.buffer);
  bytes.set(TRAILER_MAGIC, 0);
  view.setUint32(8, FORMAT_VERSION, true);
  view.setUint32(12, choiceVersion, true);
  view.setFloat64(16, directory.offset, true);
  view.setFloat64(24, directory.length, true);
  view.setFloat64(32, meta.offset, true);
  view.setFloat64(40, meta.length, true);
  view.setFloat64(48, fileBytes, true);
  view.setUint32(56, directory.crc, true);
  view.setUint32(60, meta.crc, true);
  view.setUint32(64, crc(bytes.subarray(0, 64)), true);
  return bytes;
}

/** What the last bytes of a part file of this size say. Throws a Refusal where they are no trailer of it. */
export function decodeTrailer(bytes: Uint8Array, fileBytes: number, crc: Crc): Trailer {
  if (bytes.length !== TRAILER_BYTES || !TRAILER_MAGIC.every((byte, i) => bytes[i] === byte))
    throw new Refusal('shelf.damaged', 'its end is missing');
  const view = new DataView(bytes.buffer, bytes.byteOffset, TRAILER_BYTES);
  if (view.getUint32(64, true) !== crc(bytes.subarray(0, 64)))
    throw new Refusal('shelf.damaged', 'its end is damaged');
  const version = view.getUint32(8, true);
  if (version !== FORMAT_VERSION)
    throw new Refusal(
      'shelf.version',
      `it is of format ${version}, and this program reads ${FORMAT_VERSION}`,
    );
  const trailer: Trailer = {
    choiceVersion: view.getUint32(12, true),
    directory: section(view, 16, 56),
    meta: section(view, 32, 60),
    fileBytes: view.getFloat64(48, true),
  };
  if (trailer.fileBytes !== fileBytes)
    throw new Refusal('shelf.damaged', 'it is not as long as it was written');
  for (const { offset, length } of [trailer.directory, trailer.meta])
    if (!(offset >= PART_MAGIC.length && length >= 0 && offset + length <= fileBytes - TRAILER_BYTES))
      throw new Refusal('shelf.damaged', 'its end points outside of it');
  return trailer;
}

function section(view: DataView, at: number, crcAt: number): Section {
  return {
    offset: view.getFloat64(at, true),
    length: view.getFloat64(at + 8, true),
    crc: view.getUint32(crcAt, true),
  };
}

function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, (char) => char.charCodeAt(0));
}
