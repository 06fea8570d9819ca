import type { FileHandle } from 'node:fs/promises';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { ReadMapFile } from './map-reading.ts';
import { readPbfFile } from './read-pbf-file.ts';

const LOOK_BYTES = 4096;

/** Chooses the reader by what a file's first bytes are; names are not trusted. */
export async function readerFor(handle: FileHandle, name: string): Promise<Result<ReadMapFile>> {
  const buffer = Buffer.alloc(LOOK_BYTES);
  const { bytesRead } = await handle.read(buffer, 0, LOOK_BYTES, 0);
  const start = buffer.subarray(0, bytesRead);
  if (start.length === 0) return fail('map.empty', `${name} is empty. Download or copy the map again.`);
  if (looksLikePbf(start)) return ok(readPbfFile);
  return fail(
    'map.unknown',
    `${name} is no map file known here. Use .osm.pbf, .osm, .osm.gz or Overpass JSON.`,
  );
}

function looksLikePbf(start: Buffer): boolean {
  return start.length > 6 && start.readUInt16BE(0) === 0 && start.subarray(4, 64).includes('OSMHeader');
}
