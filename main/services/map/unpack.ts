import { inflateSync } from 'node:zlib';
import type { Unpack } from '../../../geo/roads/pbf/unpack.ts';

const utf8 = new TextDecoder('utf-8', { fatal: true });

/** What reading PBF takes from Node. */
export const unpack: Unpack = {
  // one piece of the size that is expected: no copying together
  inflate: (bytes, rawSize) =>
    inflateSync(bytes, { maxOutputLength: Math.max(1, rawSize), chunkSize: Math.max(64, rawSize) }),
  text(bytes) {
    try {
      return utf8.decode(bytes);
    } catch {
      return undefined;
    }
  },
};
