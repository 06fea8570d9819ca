import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { RECENTS_MAX } from '../../../../main/contract/limits.ts';
import { openRecents } from '../../../../main/services/recents/recents-store.ts';
import { fileUse } from '../../../../main/services/uploads/file-use.ts';
import { openUploads, plainName, type Uploads } from '../../../../main/services/uploads/uploads.ts';

let folder: string;
let uploads: Uploads;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-uploads-'));
  uploads = openUploads(1000);
});
afterEach(async () => {
  await uploads.close();
  await rm(folder, { recursive: true, force: true });
});

const bytes = (text: string) => Readable.from([Buffer.from(text)]);
const now = () => new Date('2026-05-01T09:00:00Z');

describe('a file taken in', () => {
  it('is known by its token, and gone when the program ends', async () => {
    const added = await uploads.addStream('a.gpx', bytes('<gpx/>'));
    if (!added.ok || added.value.source.kind !== 'upload') throw new Error('refused');
    const held = uploads.find('upload', added.value.source.token);
    expect(await readFile(held?.path ?? '', 'utf8')).toBe('<gpx/>');
    expect(uploads.find('path', added.value.source.token)).toBeUndefined();
    await uploads.close();
    await expect(readFile(held?.path ?? '')).rejects.toThrow();
  });

  it('of too many bytes is refused, and nothing of it stays', async () => {
    const added = await uploads.addStream('big.osm.pbf', Readable.from(Array(20).fill(Buffer.alloc(100))));
    expect(added.ok ? '' : added.error.code).toBe('too-large');
    const whole = await uploads.addStream('fits.osm.pbf', Readable.from(Array(10).fill(Buffer.alloc(100))));
    expect(whole.ok).toBe(true);
  });

  it('that breaks off is refused', async () => {
    const broken = new Readable({ read() {} });
    setTimeout(() => broken.destroy(new Error('aborted')), 5);
    const added = await uploads.addStream('a.gpx', broken);
    expect(added.ok ? '' : added.error.message).toContain('did not arrive whole');
  });

  it.each(['/dev/zero', '/dev', '/does/not/exist.gpx'])(
    'is an ordinary file: %s is refused',
    async (path) => {
      expect((await uploads.addPath(path)).ok).toBe(false);
    },
  );
});

describe('a file name', () => {
  it.each([
    ['../../etc/passwd', 'passwd'],
    ['C:\\Users\\ann\\lake.gpx', 'lake.gpx'],
    ['a\u0000b\u202e\n.gpx', 'a·b· .gpx'],
    ['', 'unnamed file'],
    ['..', '..'],
    ['x'.repeat(10_000), 'x'.repeat(255)],
  ])('%j is shown as %j', (name, shown) => {
    expect(plainName(name)).toBe(shown);
  });
});

describe('what a file is for', () => {
  it.each([
    ['drive in disguise.json', '<?xml version="1.0"?>\n<gpx version="1.1">', 'drive'],
    ['prefixed.xml', '<g:gpx xmlns:g="x">', 'drive'],
    ['map in disguise.gpx', '<osm version="0.6">', 'map'],
    ['cut.gpx', '<?xml', 'drive'],
    ['area.osm.pbf', '\0\0\0\u000d\n\tOSMHeader', 'map'],
    ['unknown.bin', 'x', 'map'],
  ])('%s: %s', async (name, content, use) => {
    const path = join(folder, 'f');
    await writeFile(path, content);
    expect(await fileUse(path, name)).toEqual({ ok: true, value: use });
  });

  it('is seen through UTF-16, and a packed map is a map', async () => {
    const path = join(folder, 'f');
    await writeFile(path, Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from('<gpx >', 'utf16le')]));
    expect(await fileUse(path, 'x')).toEqual({ ok: true, value: 'drive' });
    await writeFile(path, gzipSync('<osm/>'));
    expect(await fileUse(path, 'a.osm.gz')).toEqual({ ok: true, value: 'map' });
  });

  it('is refused where it can be neither, with what it is', async () => {
    const path = join(folder, 'f');
    await writeFile(path, '%PDF-1.7');
    const refused = await fileUse(path, 'drive.gpx');
    expect(refused.ok ? '' : refused.error.message).toMatch(/^drive\.gpx is a PDF\./);
  });
});

describe('the list of recent files', () => {
  const data = () => join(folder, 'data');
  const file = (path: string, passing = false) => ({
    path,
    name: 'a.gpx',
    use: 'drive' as const,
    passing,
    bytes: 5,
  });

  it('holds a file once, the newest first, and no more than a dozen', async () => {
    const recents = await openRecents(data(), now);
    for (let i = 0; i < 20; i++) await recents.add({ ...file(`/drives/${i}`), name: `${i}` });
    await recents.add({ ...file('/drives/15'), name: '15' });
    const names = recents.list().map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(['15', '19', '18']);
    expect(names).toHaveLength(RECENTS_MAX);
    expect((await openRecents(data(), now)).list()).toEqual(recents.list());
  });

  it('never tells the page where a file lies', async () => {
    const recents = await openRecents(data(), now);
    await recents.add(file('/home/ann/drives/a.gpx'));
    expect(JSON.stringify(recents.list())).not.toContain('ann');
  });

  it('keeps a copy of a passing file until it is forgotten', async () => {
    await writeFile(join(folder, 'passing'), 'drive');
    const recents = await openRecents(data(), now);
    await recents.add(file(join(folder, 'passing'), true));
    await recents.add(file(join(folder, 'passing'), true));
    await rm(join(folder, 'passing'));
    const [entry, ...more] = recents.list();
    expect(more).toEqual([]);
    const again = await openRecents(data(), now);
    expect(await readFile(again.find(entry?.id ?? '')?.path ?? '', 'utf8')).toBe('drive');
    await again.forget(entry?.id ?? '');
    expect(await readdir(join(data(), 'copies'))).toEqual([]);
  });

  it('does not copy what is too large, nor stop where a file has gone', async () => {
    const recents = await openRecents(data(), now);
    await recents.add({ ...file('/nowhere', true), bytes: 1e9 });
    await recents.add(file('/nowhere', true));
    expect(recents.list()).toEqual([]);
  });

  it.each(['{"entries":[{"path":"/etc/passwd"}]}', '[]', 'x'])(
    'that was tampered with is set aside: %s',
    async (text) => {
      await mkdir(data());
      await writeFile(join(data(), 'recents.json'), text);
      const recents = await openRecents(data(), now);
      expect(recents.list()).toEqual([]);
      expect(recents.notices()).toHaveLength(1);
    },
  );
});
