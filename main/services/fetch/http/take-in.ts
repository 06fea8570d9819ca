import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { codeOf } from '../../files/system-error.ts';
import { Faulted } from './fault.ts';
import type { Watch } from './watch.ts';

/** Takes the next bytes of the answer, unpacked; the buffer is not reused. */
export type Take = (chunk: Uint8Array) => void | Promise<void>;

/** How much is taken in at the most. */
export interface MostBytes {
  /** as they come over the line */
  readonly packed: number;
  /** as they are handed on */
  readonly unpacked: number;
}

export interface TakenIn {
  readonly packedBytes: number;
  readonly unpackedBytes: number;
  /**
   * Whether a cut would have been noticed: by a length, by chunks or by the packing. Where not, the connection's end was
   * the answer's, and only its contents can tell.
   */
  readonly endProved: boolean;
}

export interface TakeInOptions {
  readonly most: MostBytes;
  readonly watch: Watch;
  /** asked for without its body */
  readonly isHead: boolean;
  onBytes(packedBytes: number): void;
}

/** What the taker threw, on its way out past our own faults. */
export class NotTaken extends Error {}

/**
 * Takes in an answer's body to its proven end, unpacking gzip.
 * @throws Faulted, NotTaken, or what the connection threw
 */
export async function takeIn(
  response: IncomingMessage,
  take: Take,
  { most, watch, isHead, onBytes }: TakeInOptions,
): Promise<TakenIn> {
  const { headers } = response;
  const unpacker = unpackerFor(headers['content-encoding']);
  // the answer to HEAD tells the length of what does not come
  if (!isHead && Number(headers['content-length']) > most.packed)
    throw new Faulted({ kind: 'large', of: 'packed', mostBytes: most.packed });
  let packedBytes = 0;
  let unpackedBytes = 0;

  async function* count(source: AsyncIterable<Uint8Array>) {
    for await (const chunk of source) {
      packedBytes += chunk.length;
      if (packedBytes > most.packed)
        throw new Faulted({ kind: 'large', of: 'packed', mostBytes: most.packed });
      onBytes(packedBytes);
      watch.pause();
      yield chunk;
      watch.heard();
    }
  }
  async function handOn(source: AsyncIterable<Uint8Array>) {
    for await (const chunk of source) {
      unpackedBytes += chunk.length;
      if (unpackedBytes > most.unpacked)
        throw new Faulted({ kind: 'large', of: 'unpacked', mostBytes: most.unpacked });
      try {
        await take(chunk);
      } catch (error) {
        throw new NotTaken('', { cause: error });
      }
    }
  }

  watch.heard();
  try {
    if (unpacker) await pipeline(response, count, unpacker, handOn);
    else await pipeline(response, count, handOn);
  } catch (error) {
    throw zlibFault(error, packedBytes) ?? error;
  }
  if (!response.complete) throw new Faulted({ kind: 'broken', bytes: packedBytes });
  return {
    packedBytes,
    unpackedBytes,
    endProved: unpacker !== undefined || 'content-length' in headers || 'transfer-encoding' in headers,
  };
}

function unpackerFor(encoding: string | undefined): Duplex | undefined {
  const named = encoding?.trim().toLowerCase();
  if (named === undefined || named === '' || named === 'identity') return undefined;
  if (named === 'gzip' || named === 'x-gzip') return createGunzip();
  throw new Faulted({ kind: 'packing', said: `packed as "${named}", which was not asked for` });
}

function zlibFault(error: unknown, bytes: number): Faulted | undefined {
  const code = codeOf(error);
  if (typeof code !== 'string' || !code.startsWith('Z_')) return undefined;
  // zlib's name for an input that ends too early
  if (code === 'Z_BUF_ERROR') return new Faulted({ kind: 'cut', bytes });
  return new Faulted({ kind: 'packing', said: error instanceof Error ? error.message : code });
}
