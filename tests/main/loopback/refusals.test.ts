import { readdir, unlink } from 'node:fs/promises';
import { createServer } from 'node:net';
import { networkInterfaces } from 'node:os';
import { basename, dirname } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { CALL_MAX_BYTES } from '../../../main/contract/limits.ts';
import type { HttpHost } from '../../../main/loopback/http-host.ts';
import { openUploads } from '../../../main/services/uploads/uploads.ts';
import { keyOf, serve } from '../contract/hosts.ts';
import { makeWorld, type World } from '../contract/world.ts';
import { raw, request, statusOf } from './raw.ts';

vi.mock('electron', () => import('../electron/fake-electron.ts'));

let world: World;
let host: HttpHost;
let key: string;
let port: number;
let own: string;

beforeEach(async () => {
  world = await makeWorld();
  host = await serve(world);
  key = await keyOf(host);
  port = Number(new URL(host.origin).port);
  own = `127.0.0.1:${port}`;
});
afterEach(async () => {
  await host.close();
  await world.close();
});

const asPage = () => ({
  Host: own,
  Origin: host.origin,
  'Sec-Fetch-Site': 'same-origin',
  'Content-Type': 'application/json',
  Authorization: `Bearer ${key}`,
});

const get = (path: string, more: Record<string, string | undefined> = {}) =>
  raw(port, request(`GET ${path}`, { Host: own, ...more }));
const post = (path: string, more: Record<string, string | undefined> = {}, body = '{}') =>
  raw(port, request(`POST ${path}`, { ...asPage(), ...more }, body));

describe('the page itself', () => {
  it('gets its page and its answers, with every safety header', async () => {
    const page = await get('/', { 'Sec-Fetch-Site': 'none' });
    expect(statusOf(page)).toBe(200);
    for (const line of [
      "Content-Security-Policy: default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'",
      'X-Content-Type-Options: nosniff',
      'Cross-Origin-Resource-Policy: same-origin',
      'Cross-Origin-Opener-Policy: same-origin',
      'Cache-Control: no-store',
      'Referrer-Policy: strict-origin-when-cross-origin',
    ])
      expect(page).toContain(line);
    expect(page).not.toMatch(/set-cookie|access-control/i);
    const answer = await post('/call/describe');
    expect(statusOf(answer)).toBe(200);
    expect(answer).toContain('"reply":{"ok":true');
  });

  it('may show pictures of the tile host the user has set, and of no other', async () => {
    const settings = {
      ...world.backend.settings(),
      tiles: { address: 'https://Tiles.example:8443/{z}/{x}/{y}.png', attribution: '' },
    };
    await post('/call/saveSettings', {}, JSON.stringify({ settings }));
    expect(await get('/')).toContain("img-src 'self' data: blob: https://tiles.example:8443;");
  });
});

describe('another machine', () => {
  it('finds nothing: the port is open on 127.0.0.1 alone', async () => {
    // the same port can still be bound on every other address of this machine
    const others = Object.values(networkInterfaces())
      .flat()
      .filter((each) => each && each.family === 'IPv4' && !each.internal)
      .map((each) => each?.address ?? '');
    // Linux alone gives a computer more than one loopback address
    for (const address of [...others, ...(process.platform === 'linux' ? ['127.0.0.2'] : [])]) {
      const bound = await new Promise((resolve) => {
        const probe = createServer();
        probe.once('error', () => resolve(false));
        probe.listen(port, address, () => probe.close(() => resolve(true)));
      });
      expect([address, bound]).toEqual([address, true]);
    }
  });
});

describe('another name for this computer (DNS rebinding)', () => {
  it.each([
    'evil.test',
    'localhost',
    'LOCALHOST:PORT',
    'localhost:PORT',
    '127.0.0.1',
    '127.0.0.1:1',
    '127.0.0.1.:PORT',
    '2130706433:PORT',
    '[::1]:PORT',
    'evil.test:PORT',
    '127.0.0.1:PORT.evil.test',
    'user@127.0.0.1:PORT',
  ])('is refused: Host %s', async (name) => {
    const Host = name.replace('PORT', String(port));
    expect(statusOf(await get('/', { Host }))).toBe(421);
    expect(statusOf(await post('/call/describe', { Host }))).toBe(421);
    expect(statusOf(await post('/session', { Host }, '{"code":"x"}'))).toBe(421);
  });

  it('is refused without a Host, and with two', async () => {
    expect(statusOf(await raw(port, 'GET / HTTP/1.1\r\n\r\n'))).toBe(400);
    expect(statusOf(await raw(port, 'GET / HTTP/1.0\r\n\r\n'))).toBe(421);
    const twice = await raw(
      port,
      `GET / HTTP/1.1\r\nHost: ${own}\r\nHost: evil.test\r\nConnection: close\r\n\r\n`,
    );
    // the first alone counts, as the standard library reads it; never the foreign one
    expect([200, 400]).toContain(statusOf(twice));
    const foreign = await raw(
      port,
      `GET / HTTP/1.1\r\nHost: evil.test\r\nHost: ${own}\r\nConnection: close\r\n\r\n`,
    );
    expect([400, 421]).toContain(statusOf(foreign));
  });
});

