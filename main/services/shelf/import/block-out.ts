import { closeSync, openSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { writeWhole } from './spill.ts';
import { cannotWrite } from './stopped.ts';

const BUFFER_BYTES = 2 * 1024 * 1024;

/** Where written blocks lie: layer, tile, offset, length, CRC-32 in turn. */
export type BlockPlaces = number[];

/** Writes blocks into the part file, several threads at a time: each takes the next free stretch of it. */
export class BlockOut {
  private readonly fd: number;
  private readonly end: BigInt64Array;
  private readonly buffer = new ByteStore(BUFFER_BYTES);
  private waiting: number[] = [];
  private readonly places: BlockPlaces = [];

  /** @param end one number, shared: where the file ends so far */
  constructor(path: string, end: BigInt64Array) {
    this.end = end;
    try {
      this.fd = openSync(path, 'r+');
    } catch (error) {
      throw cannotWrite(error);
    }
  }

  add(layer: number, tile: number, bytes: Uint8Array): void {
    const { buffer } = this;
    if (buffer.at > 0 && buffer.at + bytes.length > BUFFER_BYTES) this.flush();
    this.waiting.push(layer, tile, buffer.at, bytes.length, crc32(bytes));
    buffer.append(bytes);
  }

  /** Writes what waits, so that what was added together lies together. */
  flush(): void {
    const { buffer, waiting } = this;
    if (buffer.at === 0) return;
    const at = Number(Atomics.add(this.end, 0, BigInt(buffer.at)));
    writeWhole(this.fd, buffer.bytes.subarray(0, buffer.at), at);
    for (let i = 0; i < waiting.length; i += 5)
      this.places.push(waiting[i]!, waiting[i + 1]!, at + waiting[i + 2]!, waiting[i + 3]!, waiting[i + 4]!);
    this.waiting = [];
    buffer.at = 0;
  }

  close(): BlockPlaces {
    this.flush();
    closeSync(this.fd);
    return this.places;
  }
}
