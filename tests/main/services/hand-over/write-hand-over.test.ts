import { chmod, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../../../../main/services/hand-over/find-browser.ts';
import { type HandedOver, handOver } from '../../../../main/services/hand-over/hand-over.ts';
import { printPdf } from '../../../../main/services/hand-over/print-pdf.ts';
import { writeHandOver } from '../../../../main/services/hand-over/write-hand-over.ts';
import { type Failure, failFrom } from '../../../support/failing-disk.ts';
import { handedOver } from '../../../support/hand-over/handed-over.ts';
import { road } from '../../../support/way-round/ask-ways.ts';

const NORTH = handedOver([road(1, ['0,0', '5,0'])], [1]);
const EAST = handedOver([road(1, ['0,0', '9,0'])], [1]);
const folders: string[] = [];
let north: HandedOver;
let east: HandedOver;

async function scratchFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'handed-'));
  folders.push(folder);
  return folder;
}

afterAll(() => Promise.all(folders.map((folder) => rm(folder, { recursive: true }))));

async function made(of: typeof NORTH): Promise<HandedOver> {
  const handed = await handOver({ ...of, ...of.drawn });
  if (!handed.ok) throw new Error(handed.error.message);
  return handed.value;
}

beforeAll(async () => {
  north = await made(NORTH);
  east = await made(EAST);
});

describe('a handing-over', () => {
  it('is written whole into a new folder, and gives way to a later one of the same drive', async () => {
    const folder = join(await scratchFolder(), 'new', 'folder');
    const files = { ...north.files, 'sheet.pdf': new Uint8Array([37]) };
    expect(await writeHandOver(folder, files, NORTH)).toMatchObject({ ok: true });
    expect((await readdir(folder)).sort()).toEqual(Object.keys(files).sort());
    expect(await writeHandOver(folder, north.files, NORTH)).toMatchObject({ ok: true });
    // a PDF of the earlier check is no longer true
    expect((await readdir(folder)).sort()).toEqual(Object.keys(north.files).sort());
  });

  it('leaves alone a folder with other files, or with another drive', async () => {
    const folder = await scratchFolder();
    await writeFile(join(folder, 'letter.txt'), 'mine');
    const taken = await writeHandOver(folder, north.files, NORTH);
    expect(taken).toMatchObject({ ok: false, error: { message: expect.stringContaining('"letter.txt"') } });
    expect(await readdir(folder)).toEqual(['letter.txt']);
    const other = await scratchFolder();
    await writeHandOver(other, east.files, EAST);
    expect(await writeHandOver(other, north.files, NORTH)).toMatchObject({ ok: false });
    expect(await readFile(join(other, 'report.json'), 'utf8')).toBe(east.files['report.json']);
  });

  it('says what is wrong where a file stands in the folder’s place', async () => {
    const folder = await scratchFolder();
    await writeFile(join(folder, 'file'), '');
    const refused = await writeHandOver(join(folder, 'file'), north.files, NORTH);
    expect(refused).toMatchObject({ ok: false, error: { message: expect.stringContaining('is a file') } });
    expect(await writeHandOver(join(folder, 'file', 'below'), north.files, NORTH)).toMatchObject({
      ok: false,
    });
  });
});

describe('a handing-over on a disk that fails from any moment on', () => {
  const EARLIER = { 'sheet.html': 'earlier', 'day.ics': 'earlier' };
  it.each<Failure>(['full', 'ended'])(
    '(%s) is all of the later check or all of the earlier, never of both',
    async (failure) => {
      const told = ['report.json', 'drive.gpx'] as const;
      const earlier = { ...EARLIER, ...Object.fromEntries(told.map((name) => [name, north.files[name]!])) };
      for (let from = 0; ; from++) {
        const folder = await scratchFolder();
        expect(await writeHandOver(folder, earlier, NORTH)).toMatchObject({ ok: true });
        const disk = await failFrom(from, failure);
        const written = await writeHandOver(folder, north.files, NORTH).finally(disk.restore);
        const names = (await readdir(folder)).filter((name) => !name.startsWith('.'));
        const text = async (name: string) => readFile(join(folder, name), 'utf8');
        const own = names.filter((name) => !told.some((each) => each === name));
        const later = await Promise.all(own.map(async (name) => (await text(name)) !== 'earlier'));
        expect(new Set(later).size).toBeLessThan(2);
        if (written.ok) expect(names.sort()).toEqual(Object.keys(north.files).sort());
        else if (!written.error.message.includes('lies in'))
          expect(names.sort()).toEqual(Object.keys(earlier).sort());
        // whatever was left, the next try ends well
        if (names.includes('report.json') && names.includes('drive.gpx'))
          expect(await writeHandOver(folder, north.files, NORTH)).toMatchObject({ ok: true });
        if (disk.count() <= from) break;
      }
    },
  );
});

describe('a sheet as PDF', () => {
  it('is not made without a browser, by one that hangs, or by one that writes something else', async () => {
    expect(await printPdf('', undefined)).toMatchObject({
      ok: false,
      error: { message: expect.stringContaining('no Chromium') },
    });
    const folder = await scratchFolder();
    const fake = async (name: string, script: string) => {
      const path = join(folder, name);
      await writeFile(path, `#!/bin/sh\n${script}\n`);
      await chmod(path, 0o755);
      return path;
    };
    const hangs = await printPdf('', await fake('hangs', 'sleep 60'), { longestMs: 200 });
    expect(hangs).toMatchObject({ ok: false, error: { message: expect.stringContaining('in time') } });
    const writes =
      'for w; do case $w in --print-to-pdf=*) echo "$DATA" > "$(echo "$w" | cut -d= -f2-)";; esac; done';
    const wrong = await printPdf('', await fake('wrong', `DATA=no; ${writes}`));
    expect(wrong).toMatchObject({ ok: false });
    const right = await printPdf('', await fake('right', `DATA=%PDF-1.4; ${writes}`));
    expect(right).toMatchObject({ ok: true });
    expect(await printPdf('', join(folder, 'none'))).toMatchObject({ ok: false });
  });

  it('is printed by a browser on the path', async () => {
    const folder = await scratchFolder();
    await mkdir(join(folder, 'bin'));
    expect(findBrowser({ PATH: join(folder, 'bin') }, 'linux')).toBeUndefined();
    await writeFile(join(folder, 'bin', 'chromium'), '');
    expect(findBrowser({ PATH: join(folder, 'bin') }, 'linux')).toBe(join(folder, 'bin', 'chromium'));
  });
});
