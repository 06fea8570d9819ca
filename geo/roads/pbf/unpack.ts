/** What decoding needs from its surroundings. */
export interface Unpack {
  /** zlib; gives exactly `rawSize` bytes or throws */
  inflate(bytes: Uint8Array, rawSize: number): Uint8Array;
  /** UTF-8 to text; undefined where the bytes are none */
  text(bytes: Uint8Array): string | undefined;
}
