import { open } from 'node:fs/promises';
import { crc32 } from 'node:zlib';
import { type Directory, encodeDirectory } from '../../../../geo/shelf/directory.ts';
import { LAYER } from '../../../../geo/shelf/layers.ts';
import { encodeNameKeys } from '../../../../geo/shelf/names.ts';
import { encodeTrailer, PART_MAGIC } from '../../../../geo/shelf/part-file.ts';
import type { PartMeta } from '../../../../geo/shelf/part-meta.ts';
import { CHOICE_VERSION } from '../../../../geo/shelf/versions.ts';
import { type BlockPlaces, PLACE_NUMBERS } from './block-out.ts';
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
  const { keys: texts, places } = numberNames(names);
  const keys = encodeNameKeys(texts);
  const keysPlace = Float64Array.of(LAYER.nameKeys, 0, end, keys.length, crc32(keys));
  const directory = encodeDirectory(directoryOf([...blocks, ...places, keysPlace]));
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

/** All blocks, in order of layer and tile. */
function directoryOf(blocks: readonly BlockPlaces[]): Directory {
  const all = new Float64Array(blocks.reduce((sum, places) => sum + places.length, 0));
  let filled = 0;
  for (const places of blocks) {
    all.set(places, filled);
    filled += places.length;
  }
  const count = filled / PLACE_NUMBERS;
  const order = Uint32Array.from({ length: count }, (_, i) => i * PLACE_NUMBERS);
  order.sort((a, b) => all[a]! - all[b]! || all[a + 1]! - all[b + 1]!);
  return {
    count,
    layer: Uint8Array.from(order, (at) => all[at]!),
    tile: Float64Array.from(order, (at) => all[at + 1]!),
    offset: Float64Array.from(order, (at) => all[at + 2]!),
    length: Uint32Array.from(order, (at) => all[at + 3]!),
    crc: Uint32Array.from(order, (at) => all[at + 4]!),
  };
}

/** Blocks of names are numbered from 0 in the index's order. */
function numberNames(names: readonly SortedNames[]): { keys: string[]; places: BlockPlaces[] } {
  const keys = names.flatMap((each) => each.keys).sort(([a], [b]) => a - b);
  const numbers = new Map(keys.map(([block], number) => [block, number]));
  const places = names.map(({ blocks }) => {
    const numbered = blocks.slice();
    for (let at = 1; at < numbered.length; at += PLACE_NUMBERS)
      numbered[at] = numbers.get(numbered[at]!) ?? 0;
    return numbered;
  });
  return { keys: keys.map(([, key]) => key), places };
}
