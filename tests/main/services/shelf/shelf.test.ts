import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { OWN_MARK } from '../../../../main/services/files/owner-mark.ts';
import { listMaps } from '../../../../main/services/shelf/list-maps.ts';
import { openShelf } from '../../../../main/services/shelf/open-shelf.ts';
import type { ImportPart } from '../../../../main/services/shelf/put-on-shelf.ts';
import { findMaps, mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import {
  importMap,
  nameOfFile,
  removeByName,
  verifyMaps,
} from '../../../../main/services/shelf/shelf-work.ts';
import { showMaps } from '../../../../main/services/shelf/show-maps.ts';
import { sweepShelf } from '../../../../main/services/shelf/sweep-shelf.ts';
import { pbfFile } from '../../../support/pbf-file.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';

const NOW = new Date('2027-06-12T09:30:00Z');
const hooks = { signal: new AbortController().signal, onProgress: () => {} };

let home: string;
let shelf: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'shelf-'));
  shelf = join(home, 'shelf');
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const tools = (importPart: ImportPart = importByHand) => ({ shelf, importPart, now: () => NOW });

/** A map of one lane, its name the lane's. */
function mapFile(name: string, replicationTime?: number, southLat = 54): string {
  const path = join(home, `${name}.osm.pbf`);
  const blocks = [
    {
      nodes: [
        { id: 1, lat: southLat, lon: 9 },
        { id: 2, lat: southLat + 0.01, lon: 9 },
      ],
    },
    { ways: [{ id: 7, refs: [1, 2], tags: { highway: 'residential', name } }] },
  ];
  writeFileSync(path, pbfFile(blocks, replicationTime === undefined ? {} : { replicationTime }));
  return path;
}

function put(path: string, name = nameOfFile(path), importPart?: ImportPart) {
  return importMap(
    tools(importPart),
    { name, files: [{ path, name: path, stays: true }], origin: { by: 'file' } },
    hooks,
  );
}

/** Names of the lanes on the shelf. */
async function lanes(): Promise<string[]> {
  const open = await openShelf(shelf);
  const names = open.parts.map(({ part }) => part.meta.source.name);
  open.close();
  return names;
}

