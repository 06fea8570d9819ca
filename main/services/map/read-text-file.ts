import { createHash } from 'node:crypto';
import { createGunzip } from 'node:zlib';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { readOverpassJson } from '../../../geo/roads/read-json.ts';
import { readMapXml } from '../../../geo/roads/read-xml.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import type { FileFacts } from '../../../geo/roads/sink.ts';
import type { ReadFacts, Reading } from './map-reading.ts';

const CHUNK_BYTES = 256 * 1024;
/** JSON is held whole, as text and as objects, which takes five times its size. */
const JSON_MAX_BYTES = 200 * 1024 * 1024;

/** How a text file is packed. */
export type Packing = 'none' | 'gzip';

/** Reads .osm, in clear or gzipped, as it streams. */
export function readXmlFile(packing: Packing) {
  return (reading: Reading): Promise<Result<ReadFacts>> =>
    readText(reading, packing, () => {
      const reader = readMapXml(reading.sink);
      return { ...reader };
    });
}

/** Reads an Overpass answer, in clear or gzipped. */
export function readJsonFile(packing: Packing) {
  return (reading: Reading): Promise<Result<ReadFacts>> =>
    readText(reading, packing, () => {
      const pieces: string[] = [];
      let length = 0;
      return {
        write(text) {
          length += text.length;
          if (length > JSON_MAX_BYTES)
            throw new Refusal(
              'map.tooLarge',
              'it holds over 200 MB of JSON; use a PBF extract of the area instead',
            );
          pieces.push(text);
        },
        line: () => pieces.reduce((lines, piece) => lines + piece.split('\n').length - 1, 1),
        finish: () => readOverpassJson(pieces.join(''), reading.sink),
      };
    });
}

interface TextTaker {
  write(text: string): void;
  /** the line that was written last */
  line(): number;
  finish(): FileFacts;
}

async function readText(
  { handle, name, withHash, pause }: Reading,
  packing: Packing,
  start: () => TextTaker,
): Promise<Result<ReadFacts>> {
  const taker = start();
  const hash = withHash ? createHash('sha256') : undefined;
  const utf8 = new TextDecoder('utf-8', { fatal: true });
  let done = 0;
  const file = handle.createReadStream({ start: 0, highWaterMark: CHUNK_BYTES, autoClose: false });
  file.on('data', (chunk) => {
    hash?.update(chunk);
    done += chunk.length;
  });
  const source = packing === 'gzip' ? file.pipe(createGunzip({ chunkSize: CHUNK_BYTES })) : file;
  file.on('error', (error) => source.destroy(error));
  try {
    for await (const chunk of source) {
      taker.write(decode(utf8, taker, chunk as Uint8Array));
      await pause(done);
    }
    taker.write(decode(utf8, taker));
    const facts = taker.finish();
    return ok({ ...facts, sha256: hash?.digest('hex') ?? '' });
  } catch (thrown) {
    if (thrown instanceof Refusal) return fail(thrown.problem.code, say(name, thrown));
    if (isZlibError(thrown))
      return fail(
        'map.damaged',
        `${name} is damaged or cut short: its gzip data ends or breaks near byte ${done}. Download or copy it again.`,
      );
    throw thrown;
  } finally {
    source.destroy();
    file.destroy();
  }
}

function decode(utf8: InstanceType<typeof TextDecoder>, taker: TextTaker, chunk?: Uint8Array): string {
  try {
    return chunk ? utf8.decode(chunk, { stream: true }) : utf8.decode();
  } catch {
    // what stands before it is sound, and tells the line
    const [before = ''] = new TextDecoder().decode(chunk ?? new Uint8Array()).split('\uFFFD');
    taker.write(before);
    throw new Refusal('map.damaged', `it is not UTF-8 text (line ${taker.line()})`);
  }
}

function isZlibError(thrown: unknown): boolean {
  return (
    thrown instanceof Error &&
    'code' in thrown &&
    typeof thrown.code === 'string' &&
    thrown.code.startsWith('Z_')
  );
}

function say(name: string, { problem }: Refusal): string {
  if (problem.code === 'map.damaged')
    return `${name} is damaged or cut short: ${problem.message}. Download or copy it again.`;
  return `${name} cannot be used as a map: ${problem.message}.`;
}
