import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkCommand } from '../../../../main/cli/check/check-command.ts';
import { planCommand } from '../../../../main/cli/plan/plan-command.ts';
import { printImported, printMaps } from '../../../../main/cli/shelf/print-maps.ts';
import { shelfCommand } from '../../../../main/cli/shelf/shelf-command.ts';
import { mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { terminalOf } from '../../../support/terminal.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const MAP = join(SAMPLE, 'district.osm.pbf');

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'shelf-cli-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function shelf(...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const exit = await shelfCommand(words, terminal, { importPart: importByHand });
  return { exit, ...said };
}

async function check(...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const vehicle = join(SAMPLE, 'vehicles', 'coach-built-7.4.json');
  const drive = join(SAMPLE, 'drives', 'barred.gpx');
  const exit = await checkCommand(
    ['--route', drive, '--vehicle', vehicle, '--country', 'GB', '--json', ...words],
    terminal,
  );
  return { exit, ...said };
}

async function plan(...places: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const vehicle = join(SAMPLE, 'vehicles', 'coach-built-7.4.json');
  const at = places.flatMap((place) => ['--at', place]);
  const exit = await planCommand(
    [...at, '--vehicle', vehicle, '--country', 'GB', '--gpx', 'n.gpx'],
    terminal,
  );
  return { exit, ...said };
}

/** Changes the file that a map's roads and names are kept in. */
function damage(map: string, change: (bytes: Buffer) => Uint8Array): void {
  const folder = mapFolder(join(home, 'shelf'), map);
  const part = join(folder, readdirSync(folder).find((name) => name.endsWith('.shelf'))!);
  writeFileSync(part, change(readFileSync(part)));
}

/** What lies in a folder: each file's name, bytes and time. */
function allBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .map((name) => {
      const path = join(folder, name);
      const { mtimeMs } = statSync(path);
      return `${name} ${mtimeMs} ${statSync(path).isFile() ? readFileSync(path, 'base64') : ''}`;
    });
}

function withoutMap(json: string): unknown {
  const { map: _, made: __, ...rest } = JSON.parse(json);
  return rest;
}

