import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { Refusal } from '../../../geo/roads/refusal.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { decodeBlock } from '../../../geo/shelf/decode-block.ts';
import { type Directory, decodeDirectory, findBlock } from '../../../geo/shelf/directory.ts';
import { LAYER, type TiledLayer } from '../../../geo/shelf/layers.ts';
import {
  decodeTrailer,
  PART_MAGIC,
  SECTION_MOST_BYTES,
  type Section,
  TRAILER_BYTES,
} from '../../../geo/shelf/part-file.ts';
import { type PartMeta, partMetaSchema } from '../../../geo/shelf/part-meta.ts';
import { CHOICE_VERSION } from '../../../geo/shelf/versions.ts';

/** A part file that is open: its directory is in memory, its blocks are read one by one. */
export interface OpenPart {
  readonly meta: PartMeta;
  readonly directory: Directory;
  readonly fileBytes: number;
  /** What is stored of a tile; undefined where nothing is. Throws a Refusal where it is damaged. */
  tile(layer: TiledLayer, tile: number): BlockContent | undefined;
  /** Bytes of a block by its place in the directory, its checksum held. Throws a Refusal. */
  block(place: number): Uint8Array;
  close(): void;
}

/**
 * Opens a part file: end, directory and what it says of itself are read and held against their checksums.
 * All reading is synchronous, as the threads that read have nothing else to do and the system answers from memory.
 * Throws a Refusal where it is no sound part of this version, and what the system says where it cannot be read.
 */
export function openPart(path: string): OpenPart {
  // to open a pipe is to wait for its writer
  const file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const found = fstatSync(file);
    const { size } = found;
    if (!found.isFile()) throw new Refusal('shelf.damaged', 'it is no ordinary file');
    if (size < PART_MAGIC.length + TRAILER_BYTES) throw new Refusal('shelf.damaged', 'it is cut short');
    const magic = readAt(file, 0, PART_MAGIC.length);
    if (!PART_MAGIC.every((byte, i) => magic[i] === byte))
      throw new Refusal('shelf.damaged', 'it does not begin as a map of the shelf');
    const trailer = decodeTrailer(readAt(file, size - TRAILER_BYTES, TRAILER_BYTES), size, crc32);
    if (trailer.choiceVersion !== CHOICE_VERSION)
      throw new Refusal('shelf.version', 'it was made by another version of the program');
    const directory = decodeDirectory(readSection(file, trailer.directory));
    const meta = parseMeta(readSection(file, trailer.meta));
    const end = trailer.directory.offset;
    const block = (place: number) => readBlock(file, directory, place, end);
    return {
      meta,
      directory,
      fileBytes: size,
      block,
      tile(layer, tile) {
        const place = findBlock(directory, LAYER[layer], tile);
        return place < 0 ? undefined : decodeBlock(block(place));
      },
      close: () => closeSync(file),
    };
  } catch (thrown) {
    closeSync(file);
    throw thrown;
  }
}

function readBlock(file: number, { offset, length, crc }: Directory, place: number, end: number): Uint8Array {
  const from = offset[place]!;
  const bytes = length[place]!;
  if (bytes > SECTION_MOST_BYTES || from + bytes > end)
    throw new Refusal('shelf.damaged', 'its directory points outside of it');
  return held(readAt(file, from, bytes), crc[place]!);
}

function readSection(file: number, { offset, length, crc }: Section): Uint8Array {
  if (length > SECTION_MOST_BYTES) throw new Refusal('shelf.damaged', 'its directory is too large to be one');
  return held(readAt(file, offset, length), crc);
}

function held(bytes: Uint8Array, crc: number): Uint8Array {
  if (crc32(bytes) !== crc) throw new Refusal('shelf.damaged', 'what it holds is not what was written');
  return bytes;
}

function readAt(file: number, position: number, length: number): Uint8Array {
  const bytes = Buffer.allocUnsafe(length);
  for (let at = 0; at < length; ) {
    const read = readSync(file, bytes, at, length - at, position + at);
    if (read === 0) throw new Refusal('shelf.damaged', 'it is cut short');
    at += read;
  }
  return bytes;
}

function parseMeta(bytes: Uint8Array): PartMeta {
  try {
    return partMetaSchema.parse(JSON.parse(Buffer.from(bytes).toString('utf8')));
  } catch {
    throw new Refusal('shelf.damaged', 'what it says of itself cannot be read');
  }
}
