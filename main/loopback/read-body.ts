import type { IncomingMessage } from 'node:http';

export type Body = { readonly json: unknown } | { readonly status: 400 | 413 | 415; readonly say: string };

/** Reads a JSON body of limited size. */
export async function readJson(request: IncomingMessage, maxBytes: number): Promise<Body> {
  // a form or a plain-text post needs no preflight; this type does, and it is never granted
  if (request.headers['content-type'] !== 'application/json')
    return { status: 415, say: 'Content type must be application/json.' };
  if (Number(request.headers['content-length'] ?? 0) > maxBytes) return { status: 413, say: 'Too large.' };
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    for await (const chunk of request as AsyncIterable<Buffer>) {
      size += chunk.length;
      if (size > maxBytes) return { status: 413, say: 'Too large.' };
      chunks.push(chunk);
    }
    const text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
    return { json: JSON.parse(text) };
  } catch {
    return { status: 400, say: 'Not JSON.' };
  }
}
