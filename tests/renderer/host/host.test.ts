import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { HttpHost } from '../../../main/loopback/http-host.ts';
import { chooseHost, type PageWindow } from '../../../renderer/host/choose.ts';
import { createClient } from '../../../renderer/host/client.ts';
import { httpPipe } from '../../../renderer/host/http.ts';
import { serve } from '../../main/contract/hosts.ts';
import { makeWorld, type World } from '../../main/contract/world.ts';

vi.mock('electron', () => import('../../main/electron/fake-electron.ts'));

const NEVER = new AbortController().signal;

/** Answers every fetch with the given bytes, in pieces of the given lengths. */
function answerWith(text: string, cuts: readonly number[] = [], status = 200): void {
  const bytes = new TextEncoder().encode(text);
  const ends = [...cuts.map((cut) => cut % (bytes.length + 1)), bytes.length].sort((a, b) => a - b);
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      let from = 0;
      for (const end of ends) {
        if (end > from) controller.enqueue(bytes.slice(from, end));
        from = Math.max(from, end);
      }
      controller.close();
    },
  });
  vi.stubGlobal('fetch', async () => new Response(body, { status }));
}
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the answer of a served page', () => {
  it('is read right wherever the stream is cut', async () => {
    const lines = [
      { progress: { what: 'Lesen ☂ 日本' } },
      { progress: { share: 1 } },
      { reply: { ok: true, value: 'Ü' } },
    ];
    const text = lines.map((line) => `${JSON.stringify(line)}\n`).join('');
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat({ max: 200 }), { maxLength: 12 }),
        fc.boolean(),
        async (cuts, ended) => {
          answerWith(ended ? text : text.trimEnd(), cuts);
          const heard: unknown[] = [];
          const reply = await httpPipe('http://x', 'k').call(
            'describe',
            {},
            (each) => heard.push(each),
            NEVER,
          );
          expect(reply).toEqual({ ok: true, value: 'Ü' });
          expect(heard).toEqual([{ what: 'Lesen ☂ 日本' }, { share: 1 }]);
        },
      ),
    );
  });

  it.each([
    ['that breaks off', '{"progress":1}\n', 200, 'host-gone'],
    ['that is no JSON', '<html>\n', 200, 'host-gone'],
    ['without a key', 'No key.', 401, 'http-401'],
    ['of too much', 'Too large.', 413, 'http-413'],
    ['of another kind', 'x', 500, 'http-500'],
  ])('%s is a sentence, not a throw', async (_, text, status, code) => {
    answerWith(text, [], status);
    const reply = await createClient(httpPipe('http://x', 'k')).call('describe', {});
    expect(reply).toMatchObject({ ok: false, error: { code, message: expect.stringMatching(/\.$/) } });
  });

  it('of a program that has gone is a sentence too', async () => {
    vi.stubGlobal('fetch', async () => {
      throw new TypeError('failed');
    });
    const client = createClient(httpPipe('http://x', 'k'));
    expect(await client.call('describe', {})).toMatchObject({ error: { code: 'host-gone' } });
    expect(await client.addFile(new File(['x'], 'a.gpx'))).toMatchObject({ error: { code: 'host-gone' } });
    expect(await client.call('describe', {}, { signal: AbortSignal.abort() })).toMatchObject({
      error: { code: 'cancelled' },
    });
  });
});

describe('a page that looks for its host', () => {
  let world: World;
  let host: HttpHost;
  beforeEach(async () => {
    world = await makeWorld();
    host = await serve(world);
    const plain = globalThis.fetch;
    vi.stubGlobal('fetch', (address: string, init: RequestInit) =>
      plain(address, { ...init, headers: { ...(init.headers as object), Origin: host.origin } }),
    );
  });
  afterEach(async () => {
    await host.close();
    await world.close();
  });

  const pageAt = (address: string, stored = new Map<string, string>()) => {
    const url = new URL(address);
    const shown: string[] = [];
    const page: PageWindow = {
      location: { origin: url.origin, pathname: url.pathname, hash: url.hash },
      history: { replaceState: (_state, _title, to) => shown.push(to) },
      sessionStorage: {
        getItem: (name) => stored.get(name) ?? null,
        setItem: (name, value) => void stored.set(name, value),
      },
    };
    return { page, shown, stored };
  };

  it('swaps the code for a key, clears the address, and finds it again after a reload', async () => {
    const { page, shown, stored } = pageAt(host.newAddress());
    const first = await chooseHost(page);
    expect(shown).toEqual(['/']);
    expect(first.ok && (await first.value.call('describe', {})).ok).toBe(true);
    const again = await chooseHost(pageAt(`${host.origin}/`, stored).page);
    expect(again.ok && (await again.value.call('describe', {})).ok).toBe(true);
  });

  it('is told what to do when its address was used before', async () => {
    const address = host.newAddress();
    await chooseHost(pageAt(address).page);
    expect(await chooseHost(pageAt(address).page)).toMatchObject({ ok: false, error: { code: 'no-key' } });
    expect(await chooseHost(pageAt(host.origin).page)).toMatchObject({ error: { code: 'no-key' } });
  });

  it("takes the program's own window before anything else", async () => {
    const asked: unknown[] = [];
    const own = {
      call: async (_id: string, name: string) => {
        asked.push(name);
        return { ok: true, value: {} };
      },
      cancel: () => {},
      addFile: async () => ({ ok: true, value: {} }),
    };
    const chosen = await chooseHost({ ...pageAt('http://x/#code').page, host: own });
    if (chosen.ok) await chosen.value.call('describe', {});
    expect(asked).toEqual(['describe']);
  });
});
