import type { IncomingMessage, ServerResponse } from 'node:http';
import { PassThrough } from 'node:stream';
import { type Assets, securityHeaders } from '../assets.ts';
import { CALL_MAX_BYTES } from '../contract/limits.ts';
import type { Dispatch } from '../dispatch.ts';
import type { Uploads } from '../services/uploads/uploads.ts';
import type { PageCount } from './page-count.ts';
import { readJson } from './read-body.ts';
import { refusalOf } from './refuse.ts';
import type { Session } from './session.ts';

const CODE_MAX_BYTES = 1000;

/** How long the page may take to send what belongs to a request. */
export interface BodyTimes {
  /** a call, whole */
  readonly wholeMs: number;
  /** a file, without a byte of it coming */
  readonly idleMs: number;
}

/** What requests are answered from. */
export interface HostParts {
  readonly dispatch: Dispatch;
  readonly uploads: Uploads;
  readonly assets: Assets;
  readonly session: Session;
  readonly pages: PageCount;
  readonly bodyTimes: BodyTimes;
  /** `127.0.0.1:port`, the only name this host answers to */
  readonly own: string;
  tileAddress(): string | undefined;
  /** somebody came with a code that was already used */
  onSpentCode(): void;
}

/** Answers one request: what comes from elsewhere is refused first, then whoever has no key. */
export async function answerRequest(
  parts: HostParts,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  for (const [name, value] of Object.entries(securityHeaders(parts.tileAddress())))
    response.setHeader(name, value);
  const refusal = refusalOf(request, parts.own);
  if (refusal) return end(response, refusal.status, refusal.say);
  const url = request.url ?? '';
  if (request.method === 'GET') return sendAsset(parts.assets, url, response);
  if (url === '/session') return swapCode(parts, request, response);
  const [, key = ''] = /^Bearer ([A-Za-z0-9_-]{1,100})$/.exec(request.headers.authorization ?? '') ?? [];
  if (!parts.session.holds(key)) return end(response, 401, 'No key.');
  const [, call] = /^\/call\/([^/?#]{1,40})$/.exec(url) ?? [];
  if (call !== undefined) return answerCall(parts, call, request, response);
  const [, name] = /^\/file\?name=([^&#]{1,2000})$/.exec(url) ?? [];
  if (name !== undefined) return takeFile(parts, name, request, response);
  end(response, 404, 'There is nothing here.');
}

function sendAsset(assets: Assets, url: string, response: ServerResponse): void {
  const asset = assets.get(url);
  if (asset) {
    response.writeHead(200, { 'Content-Type': asset.type, 'Content-Length': asset.bytes.length });
    response.end(asset.bytes);
  } else end(response, 404, 'There is nothing here.');
}

/** The page gives the one-time code of its address and gets the key that its calls are made with. */
async function swapCode(
  { session, onSpentCode, bodyTimes }: HostParts,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const body = await readJson(request, CODE_MAX_BYTES, bodyTimes.wholeMs);
  if ('status' in body) return end(response, body.status, body.say);
  const { json } = body;
  const given = typeof json === 'object' && json && 'code' in json ? json.code : undefined;
  const code = typeof given === 'string' ? given : '';
  const key = session.redeem(code);
  if (key !== undefined) return sendJson(response, { key });
  if (session.isSpent(code)) onSpentCode();
  end(response, 403, 'This address has been used or is too old.');
}

async function answerCall(
  { dispatch, pages, bodyTimes }: HostParts,
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const body = await readJson(request, CALL_MAX_BYTES, bodyTimes.wholeMs);
  if ('status' in body) return end(response, body.status, body.say);
  const stop = new AbortController();
  response.once('close', () => stop.abort());
  if (response.destroyed) return;
  if (name === 'watch') pages.add(response);
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

async function takeFile(
  { uploads, bodyTimes }: HostParts,
  name: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
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
  // the page may break off before anybody reads, and after: the word of it then reaches nobody else
  bytes.on('error', () => {});
  const breakOff = (why: string) => void bytes.destroy(new Error(why));
  const idle = setTimeout(() => breakOff('nothing came for too long'), bodyTimes.idleMs);
  request.on('data', () => idle.refresh());
  request.pipe(bytes);
  request.once('end', () => clearTimeout(idle));
  request.once('close', () => {
    clearTimeout(idle);
    // all may have come and not yet been read: what a broken line still holds is never given out
    if (!request.readableEnded) breakOff('the page broke off');
  });
  const added = await uploads.addStream(shown, bytes);
  clearTimeout(idle);
  request.unpipe(bytes);
  request.resume();
  // what stays away is not waited for
  if (!request.complete) response.setHeader('Connection', 'close');
  sendJson(response, added);
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
