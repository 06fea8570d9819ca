import { closeSync, openSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { grown } from '../../../../geo/roads/id-table.ts';
import { Writer } from '../../../../geo/shelf/bytes.ts';
import { SECTION_MOST_BYTES } from '../../../../geo/shelf/part-file.ts';
import { writeWhole } from './spill.ts';
import { cannotWrite, tooDense } from './stopped.ts';

const BUFFER_BYTES = 2 * 1024 * 1024;

/** Where written blocks lie: layer, tile, offset, length, CRC-32 in turn. */
export type BlockPlaces = Float64Array;
/** Numbers of each block there. */
export const PLACE_NUMBERS = 5;

/** Writes blocks into the part file, several threads at a time: each takes the next free stretch of it. */
export class BlockOut {
  private readonly fd: number;
  private readonly end: BigInt64Array;
  private readonly buffer = new Writer(BUFFER_BYTES);
  private waiting: number[] = [];
  private places: BlockPlaces = new Float64Array(256 * PLACE_NUMBERS);
  private placed = 0;

  /** @param end one number, shared: where the file ends so far */
  constructor(path: string, end: BigInt64Array) {
    this.end = end;
    try {
      this.fd = openSync(path, 'r+');
    } catch (error) {
      throw cannotWrite(error);
    }
  }

  /** Adds a block. @param write writes it behind what the writer holds */
  add(layer: number, tile: number, write: (out: Writer) => void): void {
    const { buffer } = this;
    const from = buffer.length;
    write(buffer);
    const bytes = buffer.since(from);
    if (bytes.length > SECTION_MOST_BYTES) throw tooDense();
    this.waiting.push(layer, tile, from, bytes.length, crc32(bytes));
    if (buffer.length > BUFFER_BYTES / 2) this.flush();
  }

  /** Writes what waits, so that what was added together lies together. */
  flush(): void {
    const { buffer, waiting } = this;
    if (buffer.length === 0) return;
    const at = Number(Atomics.add(this.end, 0, BigInt(buffer.length)));
    writeWhole(this.fd, buffer.since(0), at);
    while (this.placed + waiting.length > this.places.length) this.places = grown(this.places);
    this.places.set(waiting, this.placed);
    for (let i = 0; i < waiting.length; i += PLACE_NUMBERS) this.places[this.placed + i + 2]! += at;
    this.placed += waiting.length;
    this.waiting = [];
    buffer.length = 0;
  }

  close(): BlockPlaces {
    this.flush();
    closeSync(this.fd);
    return this.places.slice(0, this.placed);
  }
}
