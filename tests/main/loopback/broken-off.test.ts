import { readdir, stat } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { HttpHost } from '../../../main/loopback/http-host.ts';
import { OWN_MARK } from '../../../main/services/files/owner-mark.ts';
import { keyOf, serve } from '../contract/hosts.ts';
import { makeWorld, type World } from '../contract/world.ts';
import { raw, request, statusOf } from './raw.ts';

vi.mock('electron', () => import('../electron/fake-electron.ts'));

let world: World;
let host: HttpHost;
let port: number;
let headers: Record<string, string>;
const uncaught: unknown[] = [];
const note = (error: unknown) => void uncaught.push(error);

beforeEach(async () => {
  world = await makeWorld();
  host = await serve(world, { bodyTimes: { wholeMs: 80, idleMs: 400 } });
  port = Number(new URL(host.origin).port);
  headers = {
    Host: `127.0.0.1:${port}`,
    Origin: host.origin,
    Authorization: `Bearer ${await keyOf(host)}`,
    'Content-Type': 'application/octet-stream',
  };
  uncaught.length = 0;
  process.on('uncaughtException', note);
  process.on('unhandledRejection', note);
});
afterEach(async () => {
  process.off('uncaughtException', note);
  process.off('unhandledRejection', note);
  await host.close();
  await world.close();
});

const describeIt = () =>
  raw(port, request('POST /call/describe', { ...headers, 'Content-Type': 'application/json' }, '{}'));

/** Sends some bytes, then breaks the line off: by a reset, or by a plain end of sending. */
function breakOff(text: string, how: 'reset' | 'end', afterMs: number): Promise<void> {
  return new Promise((resolve) => {
    const socket: Socket = connect(port, '127.0.0.1', () => {
      socket.write(text, 'latin1', () => {
        setTimeout(() => (how === 'reset' ? socket.resetAndDestroy() : socket.destroy()), afterMs);
      });
    });
    socket.on('error', () => {});
    socket.on('close', () => resolve());
  });
}

const BODY = 'x'.repeat(200_000);
const upload = () =>
  request('POST /file?name=a.gpx', { ...headers, 'Content-Length': String(BODY.length) }) + BODY;

describe('an upload that breaks off', () => {
  it.each(['reset', 'end'] as const)(
    'at every step (%s) harms nothing, and nothing of it is left',
    async (how) => {
      const whole = upload();
      const head = whole.indexOf('\r\n\r\n') + 4;
      const steps = [1, 20, head - 2, head, head + 1, head + 70_000, whole.length - 1, whole.length];
      for (const step of steps)
        for (const afterMs of [0, 1, 5]) await breakOff(whole.slice(0, step), how, afterMs);
      await new Promise((resolve) => setTimeout(resolve, 50));
      expect(uncaught).toEqual([]);
      expect(statusOf(await describeIt())).toBe(200);
      await vi.waitFor(async () => expect(await halves()).toEqual([]));
    },
  );

  it('many at once, while another arrives whole, leaves that one alone', async () => {
    const whole = upload();
    const broken = Array.from({ length: 60 }, (_, i) =>
      breakOff(whole.slice(0, Math.floor((whole.length * i) / 60)), i % 2 ? 'reset' : 'end', i % 7),
    );
    const answer = await raw(port, whole, 20_000);
    await Promise.all(broken);
    expect(answer).toContain('"ok":true');
    expect(uncaught).toEqual([]);
    expect(statusOf(await describeIt())).toBe(200);
  });

  it('before its call is read, or while its answer comes, harms nothing either', async () => {
    const call = request('POST /call/watch', { ...headers, 'Content-Type': 'application/json' }, '{}');
    for (let step = 0; step <= call.length; step += 12) await breakOff(call.slice(0, step), 'reset', 1);
    await breakOff(call, 'reset', 30);
    const upgrade = request('GET /', { Host: headers['Host'], Upgrade: 'websocket' });
    await breakOff(upgrade.replace('Connection: close', 'Connection: Upgrade'), 'reset', 0);
    expect(uncaught).toEqual([]);
    expect(statusOf(await describeIt())).toBe(200);
  });
});

describe('a body that comes too slowly', () => {
  it('of a call is answered, and the line ends', async () => {
    const slow = request('POST /call/describe', {
      ...headers,
      'Content-Type': 'application/json',
      'Content-Length': '9',
    });
    expect(statusOf(await raw(port, `${slow}{`))).toBe(408);
  });

  it('of a file is refused in a sentence, and nothing of it is left', async () => {
    const whole = upload();
    const answer = await raw(port, whole.slice(0, -10));
    expect(answer).toMatch(/did not arrive whole \(nothing came for too long\)/);
    expect(await halves()).toEqual([]);
  });
});

/** Copies that did not arrive whole and were not thrown away. */
async function halves(): Promise<string[]> {
  const folders = (await readdir(tmpdir())).filter((name) =>
    name.startsWith(`lanegauge-uploads-${OWN_MARK}-`),
  );
  const paths: string[] = [];
  for (const name of folders)
    for (const file of await readdir(join(tmpdir(), name)).catch(() => []))
      paths.push(join(tmpdir(), name, file));
  const sizes = await Promise.all(paths.map((path) => stat(path).catch(() => undefined)));
  return paths.filter((_, i) => (sizes[i]?.size ?? BODY.length) < BODY.length);
}
