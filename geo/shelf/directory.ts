import { Refusal } from '../roads/refusal.ts';
import { Reader, ShortBytes, Writer } from './bytes.ts';

/** Where each block of a part lies, in order of layer, then tile. */
export interface Directory {
  readonly count: number;
  readonly layer: Uint8Array;
  /** number along the curve of the layer's zoom */
  readonly tile: Float64Array;
  /** from the start of the file, bytes */
  readonly offset: Float64Array;
  readonly length: Uint32Array;
  /** CRC-32 of the block's bytes */
  readonly crc: Uint32Array;
}

/** The bytes of a directory, for `decodeDirectory`. */
export function encodeDirectory(directory: Directory): Uint8Array<ArrayBuffer> {
  const { count, layer, tile, offset, length, crc } = directory;
  const out = new Writer();
  out.uint(count);
  let [tileBefore, endBefore] = [0, 0];
  for (let i = 0; i < count; i++) {
    out.uint(layer[i]!);
    out.int(tile[i]! - tileBefore);
    tileBefore = tile[i]!;
    out.int(offset[i]! - endBefore);
    endBefore = offset[i]! + length[i]!;
    out.uint(length[i]!);
    out.uint(crc[i]!);
  }
  return out.done();
}

/** What `encodeDirectory` wrote. Throws a Refusal where the bytes cannot be that. */
export function decodeDirectory(bytes: Uint8Array): Directory {
  try {
    const reader = new Reader(bytes);
    const count = reader.count(5);
    const layer = new Uint8Array(count);
    const tile = new Float64Array(count);
    const offset = new Float64Array(count);
    const length = new Uint32Array(count);
    const crc = new Uint32Array(count);
    let [tileAt, end] = [0, 0];
    for (let i = 0; i < count; i++) {
      layer[i] = reader.uint();
      tileAt += reader.int();
      tile[i] = tileAt;
      offset[i] = end + reader.int();
      length[i] = reader.uint();
      end = offset[i]! + length[i]!;
      crc[i] = reader.uint();
      if (!(offset[i]! >= 0)) throw new ShortBytes();
    }
    if (reader.pos !== reader.end) throw new ShortBytes();
    return { count, layer, tile, offset, length, crc };
  } catch (thrown) {
    if (thrown instanceof ShortBytes) throw new Refusal('shelf.damaged', 'a directory that cannot be read');
    throw thrown;
  }
}

/** Place of a block in the directory; -1 where the tile is empty. */
export function findBlock({ count, layer, tile }: Directory, wantedLayer: number, wanted: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const comes = layer[middle]! - wantedLayer || tile[middle]! - wanted;
    if (comes < 0) low = middle + 1;
    else high = middle;
  }
  return low < count && layer[low] === wantedLayer && tile[low] === wanted ? low : -1;
}
