import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { given } from '../../../geo/given.ts';
import { serveIpc } from '../../../main/electron/ipc-host.ts';
import { type HttpHost, type HttpHostOptions, serveHttp } from '../../../main/loopback/http-host.ts';
import { createClient, type Pipe } from '../../../renderer/host/client.ts';
import { httpPipe } from '../../../renderer/host/http.ts';
import { ipcPipe } from '../../../renderer/host/ipc.ts';
import { FakeContents, ipcMain } from '../electron/fake-electron.ts';
import { runPreload } from '../electron/run-preload.ts';
import type { World } from './world.ts';

/** One way for a page to reach the program. */
export interface TestHost {
  readonly pipe: Pipe;
  close(): Promise<void>;
}

/** No pipe at all: what the two hosts are measured against. */
export async function direct({ dispatch, backend }: World): Promise<TestHost> {
  return {
    pipe: {
      call: (name, request, onProgress, signal) => dispatch(name, request, { onProgress, signal }),
      addFile: async (file, signal) =>
        backend.uploads.addStream(file.name, Readable.from([Buffer.from(await file.arrayBuffer())]), signal),
    },
    close: async () => {},
  };
}

export async function overIpc({ dispatch, backend, folder }: World): Promise<TestHost> {
  serveIpc(dispatch, backend.uploads);
  // the system knows the path of a file the user picked
  const paths = new WeakMap<File, string>();
  const host = runPreload(new FakeContents(), (file) => paths.get(file) ?? '');
  const pipe = ipcPipe(host);
  return {
    pipe: {
      ...pipe,
      async addFile(file, signal) {
        const picked = join(folder, 'picked');
        await mkdir(picked, { recursive: true });
        const path = join(picked, file.name);
        await writeFile(path, Buffer.from(await file.arrayBuffer()));
        paths.set(file, path);
        return pipe.addFile(file, signal);
      },
    },
    close: async () => void ipcMain.removeAllListeners('cancel'),
  };
}

export async function serve(
  { dispatch, backend }: World,
  more: Pick<Partial<HttpHostOptions>, 'onGone' | 'bodyTimes'> = {},
): Promise<HttpHost> {
  return serveHttp({
    dispatch,
    uploads: backend.uploads,
    assets: new Map([
      ['/', { type: 'text/html; charset=utf-8', bytes: new TextEncoder().encode('<h1>page</h1>') }],
    ]),
    tileAddress: () => backend.settings().tiles?.address,
    onSpentCode: () => backend.notice('used twice'),
    onGone: () => more.onGone?.(),
    goneAfterMs: 60,
    ...given({ bodyTimes: more.bodyTimes }),
    now: () => performance.now(),
  });
}

export async function keyOf(host: HttpHost): Promise<string> {
  const response = await fetch(`${host.origin}/session`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: host.origin },
    body: JSON.stringify({ code: new URL(host.newAddress()).hash.slice(1) }),
  });
  const { key } = (await response.json()) as { key: string };
  return key;
}

export async function overHttp(world: World): Promise<TestHost> {
  const host = await serve(world);
  const pipe = httpPipe(host.origin, await keyOf(host));
  return { pipe: withOrigin(pipe, host.origin), close: () => host.close() };
}

/** Node's fetch leaves out what every browser adds to a POST: where it comes from. */
function withOrigin(pipe: Pipe, origin: string): Pipe {
  const plain = globalThis.fetch;
  const asPage: typeof fetch = (address, init) =>
    plain(address, {
      ...init,
      headers: { ...(init?.headers as Record<string, string>), Origin: origin },
    });
  const within =
    <A extends unknown[], R>(act: (...words: A) => Promise<R>) =>
    (...words: A) => {
      globalThis.fetch = asPage;
      try {
        return act(...words);
      } finally {
        globalThis.fetch = plain;
      }
    };
  return { call: within(pipe.call), addFile: within(pipe.addFile) };
}

export const clientOf = (host: TestHost) => createClient(host.pipe);
