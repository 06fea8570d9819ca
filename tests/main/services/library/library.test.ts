import { mkdtempSync, rmSync } from 'node:fs';
import { copyFile, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { nameOfHash, recordFile } from '../../../../geo/library/record-name.ts';
import { sha256Of } from '../../../../main/services/files/sha256.ts';
import type { Library } from '../../../../main/services/library/library.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { worked } from '../../../support/scratch-files.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'lanegauge-library-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const FOLDER = () => join(home, 'yard');
const records = (...path: string[]) => join(FOLDER(), 'records', ...path);
/** As another computer opens it: with an index of its own. */
const open = (computer = 'a', day = '2026-05-01') =>
  openLibrary({
    folder: FOLDER(),
    dataFolder: join(home, computer),
    now: () => new Date(`${day}T09:00:00Z`),
  });
const ID = 'note-1a2b3c4d';
const note = (say: string) => ({ kind: 'note', id: ID, body: { at: { lat: 54, lon: 9 }, say } }) as const;
const says = (library: Library) =>
  library.list('note').flatMap(({ versions }) => versions.map(({ body }) => body.say));

describe('a library', () => {
  it('is empty at first, and nothing is written by looking at it', async () => {
    expect((await open()).list('note')).toEqual([]);
    expect(await readdir(home)).toEqual([]);
  });

  it('gives back what was put in, here and on another computer; a change takes its place', async () => {
    const library = await open();
    worked(await library.put(note('Low branch')));
    worked(await library.put(note('Low branch, 3.1 m')));
    for (const each of [library, await open(), await open('b')])
      expect([says(each), each.notices()]).toEqual([['Low branch, 3.1 m'], []]);
    expect(await readdir(records(ID))).toHaveLength(2);
  });

  it('keeps both of two changes made without knowing of each other, until one is chosen', async () => {
    const [one, other] = [await open('a'), await open('b')];
    const first = worked(await one.put(note('Gate')));
    await other.refresh();
    worked(await one.put({ ...note('Gate, 2.4 m'), over: first.heads }));
    worked(await other.put({ ...note('Gate, 2.5 m'), over: first.heads }));
    for (const each of [one, other]) await each.refresh();
    expect(says(one).sort()).toEqual(['Gate, 2.4 m', 'Gate, 2.5 m']);
    expect(one.list('note')).toEqual(other.list('note'));
    const wanted = one.list('note')[0]?.versions.find(({ body }) => body.say === 'Gate, 2.5 m')?.name ?? '';
    worked(await one.choose(ID, wanted));
    await other.refresh();
    expect([says(one), says(other)]).toEqual([['Gate, 2.5 m'], ['Gate, 2.5 m']]);
  });

  it('shows two equal changes once, and joins more versions than a file can name', async () => {
    const library = await open();
    for (const say of ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'a'])
      worked(
        await library.put({ ...note(say), over: [], made: `2026-05-01T0${says(library).length}:00:00Z` }),
      );
    expect(says(library).sort()).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g']);
    worked(await library.put(note('one of them')));
    expect(says(await open('b'))).toEqual(['one of them']);
  });

  it('puts what is deleted into a bin, from which it comes back as it was', async () => {
    const library = await open();
    const item = worked(await library.put(note('Gate')));
    worked(await library.remove(item));
    const other = await open('b');
    expect([says(other), other.bin().map(({ id }) => id)]).toEqual([[], [ID]]);
    worked(await other.restore(ID));
    await library.refresh();
    expect([says(library), library.bin()]).toEqual([['Gate'], []]);
  });

  it('lets what was changed stay where it was deleted at the same time', async () => {
    const [one, other] = [await open('a'), await open('b')];
    const item = worked(await one.put(note('Gate')));
    await other.refresh();
    worked(await one.remove(item));
    worked(await other.put({ ...note('Gate, 2.5 m'), over: item.heads }));
    await one.refresh();
    expect(one.list('note')).toMatchObject([{ deleted: '2026-05-01T09:00:00.000Z', versions: [{}] }]);
    worked(await one.put(note('Gate, 2.5 m, locked')));
    expect((await open('c')).list('note')[0]?.deleted).toBeUndefined();
  });

  it('keeps a file byte for byte, once, and tells when it was changed', async () => {
    const library = await open();
    const bytes = Uint8Array.from([0xff, 0xfe, 0, 60, 13, 10]);
    const hash = worked(await library.keepBytes('gpx', bytes));
    expect(worked(await library.keepBytes('gpx', bytes))).toBe(hash);
    expect(new Uint8Array(worked(await library.readBytes('gpx', hash)))).toEqual(bytes);
    expect(await readdir(join(FOLDER(), 'gpx'))).toEqual([`${hash}.gpx`]);
    await writeFile(library.pathOf('gpx', hash), 'cut');
    const read = await library.readBytes('gpx', hash);
    expect(read.ok ? '' : read.error.message).toContain('is not what was kept');
  });
});

