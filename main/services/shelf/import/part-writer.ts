import { open } from 'node:fs/promises';
import { crc32 } from 'node:zlib';
import { encodeDirectory } from '../../../../geo/shelf/directory.ts';
import { LAYER } from '../../../../geo/shelf/layers.ts';
import { encodeNameKeys } from '../../../../geo/shelf/names.ts';
import { encodeTrailer, PART_MAGIC } from '../../../../geo/shelf/part-file.ts';
import type { PartMeta } from '../../../../geo/shelf/part-meta.ts';
import { CHOICE_VERSION } from '../../../../geo/shelf/versions.ts';
import type { BlockPlaces } from './block-out.ts';
import type { SortedNames } from './stages/sort-names.ts';
import { cannotWrite } from './stopped.ts';

/** Begins a part file. @returns where its blocks may be written from */
export async function beginPart(path: string): Promise<number> {
  try {
    const handle = await open(path, 'w');
    try {
      await handle.write(PART_MAGIC);
    } finally {
      await handle.close();
    }
    return PART_MAGIC.length;
  } catch (error) {
    throw cannotWrite(error);
  }
}

/** Waits until the disk has what was written so far. */
export async function syncPart(path: string): Promise<void> {
  try {
    const handle = await open(path, 'r+');
    try {
      await handle.datasync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw cannotWrite(error);
  }
}

export interface PartEnd {
  readonly blocks: readonly BlockPlaces[];
  readonly names: readonly SortedNames[];
  readonly meta: PartMeta;
  /** where the blocks end */
  readonly end: number;
}

/** Writes what stands behind the blocks, and waits until the disk has all of it. */
export async function finishPart(path: string, { blocks, names, meta, end }: PartEnd): Promise<void> {
  const numbers = numberNames(names);
  const keys = encodeNameKeys(numbers.keys);
  const rows = [...rowsOf(blocks), ...numbers.rows];
  rows.push([LAYER.nameKeys, 0, end, keys.length, crc32(keys)]);
  rows.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const directory = encodeDirectory({
    count: rows.length,
    layer: Uint8Array.from(rows, (row) => row[0]),
    tile: Float64Array.from(rows, (row) => row[1]),
    offset: Float64Array.from(rows, (row) => row[2]),
    length: Uint32Array.from(rows, (row) => row[3]),
    crc: Uint32Array.from(rows, (row) => row[4]),
  });
  const metaBytes = new TextEncoder().encode(JSON.stringify(meta));
  const directoryAt = end + keys.length;
  const metaAt = directoryAt + directory.length;
  const trailer = (fileBytes: number) =>
    encodeTrailer(
      {
        choiceVersion: CHOICE_VERSION,
        directory: { offset: directoryAt, length: directory.length, crc: crc32(directory) },
        meta: { offset: metaAt, length: metaBytes.length, crc: crc32(metaBytes) },
        fileBytes,
      },
      (bytes) => crc32(bytes),
    );
  const trailerAt = metaAt + metaBytes.length;
  const last = trailer(trailerAt + trailer(0).length);
  try {
    const handle = await open(path, 'r+');
    try {
      await handle.write(Buffer.concat([keys, directory, metaBytes]), 0, undefined, end);
      // the blocks must be there before what says so
      await handle.datasync();
      await handle.write(last, 0, last.length, trailerAt);
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw cannotWrite(error);
  }
}

type Row = readonly [layer: number, tile: number, offset: number, length: number, crc: number];

function rowsOf(blocks: readonly BlockPlaces[]): Row[] {
  const rows: Row[] = [];
  for (const places of blocks)
    for (let i = 0; i < places.length; i += 5)
      rows.push([places[i]!, places[i + 1]!, places[i + 2]!, places[i + 3]!, places[i + 4]!]);
  return rows;
}

/** Blocks of names are numbered from 0 in the index's order. */
function numberNames(names: readonly SortedNames[]): { rows: Row[]; keys: string[] } {
  const keys = names.flatMap((each) => each.keys).sort(([a], [b]) => a - b);
  const places = new Map(keys.map(([block], number) => [block, number]));
  return {
    rows: rowsOf(names.map((each) => each.blocks)).map(([layer, block, ...rest]) => [
      layer,
      places.get(block) ?? 0,
      ...rest,
    ]),
    keys: keys.map(([, key]) => key),
  };
}
