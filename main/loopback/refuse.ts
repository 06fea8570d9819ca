import type { IncomingMessage } from 'node:http';

export interface Refusal {
  readonly status: number;
  readonly say: string;
}

/**
 * Holds a request against everything that a foreign page or another name for this computer would get wrong.
 * @param own `127.0.0.1:port`, the only name this host answers to
 * @returns why it is refused, undefined for a request of our own page
 */
export function refusalOf(request: IncomingMessage, own: string): Refusal | undefined {
  const { method, headers, url = '' } = request;
  // another name that leads here (DNS rebinding) shows in Host
  if (headers.host !== own) return { status: 421, say: 'This host answers to its own address only.' };
  if (method !== 'GET' && method !== 'POST') return { status: 405, say: 'Only GET and POST.' };
  // an absolute or odd target is none that a browser sends to its own host
  if (!url.startsWith('/')) return { status: 400, say: 'Not a path.' };
  if (headers.upgrade !== undefined) return { status: 400, say: 'No upgrade.' };
  const origin = headers.origin;
  if (origin !== undefined && origin !== `http://${own}`) return { status: 403, say: 'Foreign origin.' };
  const site = headers['sec-fetch-site'];
  // another port of 127.0.0.1 is `same-site`: still another program
  const mayBe = method === 'GET' ? ['same-origin', 'none'] : ['same-origin'];
  if (site !== undefined && !mayBe.includes(String(site))) return { status: 403, say: 'Foreign page.' };
  // every browser sends Origin with a POST
  if (method === 'POST' && origin === undefined) return { status: 403, say: 'No origin.' };
  return undefined;
}
