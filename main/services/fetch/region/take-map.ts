import { given } from '../../../../geo/given.ts';
import { fail, type Problem } from '../../../../geo/result.ts';
import { printBytes } from '../../../../geo/units/print.ts';
import type { Head } from '../http/ask-server.ts';
import { sayPage } from '../http/say-page.ts';
import type { MapAsk } from './map-ask.ts';
import type { PartFile } from './part-file.ts';
import { isPage } from './server-files.ts';

/** What speaks against taking in an answer, on its way out of the request. */
export class Refused extends Error {
  readonly problem: Problem;

  constructor(code: string, message: string) {
    super(message);
    this.problem = fail(code, message).error;
  }
}

/** The part that is here is not the beginning of what the server has: from the first byte, then. */
export class FromTheStart extends Error {}

/** A PBF file begins with the length of a small header and the header's kind. */
const MAGIC = Buffer.from('\n\tOSMHeader', 'latin1');
const MAGIC_AT = 4;
/** Left free beside the file, for all else that writes. */
const SPARE_BYTES = 50_000_000;

/**
 * What takes in the answer to a question for a map file, appended to what of it is here. It refuses a web page and
 * what is no map before a byte of it is kept, and a file that the disk has no room for.
 * @returns nothing where the status is no answer
 */
export function takeMap(
  ask: MapAsk,
  part: PartFile,
  { status, headers }: Head,
): ((chunk: Uint8Array) => Promise<void>) | undefined {
  if (status !== 200 && status !== 206) return undefined;
  const { server, region } = ask;
  const etag = strongTag(headers.etag);
  const total =
    status === 206 ? totalOfRange(headers['content-range'], part) : lengthOf(headers['content-length']);
  let begun = false;
  let head = Buffer.alloc(0);
  const begin = async () => {
    begun = true;
    if (isPage(headers['content-type']))
      throw new Refused('map-page', sayPage(server.host, `the map of ${region.name}`));
    if (status === 206 && (total === undefined || (etag !== undefined && etag !== part.etag)))
      throw new FromTheStart();
    if (status === 200) await part.restart({ url: region.url, ...given({ etag, totalBytes: total }) });
    await lookForRoom(ask, (total ?? 0) - part.bytes);
  };
  return async (chunk) => {
    if (!begun) await begin();
    let bytes: Uint8Array = chunk;
    if (part.bytes === 0) {
      head = Buffer.concat([head, chunk]);
      if (head.length < MAGIC_AT + MAGIC.length) return;
      if (!head.subarray(MAGIC_AT, MAGIC_AT + MAGIC.length).equals(MAGIC))
        throw new Refused('map-kind', sayNoMap(ask, head));
      bytes = head;
    }
    await part.append(bytes);
    ask.onProgress?.({ bytes: part.bytes, ...given({ of: total }) });
  };
}

async function lookForRoom({ folder, region, freeBytes }: MapAsk, needed: number): Promise<void> {
  const free = await freeBytes(folder);
  if (free >= needed + SPARE_BYTES) return;
  throw new Refused(
    'map-room',
    `The map of ${region.name} needs ${printBytes(needed)} more in ${folder}, and ${printBytes(free)} are free there. Make room, or choose smaller regions.`,
  );
}

function sayNoMap({ server, region }: MapAsk, head: Buffer): string {
  if (/^\s*</u.test(head.toString('latin1'))) return sayPage(server.host, `the map of ${region.name}`);
  return `What ${server.host} sent as the map of ${region.name} is no map file (.osm.pbf). Nothing of it was kept; look at the server's address.`;
}

/** A tag that stands for the same bytes; a weak one does not. */
function strongTag(etag: string | undefined): string | undefined {
  return etag?.startsWith('"') ? etag : undefined;
}

function lengthOf(header: string | undefined): number | undefined {
  const bytes = Number(header);
  return header !== undefined && Number.isSafeInteger(bytes) && bytes > 0 ? bytes : undefined;
}

/** Bytes of the whole file, where the answer goes on from where the part ends. */
function totalOfRange(header: string | undefined, part: PartFile): number | undefined {
  const [, from, , total] = /^bytes (\d+)-(\d+)\/(\d+)$/u.exec(header ?? '') ?? [];
  if (Number(from) !== part.bytes) return undefined;
  return part.totalBytes === undefined || Number(total) === part.totalBytes ? Number(total) : undefined;
}