describe('a map taken in', () => {
  it('is on the shelf under its file name, with its date and size', async () => {
    const map = worked(await put(mapFile('vale', 1_700_000_000)));
    expect(map).toMatchObject({
      name: 'vale',
      roads: 1,
      state: 'ready',
      dataDate: '2023-11-14T22:13:20Z',
      imported: NOW.toISOString(),
    });
    expect(await listMaps(shelf)).toEqual([map]);
  });

  it('replaces the one of its name, whose files go at the next start', async () => {
    worked(await put(mapFile('old'), 'Vale'));
    worked(await put(mapFile('new'), 'Vale'));
    expect(await lanes()).toEqual(['new.osm.pbf']);
    const folder = mapFolder(shelf, 'Vale');
    expect(readdirSync(folder).filter((name) => name.startsWith('part-'))).toHaveLength(2);
    await sweepShelf(shelf, NOW.getTime());
    expect(readdirSync(folder).filter((name) => name.startsWith('part-'))).toEqual(['part-2-1.shelf']);
    expect(await lanes()).toEqual(['new.osm.pbf']);
  });

  it('of older data, or of none that tells its date, than what it replaces says so until newer data comes', async () => {
    const newer = async () => (await listMaps(shelf))[0]?.newerBefore;
    worked(await put(mapFile('may', 1_700_000_000), 'Vale'));
    expect(await newer()).toBe(undefined);
    expect(worked(await put(mapFile('older', 1_600_000_000), 'Vale')).newerBefore).toBe('2023-11-14');
    worked(await put(mapFile('undated'), 'Vale'));
    worked(await put(mapFile('undated again'), 'Vale'));
    expect(await newer()).toBe('2023-11-14');
    worked(await put(mapFile('as new', 1_700_000_000), 'Vale'));
    expect(await newer()).toBe(undefined);
  });

  it('without a road does not take the place of one that has some', async () => {
    worked(await put(mapFile('old'), 'Vale'));
    const bare = join(home, 'bare.osm');
    writeFileSync(bare, '<osm version="0.6"><node id="1" lat="54" lon="9"/></osm>');
    expect(await put(bare, 'Vale')).toMatchObject({ ok: false, error: { code: 'shelf.no-road' } });
    expect(await lanes()).toEqual(['old.osm.pbf']);
    expect(readdirSync(join(shelf, 'work'))).toEqual([]);
    expect(worked(await put(bare, 'Bare'))).toMatchObject({ roads: 0 });
  });

  it('of another place stands beside the one of its name where that is asked for', async () => {
    const beside = async (path: string, elsewhere: string) =>
      worked(
        await importMap(
          tools(),
          { name: 'Vale', elsewhere, files: [{ path, name: path, stays: true }], origin: { by: 'file' } },
          hooks,
        ),
      );
    worked(await put(mapFile('old'), 'Vale'));
    const far = mapFile('far', undefined, 12);
    expect(await beside(far, 'Far')).toMatchObject({ name: 'Far', beside: 'Vale' });
    expect(await beside(mapFile('farther', undefined, 40), 'Vale')).toMatchObject({ name: 'Vale 2' });
    expect(await beside(far, 'Far')).toMatchObject({ name: 'Far' });
    expect(await beside(mapFile('new'), 'Far')).not.toHaveProperty('beside');
    expect((await listMaps(shelf)).map(({ name }) => name)).toEqual(['Far', 'Vale', 'Vale 2']);
    expect(await lanes()).toContain('new.osm.pbf');
  });

  it('may be of several files, and newer data comes first', async () => {
    const files = [mapFile('b', 1_600_000_000), mapFile('a', 1_700_000_000)];
    worked(
      await importMap(
        tools(),
        {
          name: 'Both',
          files: files.map((path) => ({ path, name: path, stays: true })),
          origin: { by: 'file' },
        },
        hooks,
      ),
    );
    expect(await lanes()).toEqual(['a.osm.pbf', 'b.osm.pbf']);
    expect((await listMaps(shelf))[0]).toMatchObject({ roads: 2, dataDate: '2020-09-13T12:26:40Z' });
  });

  it('holds a file once that was named twice', async () => {
    const path = mapFile('vale');
    const file = { path, name: path, stays: true };
    worked(await importMap(tools(), { name: 'Vale', files: [file, file], origin: { by: 'file' } }, hooks));
    expect((await listMaps(shelf))[0]).toMatchObject({ roads: 1, sources: [{ sha256: expect.any(String) }] });
  });

  it('that cannot be read leaves the old one and nothing besides', async () => {
    worked(await put(mapFile('old'), 'Vale'));
    const bad = join(home, 'bad.osm.pbf');
    writeFileSync(bad, 'not a map');
    expect((await put(bad, 'Vale')).ok).toBe(false);
    expect(await lanes()).toEqual(['old.osm.pbf']);
    expect(readdirSync(join(shelf, 'work'))).toEqual([]);
  });

  it('given up leaves the old one', async () => {
    worked(await put(mapFile('old'), 'Vale'));
    const stop = new AbortController();
    stop.abort();
    const given = await importMap(
      tools(),
      { name: 'Vale', files: [{ path: mapFile('new'), name: 'new', stays: true }], origin: { by: 'file' } },
      { ...hooks, signal: stop.signal },
    );
    expect(given).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(await lanes()).toEqual(['old.osm.pbf']);
  });

  it('by two programs at once is whole whichever is later', async () => {
    const [a, b] = [mapFile('a'), mapFile('b')];
    const both = await Promise.all([put(a, 'Vale'), put(b, 'Vale')]);
    expect(both.map(({ ok }) => ok)).toEqual([true, true]);
    expect(await listMaps(shelf)).toHaveLength(1);
    expect(await lanes()).toHaveLength(1);
    await sweepShelf(shelf, NOW.getTime());
    expect((await listMaps(shelf))[0]?.state).toBe('ready');
  });

  it.each(['../escape', 'a/b', 'Ümläut & Co.', '.', '漢字', 'x'.repeat(190)])(
    'named %s lies in a folder of the shelf, and is found by that name',
    async (name) => {
      worked(await put(mapFile('vale'), name));
      expect((await listMaps(shelf)).map((map) => map.name)).toEqual([name]);
      expect(readdirSync(join(shelf, 'maps'))).toHaveLength(1);
      expect(readdirSync(home).sort()).toEqual(['shelf', 'vale.osm.pbf']);
    },
  );

  it.skipIf(process.getuid?.() === 0)(
    'on a shelf that may not be written to is refused in a sentence',
    async () => {
      mkdirSync(shelf);
      chmodSync(shelf, 0o500);
      const refused = await put(mapFile('vale'));
      chmodSync(shelf, 0o700);
      expect(refused).toMatchObject({ ok: false, error: { code: 'shelf.unwritable' } });
    },
  );
});

