import { closeSync, openSync, readSync } from 'node:fs';
import { unpackBlob } from '../../../../geo/roads/pbf/blob.ts';
import { readBlock } from '../../../../geo/roads/pbf/block.ts';
import { type BlockKinds, kindsIn } from '../../../../geo/roads/pbf/kinds.ts';
import { Refusal } from '../../../../geo/roads/refusal.ts';
import type { MapSink } from '../../../../geo/roads/sink.ts';
import { sayPbfRefusal } from '../../map/read-pbf-file.ts';
import { unpack } from '../../map/unpack.ts';
import type { BlobTable } from './blob-table.ts';
import { Stopped, sourceLost, sourceShrank } from './stopped.ts';

/** Ends the reading of a block from within. */
class Enough extends Error {}

/** Reads single blobs of a PBF file, in any order. Faults are thrown as Stopped, with the sentence. */
export class SourceBlobs {
  private readonly path: string;
  private readonly table: BlobTable;
  private readonly fd: number;
  private buffer = new Uint8Array(64 * 1024);

  constructor(path: string, table: BlobTable) {
    this.path = path;
    this.table = table;
    try {
      this.fd = openSync(path, 'r');
    } catch (error) {
      throw sourceLost(path, error);
    }
  }

  /** Hands all elements of a blob to the sink. @returns which kinds it holds */
  give(blob: number, sink: MapSink): BlockKinds {
    return this.within(blob, (bytes) => {
      readBlock(bytes, unpack, sink);
      return kindsIn(bytes);
    });
  }

  kindsIn(blob: number): BlockKinds {
    return this.within(blob, kindsIn);
  }

  /** The bytes of a blob, unpacked. */
  bytesOf(blob: number): Uint8Array {
    return this.within(blob, (bytes) => bytes);
  }

  /** Id of the first node or way in a blob; undefined where it holds none. */
  firstId(blob: number, kind: 'node' | 'way'): number | undefined {
    let first: number | undefined;
    const found = (id: number) => {
      first = id;
      throw new Enough();
    };
    const sink: MapSink =
      kind === 'way'
        ? { way: ({ id }) => found(id) }
        : { nodes: ({ count, id }) => count > 0 && found(id[0]!) };
    this.within(blob, (bytes) => {
      try {
        readBlock(bytes, unpack, sink);
      } catch (thrown) {
        if (!(thrown instanceof Enough)) throw thrown;
      }
    });
    return first;
  }

  /** Id of the last node in a blob; undefined where it holds none. */
  lastNode(blob: number): number | undefined {
    let last: number | undefined;
    this.give(blob, {
      nodes: ({ count, id }) => {
        if (count > 0) last = id[count - 1];
      },
    });
    return last;
  }

  close(): void {
    closeSync(this.fd);
  }

  private within<T>(blob: number, use: (bytes: Uint8Array) => T): T {
    const { table } = this;
    const packed = this.read(table.offset[blob]!, table.size[blob]!);
    try {
      return use(unpackBlob(packed, unpack));
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      throw new Stopped({
        code: thrown.problem.code,
        message: sayPbfRefusal(this.path, thrown, blob, table.start[blob]!),
      });
    }
  }

  private read(at: number, length: number): Uint8Array {
    if (this.buffer.length < length) this.buffer = new Uint8Array(length * 2);
    for (let done = 0; done < length; ) {
      const got = this.readSome(done, length - done, at + done);
      if (got === 0) throw sourceShrank(this.path);
      done += got;
    }
    return this.buffer.subarray(0, length);
  }

  private readSome(to: number, length: number, at: number): number {
    try {
      return readSync(this.fd, this.buffer, to, length, at);
    } catch (error) {
      throw sourceLost(this.path, error);
    }
  }
}