describe('lanegauge shelf', () => {
  it('takes a map in, lists it, and a check without --map gives the report of the file', async () => {
    const { terminal, said: taken } = terminalOf(home);
    expect(await shelfCommand(['import', MAP], terminal)).toBe(0);
    expect(taken.complaint).toBe('');
    expect(taken.out).toMatch(/^"district": around Wenlowbridge, [\d,]+ roads, /);
    const listed = JSON.parse((await shelf('list', '--json')).out);
    expect(listed.maps).toHaveLength(1);
    expect(listed.maps[0]).toMatchObject({
      name: 'district',
      state: 'ready',
      sources: [{ name: 'district.osm.pbf' }],
    });
    const [fromShelf, fromFile] = [await check(), await check('--map', MAP)];
    expect(fromShelf.exit).toBe(1);
    expect(withoutMap(fromShelf.out)).toEqual(withoutMap(fromFile.out));
  });

  it('empty, says how a map gets there; a check without a map is refused with the two ways', async () => {
    expect((await shelf('list')).out).toContain('Nothing is on the shelf');
    expect(JSON.parse((await shelf('list', '--json')).out)).toEqual({ maps: [] });
    const refused = await check();
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain('--map');
    expect(refused.complaint).toContain('shelf import');
    expect(refused.complaint).toContain('shelf fetch');
  });

  it('verify ends with 1 where something is damaged, with 0 once it is mended', async () => {
    await shelf('import', MAP, '--name', 'Our district');
    expect(await shelf('verify')).toMatchObject({ exit: 0 });
    damage('Our district', (bytes) => {
      for (let at = 2000; at < bytes.length / 2; at += 1000) bytes[at]! ^= 1;
      return bytes;
    });
    const before = allBelow(join(home, 'shelf'));
    const checked = await check();
    expect(`${checked.out}${checked.complaint}`).toContain('"Our district\\" is damaged');
    const found = await shelf('verify', 'Our district', '--json');
    expect(found.exit).toBe(1);
    // whoever reads, writes nothing
    expect(allBelow(join(home, 'shelf'))).toEqual(before);
    expect(JSON.parse(found.out).maps).toMatchObject([{ name: 'Our district', state: 'damaged' }]);
    const mended = await shelf('verify', 'Our district', '--repair');
    expect(mended.exit).toBe(0);
    expect(mended.out).toContain('made anew');
    expect(await shelf('verify')).toMatchObject({ exit: 0 });
  });

  it('a map that takes another’s place says which, and that what was checked on that wants checking again', () => {
    const map = {
      name: 'district',
      roads: 52,
      bytes: 300_000,
      dataDate: '2026-11-20T00:00:00Z',
      sources: [],
      state: 'ready',
      origin: { by: 'file' },
      imported: '2026-11-27T09:00:00Z',
    } as const;
    const told = printImported([{ ...map, replaced: { ...map, dataDate: '2018-05-01T00:00:00Z' } }]);
    expect(told).toContain('takes the place of the map of 2018-05-01: check again');
    expect(printImported([map])).not.toContain('takes the place');
  });

  it('a damaged map is what a plan tells first, before a name not found and a way that is not there', async () => {
    // with the index of names, which a map taken in by hand lacks
    const { terminal } = terminalOf(home);
    expect(await shelfCommand(['import', MAP, '--name', 'Our district'], terminal)).toBe(0);
    expect((await shelf('list')).exit).toBe(0);
    // some tiles of roads, not all; nothing leads to a place off the map
    damage('Our district', (bytes) => {
      for (let at = 2000; at < bytes.length / 3; at += 20_000) bytes[at]! ^= 1;
      return bytes;
    });
    const off = await plan('47.499642,-19.985473', '47.43,-19.9');
    expect(off.exit).not.toBe(0);
    expect(off.complaint).toMatch(
      /^The map "Our district" is damaged: what cannot be read of it is left out.*verify --repair\. \S/,
    );
    const lost =
      /^The map "Our district" is damaged: names, roads and limits that cannot be read there are not known, and were not searched\. Mend it .*verify --repair\. --at "Pellam": no place or road that can be read is called so/;
    damage('Our district', (bytes) => {
      // the index of names stands before the directory, which is last
      for (let at = Math.ceil(bytes.length * 0.93); at < bytes.length * 0.994; at += 20) bytes[at]! ^= 1;
      return bytes;
    });
    expect(await plan('Pellam', 'Oxholt')).toMatchObject({
      exit: 2,
      complaint: expect.stringMatching(lost),
    });
    damage('Our district', (bytes) => bytes.subarray(0, bytes.length / 2));
    expect(await plan('Pellam', 'Oxholt')).toMatchObject({
      exit: 2,
      complaint: expect.stringMatching(lost),
    });
    expect(await shelf('list')).toMatchObject({ exit: 1, out: expect.stringContaining('damaged: mend it') });
    expect((await shelf('list', '--json')).exit).toBe(1);
  });

  it('a map that took the place of newer data is told so in the list', () => {
    const map = { name: 'Vale', roads: 1, bytes: 1, imported: '', state: 'ready' as const, sources: [] };
    const told = (dates: { dataDate?: string }) =>
      printMaps([{ ...map, ...dates, newerBefore: '2026-05-01' }]);
    expect(told({})).toContain('Its file tells no date, and it took the place of data of 1 May 2026');
    expect(told({ dataDate: '2026-03-01' })).toContain(
      'Its data of 1 March 2026 is older than what was there',
    );
    expect(printMaps([map])).not.toContain('took the place');
  });

  it('what a file was called cannot steer the terminal that it is listed in', () => {
    const map = { name: 'Vale', roads: 1, bytes: 1, imported: '', state: 'ready' as const };
    const sources = [{ name: 'vale\u001b[2J\r\u202e.osm.pbf', sha256: '' }];
    expect(printMaps([{ ...map, sources }])).toContain('from vale·[2J ·.osm.pbf\n');
  });

  it('remove takes one off', async () => {
    await shelf('import', MAP, '--name', 'A');
    expect(await shelf('remove', 'B')).toMatchObject({ exit: 2, out: '' });
    expect(await shelf('remove', 'A')).toMatchObject({ exit: 0 });
    expect(JSON.parse((await shelf('list', '--json')).out).maps).toEqual([]);
  });

  it.each([
    [[], 'needs a word'],
    [['import'], 'needs the file of a map'],
    [['imprt'], "did you mean 'shelf import'"],
    [['list', 'more'], 'a word too many'],
    [['remove'], 'needs the name of a map'],
    [['verify', '--repeir'], 'did you mean --repair'],
    [['import', 'nowhere.osm.pbf'], 'nowhere.osm.pbf'],
  ])('refuses %j in one sentence', async (words, sentence) => {
    const refused = await shelf(...words);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain(sentence);
  });
});
