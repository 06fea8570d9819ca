import { describe, expect, it, vi } from 'vitest';
import { securityHeaders } from '../../../main/assets.ts';
import { serveScheme } from '../../../main/electron/scheme.ts';
import { FakeSession } from './fake-electron.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

const bytes = (text: string) => new TextEncoder().encode(text);
const assets = new Map([
  ['/', { type: 'text/html; charset=utf-8', bytes: bytes('page') }],
  ['/assets/a.js', { type: 'text/javascript; charset=utf-8', bytes: bytes('script') }],
]);

const session = new FakeSession();
serveScheme(session as never, assets, () => undefined);
const ask = async (url: string, method = 'GET') => {
  // a request as Electron makes it: its address is not resolved again
  const response = await session.served.get('app')?.({ url, method } as Request);
  return { status: response?.status, text: await response?.text(), headers: response?.headers };
};

describe('the own scheme', () => {
  it('gives the page and its files with their types and every safety header', async () => {
    const page = await ask('app://lanegauge/');
    expect([page.status, page.text]).toEqual([200, 'page']);
    expect(page.headers?.get('content-type')).toBe('text/html; charset=utf-8');
    for (const [name, value] of Object.entries(securityHeaders(undefined)))
      expect(page.headers?.get(name)).toBe(value);
    expect((await ask('app://lanegauge/assets/a.js')).text).toBe('script');
  });

  it.each([
    'app://lanegauge/index.html',
    'app://lanegauge/../package.json',
    'app://lanegauge/%2e%2e/package.json',
    'app://lanegauge/assets/../../x',
    'app://lanegauge//etc/passwd',
    'app://lanegauge/?x',
    'app://lanegauge/__proto__',
    'app://lanegauge.evil/',
    'app://other/',
    'app://lanegauge:1/',
    'app:///',
  ])('has nothing at %s', async (url) => {
    const answer = await ask(url);
    expect(answer.status).toBe(404);
    expect(answer.headers?.get('content-security-policy')).toContain("default-src 'none'");
  });

  it('takes nothing in', async () => {
    expect((await ask('app://lanegauge/', 'POST')).status).toBe(404);
  });
});
