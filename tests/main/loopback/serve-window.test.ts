import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { serveWindow } from '../../../main/loopback/serve-window.ts';
import { makeWorld, type World } from '../contract/world.ts';

let world: World;
beforeEach(async () => {
  world = await makeWorld();
});
afterEach(async () => {
  await world.close();
});

const served = (more: Partial<Parameters<typeof serveWindow>[0]> = {}) => {
  const said: string[] = [];
  const stop = new AbortController();
  const ended = serveWindow({
    backend: world.backend,
    assets: new Map(),
    say: (line) => said.push(line),
    signal: stop.signal,
    ...more,
  });
  return { said, stop, ended };
};
const ADDRESS = /^http:\/\/127\.0\.0\.1:\d+\/#[\w-]{43}$/;

const redeem = async (address: string) => {
  const { origin, hash } = new URL(address);
  const headers = { 'Content-Type': 'application/json', Origin: origin };
  const body = JSON.stringify({ code: hash.slice(1) });
  const response = await fetch(`${origin}/session`, { method: 'POST', headers, body });
  return {
    origin,
    status: response.status,
    key: response.ok ? ((await response.json()) as { key: string }).key : '',
  };
};

describe('the served window', () => {
  it('says its address, and ends when it is stopped', async () => {
    const opened: string[] = [];
    const { said, stop, ended } = served({ open: (address) => opened.push(address) });
    await vi.waitFor(() => expect(said).toHaveLength(1));
    expect(said[0]).toMatch(ADDRESS);
    expect(opened).toEqual(said);
    stop.abort();
    expect(await ended).toBe('stopped');
    await expect(fetch(new URL(said[0] ?? '').origin)).rejects.toThrow();
  });

  it('says its address again below what was printed meanwhile, and it is good', async () => {
    const { said, stop, ended } = served({ meanwhile: async () => 'The window:' });
    await vi.waitFor(() => expect(said).toHaveLength(3));
    expect(said.slice(1)).toEqual(['The window:', said[0]]);
    expect((await redeem(said[0] ?? '')).status).toBe(200);
    stop.abort();
    await ended;
  });

  it('stopped before it began ends at once', async () => {
    expect(await served({ signal: AbortSignal.abort() }).ended).toBe('stopped');
  });

  it('ends when its page has gone', async () => {
    const { said, ended } = served({ goneAfterMs: 30 });
    await vi.waitFor(() => expect(said).toHaveLength(1));
    const { origin, key } = await redeem(said[0] ?? '');
    const leave = new AbortController();
    const response = await fetch(`${origin}/call/watch`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Origin: origin, Authorization: `Bearer ${key}` },
      body: '{}',
      signal: leave.signal,
    });
    expect(response.status).toBe(200);
    leave.abort();
    expect(await ended).toBe('page gone');
  });

  it('gives a fresh address on Enter, and warns of a second use', async () => {
    const keyboard = new PassThrough();
    const { said, stop, ended } = served({ keyboard });
    await vi.waitFor(() => expect(said).toHaveLength(1));
    keyboard.write('\n');
    await vi.waitFor(() => expect(said).toHaveLength(2));
    expect((await redeem(said[0] ?? '')).status).toBe(403);
    expect((await redeem(said[1] ?? '')).status).toBe(200);
    expect((await redeem(said[1] ?? '')).status).toBe(403);
    expect(said[2]).toContain('used a second time');
    stop.abort();
    await ended;
  });
});
