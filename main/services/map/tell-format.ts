import type { FileHandle } from 'node:fs/promises';
import { constants, createGunzip } from 'node:zlib';
import { fileKind, sayForeign } from '../../../geo/document/file-kind.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { ReadMapFile } from './map-reading.ts';
import { readPbfFile } from './read-pbf-file.ts';
import { type Packing, readJsonFile, readXmlFile } from './read-text-file.ts';

const LOOK_BYTES = 4096;
const USABLE = 'Use .osm.pbf, .osm, .osm.gz or Overpass JSON.';

/** Files that are known but not read: how they begin, and what to do. */
const REFUSED: readonly {
  readonly start: readonly number[];
  readonly what: string;
  readonly todo: string;
}[] = [
  {
    start: [...Buffer.from('%PDF')],
    what: 'a PDF, a page to read or print',
    todo: 'Export the drive as GPX; for a map use .osm.pbf, .osm, .osm.gz or Overpass JSON.',
  },
  { start: [0x42, 0x5a, 0x68], what: 'packed with bzip2', todo: 'Unpack it first (bunzip2).' },
  { start: [0x50, 0x4b, 0x03, 0x04], what: 'a zip archive', todo: 'Unpack it and name the map file inside.' },
  { start: [0xfd, 0x37, 0x7a, 0x58, 0x5a], what: 'packed with xz', todo: 'Unpack it first (unxz).' },
  { start: [0x37, 0x7a, 0xbc, 0xaf], what: 'a 7z archive', todo: 'Unpack it and name the map file inside.' },
  { start: [0x28, 0xb5, 0x2f, 0xfd], what: 'packed with zstd', todo: 'Unpack it first (unzstd).' },
  { start: [...Buffer.from('SQLite format 3')], what: 'a database of map pictures', todo: USABLE },
  {
    start: [0xff, 0xe0, 0x04, 0x6f, 0x35, 0x6d],
    what: 'o5m',
    todo: 'Convert it (osmium cat IN.o5m -o OUT.osm.pbf).',
  },
  { start: [0xff, 0xfe], what: 'UTF-16 text', todo: 'Save it as UTF-8.' },
  { start: [0xfe, 0xff], what: 'UTF-16 text', todo: 'Save it as UTF-8.' },
];

/** Chooses the reader by what a file's first bytes are; names are not trusted. */
export async function readerFor(handle: FileHandle, name: string): Promise<Result<ReadMapFile>> {
  const buffer = Buffer.alloc(LOOK_BYTES);
  const { bytesRead } = await handle.read(buffer, 0, LOOK_BYTES, 0);
  const start = buffer.subarray(0, bytesRead);
  if (start.length === 0) return fail('map.empty', `${name} is empty. Download or copy the map again.`);
  if (start[0] === 0x1f && start[1] === 0x8b) return choose(await gunzipStart(start), name, 'gzip');
  return choose(start, name, 'none');
}

function choose(start: Buffer, name: string, packing: Packing): Result<ReadMapFile> {
  if (looksLikePbf(start))
    return packing === 'gzip'
      ? fail('map.packed', `${name} is a PBF file packed with gzip. Unpack it first (gunzip).`)
      : ok(readPbfFile);
  const refused = REFUSED.find((known) => known.start.every((byte, i) => start[i] === byte));
  if (refused)
    return fail('map.packed', `${name} is ${refused.what}, which is not read here. ${refused.todo}`);
  const kind = fileKind(start);
  // of JSON its reader tells more
  const page = kind === 'geojson' || kind === 'report' ? undefined : sayForeign(kind, name);
  if (page !== undefined) return fail('map.unknown', page);
  if (start.every((byte) => byte === 0))
    return fail(
      'map.damaged',
      `${name} holds no data where a map begins, only zero bytes: its download or copy broke off. Download or copy it again.`,
    );
  const lead = start
    .toString('latin1')
    .replace(/^\xef\xbb\xbf/u, '')
    .trimStart();
  if (lead.startsWith('<')) return ok(readXmlFile(packing));
  if (lead.startsWith('{') || lead.startsWith('[')) return ok(readJsonFile(packing));
  return fail(
    'map.unknown',
    `${name} is neither a drive nor a map that can be read here. A drive is a GPX file. A map is a file of OpenStreetMap data: .osm.pbf, .osm, .osm.gz or Overpass JSON.`,
  );
}

function looksLikePbf(start: Buffer): boolean {
  return start.length > 6 && start.readUInt16BE(0) === 0 && start.subarray(4, 64).includes('OSMHeader');
}

/** The first bytes inside a gzip file; none where they do not unpack. */
function gunzipStart(bytes: Buffer): Promise<Buffer> {
  return new Promise((resolve) => {
    const gunzip = createGunzip({ finishFlush: constants.Z_SYNC_FLUSH });
    const pieces: Buffer[] = [];
    const done = () => resolve(Buffer.concat(pieces));
    gunzip.on('data', (piece: Buffer) => pieces.push(piece));
    gunzip.on('error', done);
    gunzip.on('end', done);
    gunzip.end(bytes);
  });
}
