import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Assets } from '../assets.ts';
import type { Dispatch } from '../dispatch.ts';
import type { Uploads } from '../services/uploads/uploads.ts';
import { answerRequest, type BodyTimes } from './answer-request.ts';
import { countPages } from './page-count.ts';
import { createSession } from './session.ts';

/** A page that is gone this long is not coming back: a reload takes less. */
const GONE_AFTER_MS = 30_000;

/** On one computer a call comes at once; a file may lie on a disk that wakes up. */
const BODY_TIMES: BodyTimes = { wholeMs: 20_000, idleMs: 60_000 };

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
  readonly bodyTimes?: BodyTimes;
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
  const session = createSession(options.now);
  const pages = countPages({
    onPage: options.onPage,
    onGone: options.onGone,
    goneAfterMs: options.goneAfterMs ?? GONE_AFTER_MS,
  });
  const server = createServer({ maxHeaderSize: 16_384, requestTimeout: 0, headersTimeout: 10_000 });
  server.maxHeadersCount = 60;
  server.on('upgrade', (_, socket) => {
    // nobody else listens to a line handed over
    socket.on('error', () => {});
    socket.destroy();
  });
  const own = `127.0.0.1:${await listen(server)}`;
  const parts = { ...options, session, pages, own, bodyTimes: options.bodyTimes ?? BODY_TIMES };
  server.on('request', (request, response) => {
    // a line that breaks shows in what is read from it and in its closing
    request.on('error', () => {});
    response.on('error', () => {});
    answerRequest(parts, request, response).catch(() => response.destroy());
  });
  const origin = `http://${own}`;
  return {
    origin,
    newAddress: () => `${origin}/#${session.newCode()}`,
    close: () =>
      new Promise((resolve) => {
        pages.close();
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    // port 0: the system picks a free one; never another interface than the computer's own
    server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port));
  });
}
