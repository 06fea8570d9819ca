import { closeSync, openSync, readSync, writeSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { largest } from '../../../../geo/lists.ts';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { bytesIn, ExtentLog, filledBuckets, type SpillIndex } from './spill-index.ts';
import { cannotWrite } from './stopped.ts';

/** Memory for the pages of all buckets together. */
const ARENA_BYTES = 8 * 1024 * 1024;
const PAGE_MOST = 32 * 1024;
const PAGE_LEAST = 1024;
const PIECE_BYTES = 1024 * 1024;

/**
 * Sorts records into buckets of one file. Each bucket has a page in memory that is written when it is full; a record
 * never lies in two pages. Write a record to `out` between `begin` and `end`.
 */
export class Spill {
  readonly path: string;
  private readonly fd: number;
  /** made when first needed: many buckets stay empty */
  private readonly pages: (ByteStore | undefined)[];
  private readonly pageBytes: number;
  /** not cut into pages yet */
  private piece = new Uint8Array(0);
  private readonly extents = new ExtentLog();
  private written = 0;

  constructor(path: string, buckets: number) {
    this.path = path;
    const fair = Math.floor(ARENA_BYTES / Math.max(1, buckets));
    this.pageBytes = Math.min(PAGE_MOST, Math.max(PAGE_LEAST, fair)) & ~7;
    this.pages = new Array<ByteStore | undefined>(buckets).fill(undefined);
    try {
      this.fd = openSync(path, 'w');
    } catch (error) {
      throw cannotWrite(error);
    }
  }

  /** A store that stands where `bytes` bytes are to be written, all of them; undefined for more than a page. */
  place(bucket: number, bytes: number): ByteStore | undefined {
    if (bytes > this.pageBytes) return undefined;
    let page = this.pages[bucket];
    if (page === undefined) {
      page = new ByteStore(this.nextPage());
      this.pages[bucket] = page;
    } else if (page.at + bytes > this.pageBytes) this.flush(bucket, page);
    return page;
  }

  /** Writes one record of any size, bytes[from … to). */
  add(bucket: number, bytes: Uint8Array, from: number, to: number): void {
    const page = this.place(bucket, to - from);
    if (page) page.append(bytes, from, to);
    else {
      // what came before it stays before it
      const before = this.pages[bucket];
      if (before) this.flush(bucket, before);
      this.write(bucket, bytes.subarray(from, to));
    }
  }

  /** Writes what is left; the file is whole then. */
  end(): SpillIndex {
    for (const [bucket, page] of this.pages.entries()) if (page) this.flush(bucket, page);
    closeSync(this.fd);
    return this.extents.index(this.path, this.pages.length);
  }

  /** Pages are cut from large pieces, which the system gets back whole when the thread ends. */
  private nextPage(): Uint8Array<ArrayBuffer> {
    const { pageBytes } = this;
    if (this.piece.length < pageBytes) this.piece = new Uint8Array(PIECE_BYTES);
    const page = this.piece.subarray(0, pageBytes);
    this.piece = this.piece.subarray(pageBytes);
    return page;
  }

  private flush(bucket: number, page: ByteStore): void {
    if (page.at === 0) return;
    this.write(bucket, page.bytes.subarray(0, page.at));
    page.at = 0;
  }

  private write(bucket: number, bytes: Uint8Array): void {
    writeWhole(this.fd, bytes, this.written);
    this.extents.note(bucket, bytes.length);
    this.written += bytes.length;
  }
}

/** Writes all the bytes at a place of a file, or throws a Stopped. */
export function writeWhole(fd: number, bytes: Uint8Array, at: number): void {
  try {
    for (let done = 0; done < bytes.length; )
      done += writeSync(fd, bytes, done, bytes.length - done, at + done);
  } catch (error) {
    throw cannotWrite(error);
  }
}

/** Reads whole buckets back, whoever wrote them. */
export class SpillReader {
  private readonly files: readonly { readonly fd: number; readonly index: SpillIndex }[];
  /** bytes of the fullest bucket */
  private readonly fullest: number;

  constructor(indexes: readonly SpillIndex[]) {
    this.files = indexes.map((index) => ({ fd: openSync(index.path, 'r'), index }));
    const bytesOf = (bucket: number) => indexes.reduce((sum, index) => sum + bytesIn(index, bucket), 0);
    this.fullest = Math.max(0, largest(filledBuckets(indexes).map(bytesOf)));
  }

  /**
   * Fills the store from its start, and sets it there. Room is made for the fullest bucket at once: to grow from one
   * bucket to the next leaves what was too small behind until the collector comes.
   * @returns how many bytes
   */
  read(bucket: number, into: ByteStore): number {
    into.empty(this.fullest);
    let length = 0;
    for (const { fd, index } of this.files)
      for (let i = index.first[bucket] ?? 0; i < (index.first[bucket + 1] ?? 0); i++) {
        readWhole(fd, into.bytes, length, index.length[i]!, index.offset[i]!);
        length += index.length[i]!;
      }
    return length;
  }

  close(): void {
    for (const { fd } of this.files) closeSync(fd);
  }
}

/** Reads exactly so many bytes of a file this import wrote. */
export function readWhole(fd: number, into: Uint8Array, to: number, length: number, from: number): void {
  for (let done = 0; done < length; ) {
    const got = readSync(fd, into, to + done, length - done, from + done);
    if (got === 0) throw new Error('a file of this import ended early');
    done += got;
  }
}

/** Removes files that no later stage needs, so that the disk holds little at a time. */
export async function dropFiles(paths: Iterable<string>): Promise<void> {
  for (const path of new Set(paths)) await rm(path, { force: true });
}
