import type { IncomingMessage } from 'node:http';
import { PassThrough } from 'node:stream';

export type Body =
  | { readonly json: unknown }
  | { readonly status: 400 | 408 | 413 | 415; readonly say: string };

/** Reads a JSON body of limited size, in limited time. */
export async function readJson(request: IncomingMessage, maxBytes: number, mostMs: number): Promise<Body> {
  // a form or a plain-text post needs no preflight; this type does, and it is never granted
  if (request.headers['content-type'] !== 'application/json')
    return { status: 415, say: 'Content type must be application/json.' };
  if (Number(request.headers['content-length'] ?? 0) > maxBytes) return { status: 413, say: 'Too large.' };
  const chunks: Buffer[] = [];
  let size = 0;
  const end = new AbortController();
  const late = setTimeout(() => end.abort(), mostMs);
  try {
    for await (const chunk of bodyOf(request, end.signal)) {
      size += chunk.length;
      if (size > maxBytes) return { status: 413, say: 'Too large.' };
      chunks.push(chunk);
    }
    const text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
    return { json: JSON.parse(text) };
  } catch {
    if (end.signal.aborted) return { status: 408, say: 'Too slow.' };
    return { status: 400, say: 'Not JSON.' };
  } finally {
    clearTimeout(late);
  }
}

/** The bytes as they come, until the signal fires; the line stays open for the answer. */
function bodyOf(request: IncomingMessage, signal: AbortSignal): AsyncIterable<Buffer> {
  const bytes = new PassThrough();
  bytes.on('error', () => {});
  request.on('error', (error) => bytes.destroy(error));
  request.once('close', () => {
    if (!request.readableEnded) bytes.destroy(new Error('the page broke off'));
  });
  signal.addEventListener('abort', () => bytes.destroy(new Error('too slow')), { once: true });
  return request.pipe(bytes);
}
