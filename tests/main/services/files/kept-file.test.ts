import { chmod, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ok } from '../../../../geo/result.ts';
import { DEFAULT_SETTINGS } from '../../../../main/contract/default-settings.ts';
import { tileOrigin } from '../../../../main/contract/tile-address.ts';
import { keptFile } from '../../../../main/services/files/kept-file.ts';
import { openSettings } from '../../../../main/services/settings/settings-store.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-kept-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const now = () => new Date('2026-05-01T09:00:00Z');
const kept = () =>
  keptFile({ folder, name: 'n.json', what: 'list', schema: z.strictObject({ n: z.number() }), now });
const text = (name: string) => readFile(join(folder, name), 'utf8');
const damaged = async () => (await readdir(folder)).filter((name) => name.includes('.damaged-'));

describe('a kept file', () => {
  it('is absent at first, and nothing is said of it', async () => {
    expect(await kept().read()).toMatchObject({ notices: [] });
  });

  it('comes back as it was written, its previous version beside it, nothing else left', async () => {
    const file = kept();
    await file.update(() => ok({ n: 1 }));
    await file.update(() => ok({ n: 2 }));
    expect(await kept().read()).toMatchObject({ value: { n: 2 }, notices: [] });
    expect(JSON.parse(await text('n.json.bak'))).toEqual({ n: 1 });
    expect((await readdir(folder)).sort()).toEqual(['n.json', 'n.json.bak', 'turns']);
  });

  it('written many times at once holds the last', async () => {
    const file = kept();
    await Promise.all(Array.from({ length: 30 }, (_, n) => file.update(() => ok({ n }))));
    expect((await kept().read()).value).toEqual({ n: 29 });
    expect(await readdir(folder)).toHaveLength(3);
  });

  it.each([
    ['cut short', '{"n":'],
    ['empty', ''],
    ['of another shape', '{"n":"1"}'],
    ['with an unknown field', '{"n":1,"m":2}'],
    ['reaching for the prototype', '{"n":1,"__proto__":{"x":1}}'],
    ['no object', '[[[]]]'],
    ['deeper than any parser likes', '['.repeat(200_000)],
    ['not text', '\uFFFD{}'],
  ])('%s is set aside under another name, whole, and said so', async (_, content) => {
    await writeFile(join(folder, 'n.json'), content);
    const file = kept();
    const read = await file.read();
    expect(read.value).toBeUndefined();
    expect(read.notices.join()).toMatch(/could not be used .* set aside as .*n\.json\.damaged-/);
    const [aside] = await damaged();
    expect(await text(aside ?? '')).toBe(content);
    // the next save takes nothing from it
    expect((await file.update(() => ok({ n: 5 }))).ok).toBe(true);
    expect(await text(aside ?? '')).toBe(content);
  });

  it('damaged twice in the same second is set aside twice', async () => {
    for (const content of ['a', 'b']) {
      await writeFile(join(folder, 'n.json'), content);
      await kept().read();
    }
    expect((await Promise.all((await damaged()).map(text))).sort()).toEqual(['a', 'b']);
  });

  it('damaged, with a sound previous version, comes back as that, and says so', async () => {
    const file = kept();
    await file.update(() => ok({ n: 1 }));
    await file.update(() => ok({ n: 2 }));
    await writeFile(join(folder, 'n.json'), 'x');
    const read = await kept().read();
    expect(read.value).toEqual({ n: 1 });
    expect(read.notices.join(' ')).toContain('The previous version of the list is used.');
  });

  it('too large to be ours is set aside', async () => {
    await writeFile(join(folder, 'n.json'), Buffer.alloc(9_000_000, 32));
    expect((await kept().read()).notices.join()).toContain('set aside');
  });

  it('that is a folder is set aside like any other', async () => {
    await mkdir(join(folder, 'n.json'));
    expect((await kept().read()).notices.join()).toContain('it is not a file');
    expect(await damaged()).toHaveLength(1);
  });

  it('in a folder that cannot be written is refused in a sentence, and stays', async () => {
    await writeFile(join(folder, 'plain'), '');
    const file = keptFile({
      folder: join(folder, 'plain'),
      name: 'n.json',
      what: 'list',
      schema: z.strictObject({ n: z.number() }),
      now,
    });
    expect(await file.read()).toMatchObject({ notices: [] });
    const written = await file.update(() => ok({ n: 1 }));
    expect(written.ok ? '' : written.error.message).toMatch(/^The list could not be saved in .*unchanged\.$/);
  });

  it.skipIf(process.getuid?.() === 0)('that may not be read is never written over', async () => {
    await writeFile(join(folder, 'n.json'), '{"n":1}');
    await chmod(join(folder, 'n.json'), 0);
    const file = kept();
    expect((await file.read()).notices.join()).toContain('nothing is saved over it');
    expect((await file.update(() => ok({ n: 2 }))).ok).toBe(false);
    await chmod(join(folder, 'n.json'), 0o600);
    expect(await text('n.json')).toBe('{"n":1}');
  });

  it('of any content is read without a throw and never lost', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.uint8Array().map((a) => Buffer.from(a).toString('latin1')),
        ),
        async (content) => {
          await rm(folder, { recursive: true, force: true });
          await mkdir(folder);
          await writeFile(join(folder, 'n.json'), content);
          const read = await kept().read();
          if (read.value === undefined) expect(await text((await damaged())[0] ?? '')).toBe(content);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('settings', () => {
  it('start with the defaults and keep what was saved', async () => {
    const first = await openSettings(folder, now);
    expect(first.current()).toEqual(DEFAULT_SETTINGS);
    await first.save({ ...DEFAULT_SETTINGS, palette: 'night' });
    expect((await openSettings(folder, now)).current().palette).toBe('night');
  });

  it('that were damaged are the defaults, with a notice', async () => {
    await writeFile(join(folder, 'settings.json'), '{"units":"cubits"}');
    const settings = await openSettings(folder, now);
    expect(settings.current()).toEqual(DEFAULT_SETTINGS);
    expect(settings.notices()).toHaveLength(1);
  });
});

describe('a tile address', () => {
  it.each([
    ['https://tile.example/{z}/{x}/{y}.png', 'https://tile.example'],
    ['https://TILE.example:8443/a/{z}/{x}/{y}?k=1', 'https://tile.example:8443'],
    ['https://tile.example/{z}/{x}', undefined],
    ['https://tile.example', undefined],
    ['https://*.example/{z}/{x}/{y}', undefined],
    ["https://a; script-src 'unsafe-inline'/{z}/{x}/{y}", undefined],
    ['https://a@b/{z}/{x}/{y}', undefined],
    ['javascript:{z}{x}{y}', undefined],
    ['https://tile.example/{z}/{x}/{y}\nX-Header: 1', undefined],
  ])('%j is fetched from %s', (address, origin) => {
    expect(tileOrigin(address)).toBe(origin);
  });
});