describe('a library whose folder others write in too', () => {
  it('takes a copy that a service renamed for the same record, in the right folder and in a wrong one', async () => {
    const library = await open();
    worked(await library.put(note('Gate')));
    const [file = ''] = await readdir(records(ID));
    const stem = file.replace('.json', '');
    await copyFile(records(ID, file), records(ID, `${stem}.sync-conflict-20260501-090000-ABCDEFG.json`));
    await copyFile(records(ID, file), records(ID, `${stem} (AB's conflicted copy 2026-05-01) (1).json`));
    await mkdir(records(`${ID} (2)`));
    await rename(records(ID, file), records(`${ID} (2)`, file));
    const other = await open('b');
    expect([says(other), other.notices()]).toEqual([['Gate'], []]);
    expect(other.list('note')[0]?.versions).toHaveLength(1);
  });

  it('is looked at kind by kind without losing what lies in a wrong folder', async () => {
    const library = await open();
    worked(await library.put(note('Gate')));
    worked(await library.put(note('Gate, 2.4 m')));
    const newest = (await readdir(records(ID))).find((name) => !name.startsWith('first'))!;
    await rename(records(ID, newest), records(newest));
    const other = await open('b');
    await other.refresh('vehicle');
    expect([says(other), other.notices()]).toEqual([['Gate, 2.4 m'], []]);
    await other.refresh('note');
    expect(says(other)).toEqual(['Gate, 2.4 m']);
  });

  it('takes folders and files that differ in large and small letters alone for the same', async () => {
    worked(await (await open()).put(note('Gate')));
    const [file = ''] = await readdir(records(ID));
    await mkdir(records(ID.toUpperCase()));
    await rename(records(ID, file), records(ID.toUpperCase(), file.toUpperCase()));
    expect(says(await open('b'))).toEqual(['Gate']);
  });

  it('names half a record and shows what came before; whole, it counts', async () => {
    const library = await open();
    worked(await library.put(note('Gate')));
    worked(await library.put(note('Gate, 2.4 m')));
    const file = (await readdir(records(ID))).find((name) => !name.startsWith('first'))!;
    const text = await readFile(records(ID, file), 'utf8');
    await writeFile(records(ID, file), text.slice(0, 40));
    const other = await open('b');
    expect(says(other)).toEqual(['Gate']);
    expect(other.notices().join()).toMatch(/1 file .* not whole: still on their way/);
    expect(await readFile(records(ID, file), 'utf8')).toBe(text.slice(0, 40));
    // from what it last saw as well
    const again = await open('b');
    expect([says(again), again.notices()]).toEqual([['Gate'], other.notices()]);
    await writeFile(records(ID, file), text);
    await other.refresh();
    expect([says(other), other.notices()]).toEqual([['Gate, 2.4 m'], []]);
    expect(says(await open('b'))).toEqual(['Gate, 2.4 m']);
  });

  it('names a first record that is half, however often it is opened, and shows it once it is whole', async () => {
    worked(await (await open()).put(note('Gate')));
    const [file = ''] = await readdir(records(ID));
    const text = await readFile(records(ID, file), 'utf8');
    await writeFile(records(ID, file), '');
    for (let start = 0; start < 2; start++) {
      const library = await open('b');
      expect([says(library), library.notices().length]).toEqual([[], 1]);
    }
    await writeFile(records(ID, file), text);
    const library = await open('b');
    expect([says(library), library.notices()]).toEqual([['Gate'], []]);
  });

  it('leaves records of a newer program and files of others alone, and says so', async () => {
    const library = await open();
    worked(await library.put(note('Gate')));
    const [file = ''] = await readdir(records(ID));
    const newer = JSON.parse(await readFile(records(ID, file), 'utf8'));
    await writeFile(records(ID, 'copied.json'), JSON.stringify({ ...newer, version: 2 }));
    await writeFile(records(ID, 'shopping.txt'), 'milk');
    await writeFile(records('desktop.ini'), '[x]');
    await writeFile(records(ID, '.DS_Store'), '');
    const other = await open('b');
    expect(says(other)).toEqual(['Gate']);
    const said = other.notices().join('\n');
    expect(said).toMatch(/copied\.json"\) is written by a newer Lanegauge/);
    expect(said).toMatch(/1 file \("note-1a2b3c4d\/shopping\.txt"\) is none of Lanegauge's/);
    expect(said).not.toMatch(/desktop|DS_Store/);
  });

  it('that has gone shows what was last seen and refuses changes, rather than begin anew beside it', async () => {
    worked(await (await open()).put(note('Gate')));
    const library = await open();
    await rename(FOLDER(), `${FOLDER()}-away`);
    for (const each of [library, await open()]) {
      await each.refresh();
      expect(says(each)).toEqual(['Gate']);
      expect(each.notices().join()).toContain('is not in');
      const refused = await each.put(note('Gate, 2.4 m'));
      expect(refused.ok ? '' : refused.error.message).toContain('nothing can be changed');
    }
    await rename(`${FOLDER()}-away`, FOLDER());
    worked(await library.put(note('Gate, 2.4 m')));
    await library.refresh();
    expect([says(library), library.notices()]).toEqual([['Gate, 2.4 m'], []]);
  });

  it('opens from what this computer last saw as from the folder itself', async () => {
    const library = await open();
    for (let i = 0; i < 5; i++) worked(await library.put({ ...note(`n${i}`), id: `note-${i}` }));
    const again = await open();
    expect(again.list('note')).toEqual((await open('b')).list('note'));
    await rm(records('note-3'), { recursive: true });
    expect(says(await open())).toEqual(['n0', 'n1', 'n2', 'n4']);
  });

  it('is read anew where what this computer last saw was damaged, or written by another version', async () => {
    worked(await (await open()).put(note('Gate')));
    await open();
    const [index = ''] = await readdir(join(home, 'a', 'library-index'));
    const path = join(home, 'a', 'library-index', index);
    const text = await readFile(path, 'utf8');
    expect(text).toContain('"say":"Gate"');
    for (const other of [text.replace('"say":"Gate"', '"say":"Gxte"'), text.replace('Lanegauge', 'Older')]) {
      await writeFile(path, other);
      expect(says(await open())).toEqual(['Gate']);
      expect(await readFile(path, 'utf8')).toBe(text);
    }
  });

  it('names what cannot be used at every start, a half record below a newer one too', async () => {
    worked(await (await open()).put(note('Gate')));
    const [file = ''] = await readdir(records(ID));
    await newerThan(file.slice('first-'.length, -'.json'.length));
    await writeFile(records(ID, file), '');
    const said = (await open('b')).notices();
    expect(said).toHaveLength(2);
    expect((await open('b')).notices()).toEqual(said);
  });

  it('that is empty where it was filled says so, at every start, until it is begun anew', async () => {
    worked(await (await open()).put(note('Gate')));
    await open();
    await rm(FOLDER(), { recursive: true });
    await mkdir(FOLDER());
    for (let start = 0; start < 2; start++) {
      const library = await open();
      await library.refresh('note');
      expect([says(library), library.notices().join()]).toEqual([[], expect.stringContaining('is empty')]);
    }
    const library = await open();
    worked(await library.put(note('Gate')));
    await library.refresh();
    for (const each of [library, await open()]) expect([says(each), each.notices()]).toEqual([['Gate'], []]);
  });
});

/** A record that this program does not understand, made after the one of this name. */
async function newerThan(parent: string): Promise<string> {
  const record = {
    format: 'lanegauge.record',
    version: 2,
    kind: 'note',
    id: ID,
    parents: [parent],
    body: {},
  };
  const text = JSON.stringify(record);
  const file = recordFile([parent], nameOfHash(sha256Of(text)));
  await writeFile(records(ID, file), text);
  return file;
}

describe('the bin', () => {
  it('is emptied after 90 days of what was deleted, and not of what a newer program has made of it', async () => {
    const library = await open();
    worked(await library.remove(worked(await library.put(note('Gate')))));
    const [deletion = ''] = library.bin()[0]?.heads ?? [];
    const newer = await newerThan(deletion);
    const early = await open('b', '2026-07-29');
    await early.sweep();
    expect(await readdir(records(ID))).toHaveLength(3);
    const clockForward = await open('b', '2026-08-01');
    await clockForward.sweep();
    // nothing has been changed for as long: it may be the clock
    expect(await readdir(records(ID))).toHaveLength(3);
    worked(await (await open('c', '2026-07-20')).put({ ...note('Other gate'), id: 'note-other' }));
    await (await open('b', '2026-08-01')).sweep();
    const left = await readdir(records(ID));
    expect(left).toHaveLength(2);
    expect(left).toContain(newer);
    expect(left.some((name) => name.endsWith(`-${deletion}.json`))).toBe(true);
  });
});
