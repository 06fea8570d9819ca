import { createServer, type IncomingHttpHeaders, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import type { AddressInfo, Socket } from 'node:net';
import { onTestFinished } from 'vitest';
import { SELF_SIGNED } from './self-signed.ts';

/** One thing that was asked of the server. */
export interface Asked {
  readonly method: string;
  readonly path: string;
  readonly headers: IncomingHttpHeaders;
  /** as it came over the line */
  readonly body: string;
  /** milliseconds of an arbitrary clock; `endMs` once it was answered, or the connection was gone */
  readonly startMs: number;
  endMs?: number;
}

/** Answers what was asked, well or badly. */
export type Reply = (response: ServerResponse, asked: Asked) => void | Promise<void>;

export interface ServedHere {
  /** http://127.0.0.1:PORT, without a path */
  readonly origin: string;
  /** all that was ever asked, in order */
  readonly asked: readonly Asked[];
  /** the most that was being asked at one moment */
  readonly mostAtOnce: () => number;
}

export interface ServeOptions {
  readonly secure?: boolean;
  readonly atEnd?: (end: () => void) => void;
}

/**
 * Serves on 127.0.0.1 until the test ends.
 * @param secure with a certificate that nobody knows
 * @param atEnd takes what ends it, where it serves no test
 */
export async function serveHere(
  reply: Reply,
  { secure = false, atEnd = onTestFinished }: ServeOptions = {},
): Promise<ServedHere> {
  const asked: Asked[] = [];
  const sockets = new Set<Socket>();
  let open = 0;
  let most = 0;
  const answer = async (request: IncomingMessage, response: ServerResponse) => {
    open++;
    most = Math.max(most, open);
    const startMs = performance.now();
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk as Buffer);
    const one: Asked = {
      method: request.method ?? '',
      path: request.url ?? '',
      headers: request.headers,
      body: Buffer.concat(chunks).toString(),
      startMs,
    };
    asked.push(one);
    response.on('close', () => {
      open--;
      one.endMs = performance.now();
    });
    await reply(response, one);
  };
  const listener = (request: IncomingMessage, response: ServerResponse) => {
    // a client that goes away in the middle is what some tests are about
    answer(request, response).catch(() => response.destroy());
  };
  const server = secure ? createSecureServer(SELF_SIGNED, listener) : createServer(listener);
  server.on('connection', (socket: Socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  atEnd(() => {
    for (const socket of sockets) socket.destroy();
    server.close();
  });
  const { port } = server.address() as AddressInfo;
  return {
    origin: `${secure ? 'https' : 'http'}://127.0.0.1:${port}`,
    asked,
    mostAtOnce: () => most,
  };
}