describe('a map taken off the shelf', () => {
  it('is gone, the others stay', async () => {
    worked(await put(mapFile('vale')));
    worked(await put(mapFile('moor')));
    worked(await removeByName(shelf, 'vale'));
    expect((await listMaps(shelf)).map(({ name }) => name)).toEqual(['moor']);
    expect(readdirSync(join(shelf, 'maps'))).toHaveLength(1);
  });

  it('must be there', async () => {
    worked(await put(mapFile('vale')));
    expect(await removeByName(shelf, 'moor')).toMatchObject({
      ok: false,
      error: { message: 'There is no map "moor" on the shelf. It holds "vale".' },
    });
  });
});

describe('a shelf that was damaged', () => {
  async function verify(repair: boolean) {
    return worked(await verifyMaps(tools(), await findMaps(shelf), { repair, note: true }, hooks));
  }
  function hurt(name: string, at: (length: number) => number): void {
    const folder = mapFolder(shelf, name);
    const part = readdirSync(folder).find((file) => file.startsWith('part-'))!;
    const bytes = readFileSync(join(folder, part));
    bytes[at(bytes.length)]! ^= 0xff;
    writeFileSync(join(folder, part), bytes);
  }

  it('in a tile is found by reading all of it, and known from then on', async () => {
    worked(await put(mapFile('vale')));
    hurt('vale', () => 30);
    expect((await listMaps(shelf))[0]?.state).toBe('ready');
    expect(await verify(false)).toMatchObject([{ name: 'vale', state: 'damaged', damagedBlocks: 1 }]);
    expect((await listMaps(shelf))[0]?.state).toBe('damaged');
  });

  it('is mended from its source', async () => {
    worked(await put(mapFile('vale')));
    hurt('vale', () => 30);
    expect(await verify(true)).toMatchObject([{ state: 'damaged', repair: { done: true } }]);
    expect((await listMaps(shelf))[0]?.state).toBe('ready');
    expect(await verify(false)).toMatchObject([{ state: 'ready', damagedBlocks: 0 }]);
  });

  it('without its source says so, and keeps what can be read', async () => {
    const path = mapFile('vale');
    worked(await put(path));
    hurt('vale', () => 30);
    rmSync(path);
    const [map] = await verify(true);
    expect(map?.repair).toMatchObject({ done: false });
    expect(map?.repair?.say).toContain('is not where it was');
    expect((await showMaps(shelf))[0]).toMatchObject({ state: 'damaged', mendFrom: 'gone' });
    expect(await lanes()).toEqual(['vale.osm.pbf']);
  });

  it('taken in from a copy never says that its file has moved, and offers no mending by itself', async () => {
    const path = mapFile('vale');
    const files = [{ path, name: 'vale.osm.pbf', stays: false }];
    worked(await importMap(tools(), { name: 'vale', files, origin: { by: 'file' } }, hooks));
    expect((await showMaps(shelf))[0]?.mendFrom).toBeUndefined();
    hurt('vale', () => 30);
    const [map] = await verify(true);
    expect(map?.repair?.say).toMatch(
      /"vale.osm.pbf" came through a window .*Choose a file of it under Shelf/,
    );
    expect((await showMaps(shelf))[0]).toMatchObject({ state: 'damaged', mendFrom: 'copy' });
    // the same file chosen again takes its place
    worked(await importMap(tools(), { name: 'vale', files, origin: { by: 'file' } }, hooks));
    expect((await listMaps(shelf)).map(({ name, state }) => [name, state])).toEqual([['vale', 'ready']]);
  });

  it('at the end of a file does not open, and the map is named', async () => {
    worked(await put(mapFile('vale')));
    hurt('vale', (length) => length - 5);
    const open = await openShelf(shelf);
    expect(open).toMatchObject({ parts: [], maps: 1, damaged: ['vale'] });
    open.close();
  });

  it('in one copy of its manifest loses nothing', async () => {
    worked(await put(mapFile('vale')));
    writeFileSync(join(mapFolder(shelf, 'vale'), 'map-1.json'), '{');
    expect((await listMaps(shelf))[0]).toMatchObject({ name: 'vale', state: 'ready' });
  });

  it('in both copies is told by its folder, left alone by a sweep, and set aside when mended', async () => {
    worked(await put(mapFile('vale')));
    const folder = mapFolder(shelf, 'vale');
    for (const copy of ['map-1.json', 'map-2.json']) writeFileSync(join(folder, copy), '{');
    await sweepShelf(shelf, NOW.getTime());
    const [map] = await listMaps(shelf);
    expect(map?.state).toBe('damaged');
    expect(readdirSync(folder)).toContain('part-1-1.shelf');
    const [verified] = await verify(true);
    expect(verified?.repair?.say).toContain('set aside');
    expect(await listMaps(shelf)).toEqual([]);
    const day = 24 * 3600 * 1000;
    await sweepShelf(shelf, Date.now() + 89 * day);
    expect(readdirSync(join(shelf, 'set-aside'))).toHaveLength(1);
    await sweepShelf(shelf, Date.now() + 91 * day);
    expect(readdirSync(join(shelf, 'set-aside'))).toEqual([]);
  });

  it('reading moves and rewrites nothing', async () => {
    worked(await put(mapFile('vale')));
    hurt('vale', () => 30);
    const before = tree(shelf);
    (await openShelf(shelf)).close();
    await listMaps(shelf);
    expect(tree(shelf)).toEqual(before);
  });
});

