import { type Reader, ShortBytes } from './bytes.ts';
import { skipTags } from './tag-bytes.ts';

/** Distinct tag sets of a block, as `encodeTags` gives them. A plain list will do. */
export interface TagSets {
  readonly length: number;
  at(set: number): Uint8Array | undefined;
}

/** Tag sets where they stand in a block's bytes: a view is made of one when it is asked for. */
class SetsInBytes implements TagSets {
  readonly length: number;
  private readonly bytes: Uint8Array;
  private readonly bounds: Uint32Array;

  /** @param bounds where each begins and ends, in turn */
  constructor(bytes: Uint8Array, bounds: Uint32Array) {
    this.bytes = bytes;
    this.bounds = bounds;
    this.length = bounds.length / 2;
  }

  at(set: number): Uint8Array | undefined {
    const from = this.bounds[2 * set];
    return from === undefined ? undefined : this.bytes.subarray(from, this.bounds[2 * set + 1]);
  }
}

/** Reads the sets of a block; each is sound, so that reading its tags later cannot fail. */
export function readTagSets(reader: Reader): TagSets {
  const bounds = new Uint32Array(2 * reader.count());
  for (let at = 0; at < bounds.length; at += 2) {
    const to = reader.uint() + reader.pos;
    if (to > reader.end) throw new ShortBytes();
    bounds[at] = reader.pos;
    bounds[at + 1] = to;
    skipTags(reader, to);
  }
  const { buffer, byteOffset, byteLength } = reader.bytes;
  // a plain array: views of what Node calls a Buffer take many times as long to make
  return new SetsInBytes(new Uint8Array(buffer, byteOffset, byteLength), bounds);
}
