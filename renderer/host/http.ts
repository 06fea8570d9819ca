import type { Reply } from '../../main/contract/reply.ts';
import type { Pipe } from './client.ts';

/** The pipe of a page that the program serves on this computer. */
export function httpPipe(origin: string, key: string): Pipe {
  const post = (path: string, type: string, body: BodyInit, signal: AbortSignal) =>
    fetch(`${origin}${path}`, {
      method: 'POST',
      headers: { Authorization: `Bearer ${key}`, 'Content-Type': type },
      body,
      signal,
    });
  return {
    async call(name, request, onProgress, signal) {
      const response = await post(
        `/call/${encodeURIComponent(name)}`,
        'application/json',
        JSON.stringify(request),
        signal,
      );
      if (!response.ok || !response.body) return refused(response.status);
      for await (const line of linesOf(response.body)) {
        const told = JSON.parse(line) as { progress?: unknown; reply?: Reply };
        if (told.reply) return told.reply;
        onProgress(told.progress);
      }
      throw new Error('the answer broke off');
    },
    async addFile(file, signal) {
      const path = `/file?name=${encodeURIComponent(file.name.slice(0, 200))}`;
      const response = await post(path, 'application/octet-stream', file, signal);
      return response.ok ? ((await response.json()) as Reply) : refused(response.status);
    },
  };
}

/** The lines of a streamed text, the last one too when it has no line end. */
async function* linesOf(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.getReader();
  const decoder = new TextDecoder();
  let pending: string[] = [];
  try {
    for (;;) {
      const { done, value } = await reader.read();
      const parts = (done ? decoder.decode() : decoder.decode(value, { stream: true })).split('\n');
      // a long line comes in many pieces: joined once, when its end is there
      pending.push(parts[0] ?? '');
      for (const part of parts.slice(1)) {
        const line = pending.join('');
        pending = [part];
        if (line !== '') yield line;
      }
      if (done) break;
    }
    const last = pending.join('');
    if (last !== '') yield last;
  } finally {
    reader.releaseLock();
  }
}

function refused(status: number): Reply {
  const message =
    status === 401
      ? 'This window is no longer known to the program. Take a fresh address from the terminal.'
      : status === 413
        ? 'That is too much at once for the program.'
        : `The program refused that (${status}). Close the window and start it again.`;
  return { ok: false, error: { code: `http-${status}`, message } };
}
