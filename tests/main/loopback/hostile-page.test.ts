import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type HttpHost, serveHttp } from '../../../main/loopback/http-host.ts';
import { findChromium } from '../../browser/support/find-chromium.ts';
import { makeWorld, type World } from '../contract/world.ts';

vi.mock('electron', () => import('../electron/fake-electron.ts'));

/** The page of the program: swaps its code as the real one does and asks for the description. */
const PAGE = `<!doctype html><html><head><link rel="icon" href="data:,"></head><body><script src="/page.js"></script></body></html>`;
const SCRIPT = `(async () => {
  const code = location.hash.slice(1);
  history.replaceState(null, '', '/');
  if (code) {
    const r = await fetch('/session', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ code }) });
    if (r.ok) sessionStorage.setItem('key', (await r.json()).key);
  }
  const key = sessionStorage.getItem('key');
  const r = await fetch('/call/describe', { method: 'POST', headers: { 'Content-Type': 'application/json', Authorization: 'Bearer ' + key }, body: '{}' });
  document.body.dataset.got = r.status + ' ' + (await r.text()).includes('coach-built');
})();`;

/** Everything a foreign page can try, and how each try ended. */
const ATTACK = `(target, rebound) => {
  const json = { 'Content-Type': 'application/json', Authorization: 'Bearer x' };
  const status = async (address, more) => (await fetch(address, more)).status;
  const post = (path, body, more) => fetch(target + path, { method: 'POST', headers: json, body, ...more });
  const tried = async (name, act) => {
    try {
      return [name, await act()];
    } catch {
      return [name, 'failed'];
    }
  };
  const loads = (tag, address) =>
    new Promise((resolve) => {
      const element = document.createElement(tag);
      element.onload = () => resolve('loaded');
      element.onerror = () => resolve('failed');
      element.src = address;
      document.body.append(element);
    });
  return Promise.all([
    tried('read', () => status(target + '/')),
    tried('ask', async () => (await post('/call/describe', '{}')).status),
    tried('blind', async () => (await post('/call/describe', '{}', { mode: 'no-cors', headers: {} })).type),
    tried('code', async () => (await post('/session', '{"code":"x"}')).status),
    tried('rebound', () => status(rebound + '/')),
    tried('script', () => loads('script', target + '/page.js')),
    // a frame loads its browser's error page: which page it holds is looked at from outside
    tried('frame', () => loads('iframe', target + '/')),
  ]);
}`;

describe('in a real browser', () => {
  let world: World;
  let host: HttpHost;
  let hostile: Server;
  let browser: Browser;
  let hostileOrigin = '';
  const reached: string[] = [];

  beforeAll(async () => {
    world = await makeWorld();
    const encode = (text: string) => new TextEncoder().encode(text);
    host = await serveHttp({
      dispatch: async (name, request, hooks) => {
        reached.push(String(name));
        return world.dispatch(name, request, hooks);
      },
      uploads: world.backend.uploads,
      assets: new Map([
        ['/', { type: 'text/html; charset=utf-8', bytes: encode(PAGE) }],
        ['/page.js', { type: 'text/javascript; charset=utf-8', bytes: encode(SCRIPT) }],
      ]),
      tileAddress: () => undefined,
      onSpentCode: () => {},
      onGone: () => {},
      now: () => performance.now(),
    });
    hostile = createServer((_, response) => {
      response.setHeader('Content-Type', 'text/html');
      response.end('<!doctype html><title>hostile</title><body></body>');
    });
    await new Promise<void>((resolve) => hostile.listen(0, '127.0.0.1', resolve));
    hostileOrigin = `http://127.0.0.1:${(hostile.address() as AddressInfo).port}`;
    browser = await chromium.launch({
      executablePath: findChromium(),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        // a name of the attacker's that leads to this computer
        '--host-resolver-rules=MAP evil.test 127.0.0.1',
      ],
    });
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    hostile?.close();
    await host?.close();
    await world?.close();
  });

  it("the program's page gets its answer, the address bar keeps no secret, and a reload still works", async () => {
    const page = await browser.newPage();
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    await page.goto(host.newAddress());
    await page.waitForSelector('body[data-got="200 true"]', { state: 'attached', timeout: 8000 });
    expect(page.url()).toBe(`${host.origin}/`);
    await page.reload();
    await page.waitForSelector('body[data-got="200 true"]', { state: 'attached', timeout: 8000 });
    expect(said).toEqual([]);
    // another tab has another session storage
    const other = await browser.newPage();
    await other.goto(host.origin);
    await other.waitForSelector('body[data-got="401 false"]', { state: 'attached', timeout: 8000 });
    await page.close();
    await other.close();
  });

  it.each(['another port of this computer', 'a name that leads here'])(
    'a hostile page on %s reaches nothing',
    async (where) => {
      const port = new URL(host.origin).port;
      const from =
        where === 'a name that leads here' ? hostileOrigin.replace('127.0.0.1', 'evil.test') : hostileOrigin;
      const page = await browser.newPage();
      await page.goto(from);
      reached.length = 0;
      const outcome: [string, unknown][] = await page.evaluate(
        `(${ATTACK})(${JSON.stringify(host.origin)}, ${JSON.stringify(`http://evil.test:${port}`)})`,
      );
      const of = Object.fromEntries(outcome);
      // a blind request may be sent, but its answer is opaque and the host refuses it before any call
      expect(['opaque', 'failed']).toContain(of['blind']);
      const { blind: _, ...rest } = of;
      expect(rest).toEqual({
        read: 'failed',
        ask: 'failed',
        code: 'failed',
        rebound: 'failed',
        script: 'failed',
        frame: 'loaded',
      });
      // the frame's own address is told a moment after it loaded
      await expect.poll(() => page.frames()[1]?.url()).toMatch(/^chrome-error:/);
      expect(reached).toEqual([]);
      await page.close();
    },
  );

  it('a page under a name that leads here is refused even as the top page', async () => {
    const page = await browser.newPage();
    const answer = await page.goto(`http://evil.test:${new URL(host.origin).port}/`);
    expect(answer?.status()).toBe(421);
    await page.close();
  });
});
