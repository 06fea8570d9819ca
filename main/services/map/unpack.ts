import { inflateSync } from 'node:zlib';
import type { Unpack } from '../../../geo/roads/pbf/unpack.ts';

const utf8 = new TextDecoder('utf-8', { fatal: true });

/** What reading PBF takes from Node. */
export const unpack: Unpack = {
  inflate(bytes, rawSize) {
    // one piece of the size that is expected: no copying together
    const { buffer, byteOffset, length } = inflateSync(bytes, {
      maxOutputLength: Math.max(1, rawSize),
      chunkSize: Math.max(64, rawSize),
    });
    // parts of a Buffer cost several times what parts of plain bytes do
    return new Uint8Array(buffer, byteOffset, length);
  },
  text(bytes) {
    try {
      return utf8.decode(bytes);
    } catch {
      return undefined;
    }
  },
};
