import { createHash, type Hash } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';

const CHUNK_BYTES = 4 * 1024 * 1024;

/** Reads a file from the front in pieces of any size, out of one buffer that is used over and over. */
export class ByteReader {
  /** bytes handed out so far */
  offset = 0;
  private readonly handle: FileHandle;
  private readonly hash: Hash | undefined;
  private buffer = Buffer.allocUnsafeSlow(CHUNK_BYTES);
  private from = 0;
  private to = 0;
  /** bytes read from the file so far */
  private fileAt = 0;
  private atEnd = false;

  constructor(handle: FileHandle, { withHash }: { readonly withHash: boolean }) {
    this.handle = handle;
    this.hash = withHash ? createHash('sha256') : undefined;
  }

  /** The next bytes, fewer only at the file's end. Good until the next call. */
  async take(count: number): Promise<Uint8Array> {
    while (this.to - this.from < count && !this.atEnd) await this.fill(count);
    const got = Math.min(count, this.to - this.from);
    const bytes = this.buffer.subarray(this.from, this.from + got);
    this.from += got;
    this.offset += got;
    return bytes;
  }

  /** SHA-256 of all bytes read, hexadecimal; only after the end was reached. '' when not asked for. */
  sha256(): string {
    return this.hash?.digest('hex') ?? '';
  }

  private async fill(count: number): Promise<void> {
    if (this.from > 0) {
      this.buffer.copyWithin(0, this.from, this.to);
      this.to -= this.from;
      this.from = 0;
    }
    if (count > this.buffer.length) {
      const larger = Buffer.allocUnsafeSlow(count);
      larger.set(this.buffer.subarray(0, this.to));
      this.buffer = larger;
    }
    const room = this.buffer.length - this.to;
    const { bytesRead } = await this.handle.read(this.buffer, this.to, room, this.fileAt);
    if (bytesRead === 0) this.atEnd = true;
    this.hash?.update(this.buffer.subarray(this.to, this.to + bytesRead));
    this.to += bytesRead;
    this.fileAt += bytesRead;
  }
}