describe('a foreign page', () => {
  it.each([
    'http://evil.test',
    'null',
    'http://127.0.0.1:1',
    'https://127.0.0.1:PORT',
    'http://localhost:PORT',
    '',
  ])('is refused: Origin %j', async (name) => {
    const Origin = name.replace('PORT', String(port));
    expect(statusOf(await post('/call/describe', { Origin }))).toBe(403);
    expect(statusOf(await get('/', { Origin }))).toBe(name === '' ? 403 : 403);
  });

  it.each(['cross-site', 'same-site', 'none', 'odd'])('is refused: Sec-Fetch-Site %s', async (site) => {
    expect(statusOf(await post('/call/describe', { 'Sec-Fetch-Site': site }))).toBe(403);
    const page = statusOf(await get('/', { 'Sec-Fetch-Site': site }));
    // an address typed or followed from outside the browser comes from `none`
    expect(page).toBe(site === 'none' ? 200 : 403);
  });

  it('is refused a POST that does not say where it comes from', async () => {
    expect(statusOf(await post('/call/describe', { Origin: undefined }))).toBe(403);
  });

  it('gets no leave to ask: a preflight is refused and grants nothing', async () => {
    const answer = await raw(
      port,
      request('OPTIONS /call/describe', {
        Host: own,
        Origin: 'http://evil.test',
        'Access-Control-Request-Method': 'POST',
        'Access-Control-Request-Headers': 'authorization',
      }),
    );
    expect(statusOf(answer)).toBe(405);
    expect(answer).not.toMatch(/access-control-allow/i);
  });
});

describe('a request without the key', () => {
  it.each([undefined, 'Bearer ', 'Bearer wrong', 'Basic dXNlcjp3b3Jk', 'Bearer KEY KEY', 'bearer KEY'])(
    'is refused: %s',
    async (header) => {
      const Authorization = header?.replaceAll('KEY', key);
      expect(statusOf(await post('/call/describe', { Authorization }))).toBe(401);
      expect(
        statusOf(
          await post('/file?name=a.gpx', { Authorization, 'Content-Type': 'application/octet-stream' }, 'x'),
        ),
      ).toBe(401);
    },
  );

  it('is refused with the key in a cookie or in the address', async () => {
    const without = { Authorization: undefined };
    expect(statusOf(await post('/call/describe', { ...without, Cookie: `key=${key}` }))).toBe(401);
    expect(statusOf(await post(`/call/describe?key=${key}`, without))).toBe(401);
  });
});

describe('an odd request', () => {
  it.each(['PUT', 'DELETE', 'PATCH', 'HEAD', 'TRACE'])('is refused: %s', async (method) => {
    expect(statusOf(await raw(port, request(`${method} /call/describe`, asPage(), '{}')))).toBe(405);
  });

  it.each([
    '/../package.json',
    '/..%2f..%2fpackage.json',
    '/%2e%2e/%2e%2e/etc/passwd',
    '//etc/passwd',
    '/index.html',
    '/?x',
    '/.',
    '/constructor',
    '/__proto__',
    '/\\..\\..',
    '/call/describe',
    '/session',
  ])('finds nothing at %s', async (path) => {
    expect(statusOf(await get(path))).toBe(404);
  });

  it.each(['/call/', '/call/a/b', '/call', '/calls/describe', '/', '/file', '/file?name=', '/file?x=1'])(
    'is told there is nothing to post to at %s',
    async (path) => {
      expect(statusOf(await post(path))).toBe(404);
    },
  );

  it('is refused as a proxy request and as an upgrade', async () => {
    expect(statusOf(await raw(port, request(`GET http://evil.test/`, { Host: own })))).toBe(400);
    const upgrade = `GET / HTTP/1.1\r\nHost: ${own}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`;
    expect(statusOf(await raw(port, upgrade))).not.toBe(101);
  });

  it.each([
    undefined,
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/json; charset=utf-16',
  ])('is refused with the content type %s', async (type) => {
    expect(statusOf(await post('/call/describe', { 'Content-Type': type }))).toBe(415);
  });

  it('is refused when it is too large, by its word or by its weight', async () => {
    const large = `"${'x'.repeat(CALL_MAX_BYTES)}"`;
    expect(statusOf(await post('/call/describe', {}, large))).toBe(413);
    const chunk = 'x'.repeat(65_536);
    const chunks = `${chunk.length.toString(16)}\r\n${chunk}\r\n`.repeat(CALL_MAX_BYTES / chunk.length + 1);
    const chunked = request('POST /call/describe', { ...asPage(), 'Transfer-Encoding': 'chunked' });
    expect(statusOf(await raw(port, `${chunked}${chunks}0\r\n\r\n`))).toBe(413);
  });

  it.each(['', '{', 'undefined', '\xff\xfe', `${'['.repeat(100_000)}`])(
    'is refused without JSON',
    async (body) => {
      const answer = await raw(
        port,
        request(
          'POST /call/describe',
          { ...asPage(), ...(body === '' ? { 'Content-Length': '0' } : {}) },
          body,
        ),
      );
      expect(statusOf(answer)).toBe(400);
    },
  );

  it('ends a line of headers that never ends', async () => {
    const answer = await raw(port, `GET / HTTP/1.1\r\nHost: ${own}\r\nX: ${'x'.repeat(40_000)}`);
    expect([0, 431]).toContain(statusOf(answer));
  });

  it('leaves the host standing', async () => {
    await Promise.all([raw(port, '\x16\x03\x01garbage'), raw(port, 'GET'), raw(port, '', 50)]);
    expect(statusOf(await get('/'))).toBe(200);
  });
});

