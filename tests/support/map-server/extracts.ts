import { createHash } from 'node:crypto';
import { pbfFile } from '../pbf-file.ts';
import { type Drawn, indexText } from './invented-regions.ts';
import { whole } from './misbehave.ts';
import type { Asked, Reply, ServedHere } from './serve.ts';

/** The map file of an invented region: some thirty kilobytes. @param seed another file for each */
export function inventedMap(seed = 1): Uint8Array {
  const nodes = Array.from({ length: 4_000 }, (_, i) => ({
    id: i * 7 + seed,
    lat: 50 + ((i * 7919 * seed) % 100_000) / 1e5,
    lon: 9 + ((i * 104_729 * seed) % 100_000) / 1e5,
  }));
  return pbfFile([{ nodes }], { compression: 'raw' });
}

export const md5Of = (bytes: Uint8Array) => createHash('md5').update(bytes).digest('hex');

/** What an extract server has; a test may change it while it serves. */
export interface Extracts {
  regions: readonly Drawn[];
  /** by region id */
  readonly files: Map<string, Uint8Array>;
  /** answers in place of the right ones, by path, each used once; an only one stays */
  readonly odd: Map<string, Reply[]>;
  /** of every file */
  etag: (bytes: Uint8Array) => string | undefined;
  honoursRange: boolean;
}

export function extracts(regions: readonly Drawn[], files: Readonly<Record<string, Uint8Array>>): Extracts {
  return {
    regions,
    files: new Map(Object.entries(files)),
    odd: new Map(),
    etag: (bytes) => `"${md5Of(bytes).slice(0, 8)}-${bytes.length}"`,
    honoursRange: true,
  };
}

/** Serves the list, the files, and an .md5 beside each. */
export function serveExtracts(have: Extracts): Reply {
  return async (response, asked) => {
    const queue = have.odd.get(asked.path);
    const odd = queue !== undefined && queue.length > 1 ? queue.shift() : queue?.[0];
    if (odd !== undefined) return odd(response, asked);
    if (asked.path === '/index-v1.json')
      return whole(indexText(have.regions, `http://${asked.headers.host}`))(response, asked);
    const [, id = '', ending] = /^\/(.+)-latest\.osm\.pbf(\.md5)?$/u.exec(asked.path) ?? [];
    const bytes = have.files.get(id);
    if (bytes === undefined)
      response.writeHead(404, { 'Content-Type': 'text/html' }).end('<html>none</html>');
    else if (ending !== undefined) response.end(`${md5Of(bytes)}  ${id}-latest.osm.pbf\n`);
    else await sendFile(have, bytes)(response, asked);
  };
}

/** The file, or the part that is asked for, as HTTP has it. */
export function sendFile({ etag, honoursRange }: Extracts, bytes: Uint8Array): Reply {
  return (response, { method, headers }) => {
    const tag = etag(bytes);
    const told = { 'Content-Type': 'application/octet-stream', ...(tag === undefined ? {} : { ETag: tag }) };
    const [, from] = /^bytes=(\d+)-$/u.exec(headers.range ?? '') ?? [];
    const isSame = headers['if-range'] === undefined || headers['if-range'] === tag;
    const at = honoursRange && isSame && from !== undefined ? Number(from) : undefined;
    if (at !== undefined && at >= bytes.length)
      response.writeHead(416, { ...told, 'Content-Range': `bytes */${bytes.length}` }).end();
    else if (at !== undefined) {
      const rest = bytes.subarray(at);
      const range = `bytes ${at}-${bytes.length - 1}/${bytes.length}`;
      response.writeHead(206, { ...told, 'Content-Range': range, 'Content-Length': rest.length }).end(rest);
    } else {
      response.writeHead(200, { ...told, 'Content-Length': bytes.length });
      response.end(method === 'HEAD' ? undefined : bytes);
    }
  };
}

/** As it should, but after so many bytes nothing more comes. */
export function stallAfter(have: Extracts, bytes: Uint8Array, count: number): Reply {
  return (response, asked) => {
    begin(have, bytes, { response, asked, count });
  };
}

/** As it should, but after so many bytes the connection is gone; of those some may be lost with it. */
export function cutAfter(have: Extracts, bytes: Uint8Array, count: number): Reply {
  return (response, asked) => {
    begin(have, bytes, { response, asked, count }, () => setTimeout(() => response.destroy(), 20));
  };
}

function begin(
  { etag }: Extracts,
  bytes: Uint8Array,
  { response, asked, count }: { response: Parameters<Reply>[0]; asked: Asked; count: number },
  then: () => void = () => {},
): void {
  const from = Number(/^bytes=(\d+)-$/u.exec(asked.headers.range ?? '')?.[1] ?? 0);
  const tag = etag(bytes);
  response.writeHead(from > 0 ? 206 : 200, {
    ...(from > 0 ? { 'Content-Range': `bytes ${from}-${bytes.length - 1}/${bytes.length}` } : {}),
    ...(tag === undefined ? {} : { ETag: tag }),
    'Content-Length': bytes.length - from,
  });
  response.write(bytes.subarray(from, from + count), then);
}

/** What was asked, in a line each: `GET /north-latest.osm.pbf from 1000`. */
export function linesOf({ asked }: ServedHere): string[] {
  return asked.map(({ method, path, headers }: Asked) => {
    const from = headers.range?.replace(/^bytes=(\d+)-$/u, ' from $1') ?? '';
    return `${method} ${path}${from}`;
  });
}
