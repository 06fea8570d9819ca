import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { HEADER_MAX_BYTES, readBlobHeader, unpackBlob } from '../../../geo/roads/pbf/blob.ts';
import { readBlock } from '../../../geo/roads/pbf/block.ts';
import { readPbfHeader } from '../../../geo/roads/pbf/header.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import type { MapSink } from '../../../geo/roads/sink.ts';
import { ByteReader } from './byte-reader.ts';
import type { ReadFacts, Reading } from './map-reading.ts';
import { unpack } from './unpack.ts';

/** Reads a .osm.pbf file, block by block. */
export async function readPbfFile(reading: Reading): Promise<Result<ReadFacts>> {
  const reader = new ByteReader(reading.handle, reading);
  const { sink, wayless } = countingWays(reading.sink);
  let dataDate: string | undefined;
  let block = 0;
  let at = 0;
  try {
    for (; ; block++) {
      at = reader.offset;
      const blob = await nextBlob(reader, block);
      if (!blob) break;
      if (blob.type === 'OSMHeader')
        dataDate = isoOf(readPbfHeader(unpackBlob(blob.bytes, unpack), unpack).replicationTime);
      else readBlock(unpackBlob(blob.bytes, unpack), unpack, sink);
      await reading.pause(reader.offset);
    }
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return fail(thrown.problem.code, sayPbfRefusal(reading.name, thrown, block, at));
  }
  const notes = wayless() ? [WAYLESS] : [];
  return ok({
    sha256: reader.sha256(),
    notes,
    incomplete: notes,
    ...given({ dataDate }),
  });
}

/** A file cut between two blocks is sound to the format; nodes come first, so one without ways is likely so. */
export const WAYLESS =
  'it holds not one way and may have been cut short: roads and limits may be missing. Download or copy it again.';

function countingWays(sink: MapSink): { sink: MapSink; wayless(): boolean } {
  const { way } = sink;
  if (!way) return { sink, wayless: () => false };
  let seen = false;
  return {
    sink: {
      ...sink,
      way(raw) {
        seen = true;
        way(raw);
      },
    },
    wayless: () => !seen,
  };
}

async function nextBlob(reader: ByteReader, block: number) {
  const lead = await reader.take(4);
  if (lead.length === 0) {
    if (block === 0) throw new Refusal('map.damaged', 'it is empty');
    return undefined;
  }
  if (lead.length < 4) throw cutShort();
  const headerSize = Buffer.from(lead.buffer, lead.byteOffset, 4).readUInt32BE();
  if (headerSize > HEADER_MAX_BYTES)
    throw new Refusal('map.damaged', "a block header over the format's 64 kB");
  const headerBytes = await reader.take(headerSize);
  if (headerBytes.length < headerSize) throw cutShort();
  const { type, size } = readBlobHeader(headerBytes, unpack);
  if (block === 0 && type !== 'OSMHeader') throw new Refusal('map.damaged', 'no header at its start');
  const bytes = await reader.take(size);
  if (bytes.length < size) throw cutShort();
  return { type, bytes };
}

/** The refusal of a file that ends too soon. */
export function cutShort(): Refusal {
  return new Refusal('map.cut', 'the file ends in the middle of it');
}

/** The sentence about a block that cannot be read. @param at where it begins, bytes from the file's start */
export function sayPbfRefusal(name: string, { problem }: Refusal, block: number, at: number): string {
  const place = `block ${block + 1}, at byte ${at}`;
  if (problem.code === 'map.cut')
    return `${name} is cut short: the file ends in the middle of ${place}. Download or copy it again.`;
  if (problem.code === 'map.damaged')
    return `${name} is damaged: ${problem.message} (${place}). Download or copy it again.`;
  return `${name} cannot be read: ${problem.message} (${place}).`;
}

/** Seconds since 1970 as the report writes times. */
export function isoOf(seconds: number | undefined): string | undefined {
  const date = new Date((seconds ?? Number.NaN) * 1000);
  return Number.isNaN(date.getTime()) ? undefined : date.toISOString().replace('.000Z', 'Z');
}