describe('the one-time code', () => {
  const swap = (code: string) => post('/session', { Authorization: undefined }, JSON.stringify({ code }));

  it('opens once; the second use is refused and told', async () => {
    const news: string[] = [];
    const stop = new AbortController();
    void world.dispatch(
      'watch',
      {},
      { signal: stop.signal, onProgress: (each) => news.push(JSON.stringify(each)) },
    );
    const code = new URL(host.newAddress()).hash.slice(1);
    expect(statusOf(await swap(code))).toBe(200);
    expect(statusOf(await swap(code))).toBe(403);
    expect(news.join()).toContain('used twice');
    stop.abort();
  });

  it('is void once a newer one was made', async () => {
    const older = new URL(host.newAddress()).hash.slice(1);
    host.newAddress();
    expect(statusOf(await swap(older))).toBe(403);
  });

  it.each(['', 'wrong', 'x'.repeat(900)])('cannot be guessed: %s', async (code) => {
    expect(statusOf(await swap(code))).toBe(403);
  });

  it.each(['{}', '[]', 'null', '{"code":{"toString":null}}', '{"code":["a"]}'])(
    'is text: %s',
    async (body) => {
      expect(statusOf(await post('/session', {}, body))).toBe(403);
    },
  );
});

/** What this program has taken in and not yet given up. */
async function copies(): Promise<string[]> {
  const added = await world.backend.uploads.addStream('probe', Readable.from(['x']));
  if (!added.ok || added.value.source.kind !== 'upload') throw new Error('refused');
  const probe = world.backend.uploads.find('upload', added.value.source.token)?.path ?? '';
  const others = (await readdir(dirname(probe))).filter((name) => name !== basename(probe));
  await unlink(probe);
  return others;
}

describe('a file sent by the page', () => {
  it('is refused under another content type, and where its name is no name', async () => {
    expect(statusOf(await post('/file?name=a.gpx', {}, 'x'))).toBe(415);
    const bytes = { 'Content-Type': 'application/octet-stream' };
    expect(statusOf(await post('/file?name=%E0%A4%A', bytes, 'x'))).toBe(400);
  });

  it('of too many bytes is refused in a sentence that arrives, however much still comes', async () => {
    const small = openUploads(1000);
    const strict = await serve({ ...world, backend: { ...world.backend, uploads: small } });
    const response = await fetch(`${strict.origin}/file?name=big.osm.pbf`, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/octet-stream',
        Origin: strict.origin,
        Authorization: `Bearer ${await keyOf(strict)}`,
      },
      body: Buffer.alloc(20_000_000),
    });
    expect(await response.json()).toMatchObject({ ok: false, error: { code: 'too-large' } });
    await strict.close();
    await small.close();
  });

  it('that breaks off leaves nothing behind', async () => {
    const half = request('POST /file?name=a.gpx', {
      ...asPage(),
      'Content-Type': 'application/octet-stream',
      'Content-Length': '1000',
    });
    await raw(port, `${half}<gpx`, 50);
    await vi.waitFor(async () => expect(await copies()).toEqual([]));
  });

  it('keeps no folder in its name', async () => {
    const bytes = { 'Content-Type': 'application/octet-stream' };
    const answer = await post(`/file?name=${encodeURIComponent('../../etc/cron.d/x\n.gpx')}`, bytes, '<gpx>');
    expect(answer).toContain('"name":"x .gpx"');
  });
});

describe('the end', () => {
  it('comes when the page has been gone for a while, not before there was one, and not on a reload', async () => {
    await host.close();
    let gone = 0;
    host = await serve(world, { onGone: () => gone++ });
    port = Number(new URL(host.origin).port);
    own = `127.0.0.1:${port}`;
    key = await keyOf(host);
    await new Promise((resolve) => setTimeout(resolve, 120));
    expect(gone).toBe(0);
    const watch = () => raw(port, request('POST /call/watch', asPage(), '{}'), 40);
    await watch();
    await watch();
    await watch();
    expect(gone).toBe(0);
    await vi.waitFor(() => expect(gone).toBe(1));
  });
});
