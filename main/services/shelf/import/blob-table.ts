import { readSync } from 'node:fs';
import { HEADER_MAX_BYTES, readBlobHeader } from '../../../../geo/roads/pbf/blob.ts';
import { Refusal } from '../../../../geo/roads/refusal.ts';
import { cutShort, sayPbfRefusal } from '../../map/read-pbf-file.ts';
import { unpack } from '../../map/unpack.ts';
import { NotSorted, Stopped, sourceLost, sourceShrank } from './stopped.ts';

/** Where each blob of a PBF file lies; the first is its header. Shared between threads. */
export interface BlobTable {
  readonly count: number;
  /** of the blob itself, behind its header */
  readonly offset: Float64Array;
  readonly size: Uint32Array;
  /** where its header begins: for sentences */
  readonly start: Float64Array;
}

/** Longer blob headers are rare: most are read with the four bytes before them at once. */
const LOOK_BYTES = 64;

/**
 * Walks the headers of all blobs without reading what they hold.
 * @param pause called now and then; may throw to end it
 */
export async function walkBlobs(
  fd: number,
  path: string,
  size: number,
  pause: () => Promise<void>,
): Promise<BlobTable> {
  const offsets: number[] = [];
  const sizes: number[] = [];
  const starts: number[] = [];
  const look = Buffer.alloc(LOOK_BYTES);
  let at = 0;
  try {
    while (at < size) {
      const blob = headerAt(fd, path, size, at, look, offsets.length === 0);
      if (blob.offset + blob.size > size) throw cutShort();
      offsets.push(blob.offset);
      sizes.push(blob.size);
      starts.push(at);
      at = blob.offset + blob.size;
      if (offsets.length % 512 === 0) await pause();
    }
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    throw new Stopped({
      code: thrown.problem.code,
      message: sayPbfRefusal(path, thrown, starts.length, at),
    });
  }
  const shared = <T extends Float64Array | Uint32Array>(into: T, from: readonly number[]): T => {
    into.set(from);
    return into;
  };
  const count = offsets.length;
  return {
    count,
    offset: shared(new Float64Array(new SharedArrayBuffer(count * 8)), offsets),
    size: shared(new Uint32Array(new SharedArrayBuffer(count * 4)), sizes),
    start: shared(new Float64Array(new SharedArrayBuffer(count * 8)), starts),
  };
}

function headerAt(fd: number, path: string, size: number, at: number, look: Buffer, first: boolean) {
  const got = readSome(fd, path, look, at);
  if (got < 4) throw size - at < 4 ? cutShort() : sourceShrank(path);
  const headerSize = look.readUInt32BE(0);
  if (headerSize > HEADER_MAX_BYTES)
    throw new Refusal('map.damaged', "a block header over the format's 64 kB");
  let header: Uint8Array = look.subarray(4, 4 + headerSize);
  if (4 + headerSize > got) {
    const whole = Buffer.alloc(headerSize);
    if (readSome(fd, path, whole, at + 4) < headerSize) throw cutShort();
    header = whole;
  }
  const { type, size: blobSize } = readBlobHeader(header, unpack);
  if (first && type !== 'OSMHeader') throw new Refusal('map.damaged', 'no header at its start');
  // several files one behind the other
  if (!first && type === 'OSMHeader') throw new NotSorted();
  return { offset: at + 4 + headerSize, size: blobSize };
}

function readSome(fd: number, path: string, into: Uint8Array, at: number): number {
  try {
    return readSync(fd, into, 0, into.length, at);
  } catch (error) {
    throw sourceLost(path, error);
  }
}
