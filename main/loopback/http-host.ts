import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { PassThrough } from 'node:stream';
import { type Assets, securityHeaders } from '../assets.ts';
import { CALL_MAX_BYTES } from '../contract/limits.ts';
import type { Dispatch } from '../dispatch.ts';
import type { Uploads } from '../services/uploads/uploads.ts';
import { readJson } from './read-body.ts';
import { refusalOf } from './refuse.ts';
import { createSession } from './session.ts';

/** A page that is gone this long is not coming back: a reload takes less. */
const GONE_AFTER_MS = 30_000;
const CODE_MAX_BYTES = 1000;

export interface HttpHostOptions {
  readonly dispatch: Dispatch;
  readonly uploads: Uploads;
  readonly assets: Assets;
  tileAddress(): string | undefined;
  /** a page is there */
  onPage?(): void;
  /** somebody came with a code that was already used */
  onSpentCode(): void;
  /** the last page has been gone for a while after there was one */
  onGone(): void;
  readonly goneAfterMs?: number;
  /** milliseconds that only go forward */
  now(): number;
}

export interface HttpHost {
  /** `http://127.0.0.1:port` */
  readonly origin: string;
  /** An address for one page, good for a minute; the one before it is void. */
  newAddress(): string;
  close(): Promise<void>;
}

/** Serves the page and its calls on a free port of 127.0.0.1, to this computer's own page alone. */
export async function serveHttp(options: HttpHostOptions): Promise<HttpHost> {
  const { dispatch, uploads, assets, goneAfterMs = GONE_AFTER_MS } = options;
  const session = createSession(options.now);
  let own = '';
  let pages = 0;
  let gone: NodeJS.Timeout | undefined;
  let closed = false;

  const server = createServer({ maxHeaderSize: 16_384, requestTimeout: 0, headersTimeout: 10_000 });
  server.maxHeadersCount = 60;
  server.on('request', (request, response) => {
    handle(request, response).catch(() => response.destroy());
  });
  server.on('upgrade', (_, socket) => socket.destroy());

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    for (const [name, value] of Object.entries(securityHeaders(options.tileAddress())))
      response.setHeader(name, value);
    const refusal = refusalOf(request, own);
    if (refusal) return end(response, refusal.status, refusal.say);
    const url = request.url ?? '';
    if (request.method === 'GET') return sendAsset(url, response);
    if (url === '/session') return swapCode(request, response);
    const [, key = ''] = /^Bearer ([A-Za-z0-9_-]{1,100})$/.exec(request.headers.authorization ?? '') ?? [];
    if (!session.holds(key)) return end(response, 401, 'No key.');
    const [, call] = /^\/call\/([^/?#]{1,40})$/.exec(url) ?? [];
    if (call !== undefined) return answerCall(call, request, response);
    const [, name] = /^\/file\?name=([^&#]{1,2000})$/.exec(url) ?? [];
    if (name !== undefined) return takeFile(name, request, response);
    end(response, 404, 'There is nothing here.');
  }

  function sendAsset(url: string, response: ServerResponse): void {
    const asset = assets.get(url);
    if (asset) {
      response.writeHead(200, { 'Content-Type': asset.type, 'Content-Length': asset.bytes.length });
      response.end(asset.bytes);
    } else end(response, 404, 'There is nothing here.');
  }

  async function swapCode(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await readJson(request, CODE_MAX_BYTES);
    if ('status' in body) return end(response, body.status, body.say);
    const { json } = body;
    const given = typeof json === 'object' && json && 'code' in json ? json.code : undefined;
    const code = typeof given === 'string' ? given : '';
    const key = session.redeem(code);
    if (key !== undefined) return sendJson(response, { key });
    if (session.isSpent(code)) options.onSpentCode();
    end(response, 403, 'This address has been used or is too old.');
  }

  async function answerCall(name: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await readJson(request, CALL_MAX_BYTES);
    if ('status' in body) return end(response, body.status, body.say);
    const stop = new AbortController();
    response.once('close', () => stop.abort());
    if (response.destroyed) return;
    if (name === 'watch') countPage(response);
    response.writeHead(200, { 'Content-Type': 'application/x-ndjson; charset=utf-8' });
    response.flushHeaders();
    const write = (line: object) => {
      if (!response.writableEnded && !response.destroyed) response.write(`${JSON.stringify(line)}\n`);
    };
    const reply = await dispatch(name, body.json, {
      onProgress: (progress) => write({ progress }),
      signal: stop.signal,
    });
    write({ reply });
    response.end();
  }

  async function takeFile(name: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.headers['content-type'] !== 'application/octet-stream')
      return end(response, 415, 'Content type must be application/octet-stream.');
    let shown: string;
    try {
      shown = decodeURIComponent(name);
    } catch {
      return end(response, 400, 'Not a name.');
    }
    // a refusal must not cut the line it is to be told over: what is still coming is then read and dropped
    const bytes = new PassThrough();
    request.pipe(bytes);
    request.once('close', () => {
      if (!request.complete) bytes.destroy(new Error('the page broke off'));
    });
    const added = await uploads.addStream(shown, bytes);
    request.unpipe(bytes);
    request.resume();
    sendJson(response, added);
  }

  function countPage(response: ServerResponse): void {
    pages++;
    options.onPage?.();
    clearTimeout(gone);
    response.once('close', () => {
      pages--;
      // a page cut off by the closing itself is not waited for
      if (pages === 0 && !closed) gone = setTimeout(options.onGone, goneAfterMs);
    });
  }

  own = `127.0.0.1:${await listen(server)}`;
  const origin = `http://${own}`;
  return {
    origin,
    newAddress: () => `${origin}/#${session.newCode()}`,
    close: () =>
      new Promise((resolve) => {
        closed = true;
        clearTimeout(gone);
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function end(response: ServerResponse, status: number, say: string): void {
  // what is left of the body is not read: the connection ends with the answer
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', Connection: 'close' });
  response.end(`${say}\n`);
}

function sendJson(response: ServerResponse, value: unknown): void {
  response.writeHead(200, { 'Content-Type': 'application/json; charset=utf-8' });
  response.end(JSON.stringify(value));
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    // port 0: the system picks a free one; never another interface than the computer's own
    server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port));
  });
}