describe('what an ended program left behind', () => {
  it('goes at the next start; what a living one is making stays', async () => {
    const host = OWN_MARK.split('-')[0];
    const uuid = '01234567-89ab-4cde-8f01-23456789abcd';
    for (const mark of [`${host}-999999999`, OWN_MARK])
      mkdirSync(join(shelf, 'work', `${mark}-${uuid}`), { recursive: true });
    await sweepShelf(shelf, NOW.getTime());
    expect(readdirSync(join(shelf, 'work'))).toEqual([`${OWN_MARK}-${uuid}`]);
  });

  it('between moving the files in and switching the manifest is no map', async () => {
    worked(await put(mapFile('old'), 'Vale'));
    const folder = mapFolder(shelf, 'Vale');
    writeFileSync(join(folder, 'part-2-1.shelf'), readFileSync(join(folder, 'part-1-1.shelf')));
    expect(await lanes()).toEqual(['old.osm.pbf']);
    await sweepShelf(shelf, NOW.getTime());
    expect(existsSync(join(folder, 'part-2-1.shelf'))).toBe(false);
    worked(await put(mapFile('new'), 'Vale'));
    expect(await lanes()).toEqual(['new.osm.pbf']);
  });
});

function tree(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return entry.isFile() ? `${path} ${readFileSync(path).toString('base64')}` : path;
    })
    .sort();
}
