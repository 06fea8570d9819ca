import type { ServerResponse } from 'node:http';
import { gzipSync } from 'node:zlib';
import type { Reply } from './serve.ts';

/** Ways in which a server, or what stands before it, answers badly, whatever was asked. */

const JSON_TYPE = { 'Content-Type': 'application/json' };

/** In small pieces, so long apart. */
export function drip(text: string, apartMs: number, pieceBytes = 8): Reply {
  return async (response) => {
    const bytes = Buffer.from(text);
    response.writeHead(200, { ...JSON_TYPE, 'Content-Length': bytes.length });
    for (let at = 0; at < bytes.length && !response.destroyed; at += pieceBytes) {
      response.write(bytes.subarray(at, at + pieceBytes));
      await new Promise((resolve) => setTimeout(resolve, apartMs));
    }
    response.end();
  };
}

/** Nothing at all, or nothing more after the beginning. */
export function silence(before?: string): Reply {
  return (response) => {
    if (before === undefined) return;
    response.writeHead(200, JSON_TYPE);
    response.write(before);
  };
}

export function status(code: number, text = '', headers: Readonly<Record<string, string>> = {}): Reply {
  return (response) => {
    response.writeHead(code, { 'Content-Type': 'text/html', ...headers }).end(text);
  };
}

export function html(text: string, code = 200): Reply {
  return status(code, `<!DOCTYPE html><html><head><title>Hello</title></head><body>${text}</body></html>`);
}

export function whole(text: string): Reply {
  return (response, { headers }) => {
    const zipped = headers['accept-encoding']?.includes('gzip') === true;
    const body = zipped ? gzipSync(text) : Buffer.from(text);
    response
      .writeHead(200, {
        ...JSON_TYPE,
        'Content-Length': body.length,
        ...(zipped ? { 'Content-Encoding': 'gzip' } : {}),
      })
      .end(body);
  };
}

/** Whole as HTTP has it, but not as its packing has it. */
export function cutGzip(text: string): Reply {
  const packed = gzipSync(text);
  return sendGzip(packed.subarray(0, Math.floor(packed.length / 2)));
}

export function brokenGzip(text: string): Reply {
  const packed = Buffer.from(gzipSync(text));
  // its checksum
  packed[packed.length - 8] = (packed[packed.length - 8] ?? 0) ^ 1;
  return sendGzip(packed);
}

/** A small answer that unpacks to so many bytes. */
export function gzipBomb(bytes: number): Reply {
  return sendGzip(gzipSync(Buffer.alloc(bytes, ' ')));
}

/** The length told is so many bytes more, or fewer, than come. */
export function lyingLength(text: string, more: number): Reply {
  return (response) => {
    const body = Buffer.from(text);
    const head = `HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nContent-Length: ${body.length + more}\r\n\r\n`;
    raw(response, Buffer.concat([Buffer.from(head), body]));
  };
}

/** Without length and chunks: the connection's end is the answer's. */
export function untilClose(text: string): Reply {
  return (response) => raw(response, Buffer.from(`HTTP/1.1 200 OK\r\n\r\n${text}`));
}

/** The connection is torn down in the middle. */
export function resetMidway(text: string): Reply {
  return (response) => {
    response.writeHead(200, JSON_TYPE);
    response.write(text, () => setTimeout(() => response.socket?.resetAndDestroy(), 5));
  };
}

export function redirectTo(location: string, code = 302): Reply {
  return status(code, '', { Location: location });
}

/** No HTTP at all. */
export function babble(): Reply {
  return (response) => raw(response, Buffer.from('220 mail ready\r\n'));
}

function sendGzip(packed: Uint8Array): Reply {
  return (response) => {
    response
      .writeHead(200, { ...JSON_TYPE, 'Content-Encoding': 'gzip', 'Content-Length': packed.length })
      .end(packed);
  };
}

function raw(response: ServerResponse, bytes: Uint8Array): void {
  const { socket } = response;
  socket?.end(bytes);
}
