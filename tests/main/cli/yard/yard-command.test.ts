import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { yardCommand } from '../../../../main/cli/yard/yard-command.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { worked } from '../../../support/scratch-files.ts';
import { terminalOf } from '../../../support/terminal.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const BARRED = join(SAMPLE, 'drives', 'barred.gpx');
const CARD = join(SAMPLE, 'vehicles', 'coach-built-7.4.json');
const DAY_MS = 86_400_000;

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'yard-cli-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function yardOn(ms: number, ...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const exit = await yardCommand(words, { ...terminal, now: () => new Date(ms) });
  return { exit, ...said };
}
const yard = (...words: readonly string[]) => yardOn(0, ...words);
async function json(...words: readonly string[]) {
  const done = await yard(...words, '--json');
  expect(done).toMatchObject({ exit: 0, complaint: '' });
  return JSON.parse(done.out);
}
function write(name: string, text: string): string {
  writeFileSync(join(home, name), text);
  return join(home, name);
}
const track = (name: string, lat: number) =>
  `<trk>${name === '' ? '' : `<name>${name}</name>`}<trkseg><trkpt lat="${lat}" lon="9"/><trkpt lat="${lat}" lon="9.01"/></trkseg></trk>`;
const gpx = (...tracks: string[]) =>
  `<gpx xmlns="http://www.topografix.com/GPX/1/1">${tracks.join('')}</gpx>`;

describe('lanegauge yard, drives', () => {
  it('takes a drive in once, under its own name, and lists it', async () => {
    const { drives } = await json('add', BARRED);
    expect(drives).toMatchObject([{ was: 'new' }]);
    expect((await yard('add', BARRED)).out).toMatch(/in the library already, so it stands there once/);
    const listed = await json('list');
    expect(listed.drives).toHaveLength(1);
    expect(listed.drives[0]).toMatchObject({ id: drives[0].id, file: 'barred.gpx', track: 1 });
    expect(listed.drives[0].lengthM).toBeGreaterThan(1000);
    expect(readdirSync(join(home, 'library', 'gpx'))).toHaveLength(1);
  });

  it('takes several tracks of one file for the days of a tour', async () => {
    const tour = write('tour.gpx', gpx(track('Out', 54), track('', 54.1), track('Home', 54.2)));
    const { drives } = await json('add', tour);
    expect(drives.map(({ name, day }: { name: string; day: object }) => [name, day])).toEqual([
      ['Out', { number: 1, of: 3 }],
      ['tour', { number: 2, of: 3 }],
      ['Home', { number: 3, of: 3 }],
    ]);
  });

  it('takes the good files, names the bad, and ends with 2', async () => {
    const good = write('good.gpx', gpx(track('Good', 54)));
    const bad = write('bad.gpx', '<gpx><trk>');
    const empty = write('empty.gpx', gpx());
    const done = await yard('add', bad, good, empty, join(home, 'none.gpx'));
    expect(done.exit).toBe(2);
    expect(done.out).toMatch(/^"Good": added/);
    for (const name of ['bad.gpx', 'empty.gpx', 'none.gpx']) expect(done.complaint).toContain(name);
    expect((await json('list')).drives).toHaveLength(1);
  });

  it('renames, removes and brings back, by as much of the id as tells it from the others', async () => {
    const [{ id }] = (await json('add', BARRED)).drives;
    await json('rename', id.slice(0, 14), '  Over the moor ');
    await json('remove', id);
    const removed = await json('list');
    expect([removed.drives, removed.bin]).toMatchObject([[], [{ id, kind: 'drive' }]]);
    expect(removed.bin[0].name).toBe('Over the moor');
    expect((await yard('list')).out).toContain(`in the bin since 1970-01-01: drive "Over the moor" (${id})`);
    expect((await yard('rename', id, 'x')).complaint).toContain('lies in the bin');
    await json('restore', id);
    expect((await json('list')).drives).toMatchObject([{ id, name: 'Over the moor' }]);
  });

  it('are thrown away after 90 days in the bin, their file with the last of them, and not before', async () => {
    const [{ id }] = (await json('add', BARRED)).drives;
    await json('remove', id);
    const file = join(home, 'library', 'gpx', readdirSync(join(home, 'library', 'gpx'))[0]!);
    await yardOn(89 * DAY_MS, 'list');
    expect(readdirSync(join(home, 'library', 'records', id))).toHaveLength(2);
    const later = Date.now() + 91 * DAY_MS;
    await yardOn(later, 'list');
    // a clock put forward throws nothing away
    expect(existsSync(file)).toBe(true);
    await yardOn(later - DAY_MS, 'add', write('moor.gpx', gpx(track('Moor', 54))));
    await yardOn(later, 'list');
    expect([readdirSync(join(home, 'library', 'records', id)).length, existsSync(file)]).toEqual([1, false]);
    expect((await yardOn(later, 'restore', id)).complaint).toContain('Add it anew');
    expect((await yardOn(later, 'add', BARRED)).out).toContain('back from the bin');
    expect((await json('list')).drives.map((drive: { id: string }) => drive.id)).toContain(id);
  });

  it('of names that are equal but for case stand side by side', async () => {
    await json('add', write('a.gpx', gpx(track('Moor', 54))), write('A2.gpx', gpx(track('MOOR', 54.1))));
    expect((await json('list')).drives).toHaveLength(2);
  });
});

it('two drives of one name are told apart where they are added, renamed and listed', async () => {
  await json('add', write('mill.gpx', gpx(track('Mill run', 54))));
  const added = await yard('add', write('mill-2.gpx', gpx(track('mill  run', 54.1))));
  expect(added.out).toMatch(
    /Another drive of the library has the same name: this one is mill-2\.gpx \(drive-/,
  );
  const { out } = await yard('list');
  expect(out).toContain('"Mill run", that is mill.gpx');
  expect(out).toMatch(/"mill {1,2}run", that is mill-2\.gpx/);
  const [id, other] = (await json('list')).drives.map((drive: { id: string }) => drive.id);
  expect((await yard('rename', id, 'Moor')).out).not.toContain('same name');
  expect((await yard('rename', other, 'Moor')).out).toContain('same name');
});

describe('lanegauge yard day', () => {
  it('keeps leave time, stops and return hour with the drive, adds to them, and clears them', async () => {
    const [{ id }] = (await json('add', BARRED)).drives;
    const first = await json('day', id, '--leave', '2027-06-12T09:00', '--home-by', '2027-06-12T17:00');
    expect(first).toEqual({
      id,
      leaveAt: '2027-06-12T09:00',
      plan: { stops: [], homeBy: '2027-06-12T17:00' },
    });
    const { plan } = await json('day', id, '--stop', '-54.1,-9.2,45,The mill, by the ford');
    expect(plan.stops).toEqual([{ lat: -54.1, lon: -9.2, stayMin: 45, name: 'The mill, by the ford' }]);
    const told = (await yard('day', id)).out;
    expect(told).toContain('1. "The mill, by the ford" at -54.1,-9.2: 45 min');
    expect(told).toMatch(/"The mill, by the ford" lies \d+\.\d km or more beside the drive as drawn/);
    await json('day', id, '--stop=-54.1,-9.2,5,Mill');
    expect(await yard('day', id, '--remove-stop', '3')).toMatchObject({
      exit: 2,
      complaint: expect.stringContaining('there is no such stop; 2 stops are kept'),
    });
    expect((await json('day', id, '--remove-stop', '1')).plan.stops).toMatchObject([{ name: 'Mill' }]);
    expect((await json('day', id, '--remove-stop', 'mill')).plan.stops).toEqual([]);
    expect(await json('day', id, '--clear')).toEqual({ id });
  });

  it.each([
    [['--stop', '54.1,9.2'], 'is not a stop such as'],
    [['--stop', '54.1,9.2,4000,x'], 'the stay is 0 to 2880 minutes'],
    [['--stop', '99,9.2,40,x'], '--stop "99,9.2" is no place on Earth'],
    [['--leave', '2027-06-12T17:00', '--home-by', '2027-06-12T16:00'], 'lies before the leave time'],
    [['--home-by', '17:00'], '--home-by 17:00 is not a date and time'],
    [['--vehicle-id', 'none'], 'There is no vehicle "none"'],
  ])('refuses %j', async (words, sentence) => {
    const [{ id }] = (await json('add', BARRED)).drives;
    const refused = await yard('day', id, ...words);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain(sentence);
  });
});

describe('lanegauge yard, what two computers changed at once', () => {
  it('lists both versions, changes neither, and keeps the one that is chosen', async () => {
    const [{ id }] = (await json('add', BARRED)).drives;
    const library = await openLibrary({
      folder: join(home, 'library'),
      dataFolder: join(home, 'other'),
      now: () => new Date(0),
    });
    const [item] = library.list('drive');
    const { body } = item!.versions[0]!;
    for (const name of ['North', 'South'])
      worked(await library.put({ kind: 'drive', id, body: { ...body, name }, over: item!.heads }));
    const listed = (await json('list')).drives[0];
    expect(listed.versions.map(({ name }: { name: string }) => name).sort()).toEqual(['North', 'South']);
    expect((await yard('list')).out).toContain(`yard choose ${id} VERSION`);
    expect(await yard('rename', id, 'East')).toMatchObject({ exit: 2, out: '' });
    const south = listed.versions.find(({ name }: { name: string }) => name === 'South');
    expect(south.says).toEqual(['name: South']);
    expect((await yard('list')).out).toContain(`${south.version}: name: South, changed `);
    await json('choose', id, south.version.slice(0, 8));
    expect((await json('list')).drives).toMatchObject([{ id, name: 'South' }]);
  });

  it('keeps what one removes while another changes it, and says both', async () => {
    const [{ id }] = (await json('add', BARRED)).drives;
    const library = await openLibrary({
      folder: join(home, 'library'),
      dataFolder: join(home, 'other'),
      now: () => new Date(0),
    });
    const [item] = library.list('drive');
    const { body } = item!.versions[0]!;
    worked(await library.remove(item!));
    worked(await library.put({ kind: 'drive', id, body: { ...body, name: 'North' }, over: item!.heads }));
    const { out } = await yard('list');
    expect(out).toContain('was removed on one computer (');
    expect(out).toContain('and changed on another at the same time');
    const [{ versions, removed }] = (await json('list')).drives;
    expect(removed).toBe('1970-01-01T00:00:00.000Z');
    await json('choose', id, versions[0].version);
    expect((await yard('list')).out).not.toContain('was removed on one computer');
  });
});

describe('lanegauge yard, vehicles and notes', () => {
  it('adds a vehicle once, in a library elsewhere, and removes it', async () => {
    const elsewhere = ['--yard', join(home, 'shared disk', 'yard')];
    const { vehicle, was } = await json(...elsewhere, 'vehicle', 'add', CARD);
    expect(was).toBe('new');
    expect((await json('vehicle', ...elsewhere, 'add', CARD)).was).toBe('there');
    expect((await json('list', ...elsewhere)).vehicles).toEqual([vehicle]);
    expect((await json('list')).vehicles).toEqual([]);
    await json(...elsewhere, 'vehicle', 'remove', vehicle.id.replace('vehicle-', ''));
    expect((await json(...elsewhere, 'list')).vehicles).toEqual([]);
  });

  it('tells no vehicle from another by case or blanks alone', async () => {
    const card = JSON.parse(readFileSync(CARD, 'utf8'));
    const called = (file: string, name: string, heightM: number) =>
      write(file, JSON.stringify({ ...card, name, heightM }));
    const { vehicle } = await json('vehicle', 'add', called('a.json', 'Heron', 3.1));
    expect(await json('vehicle', 'add', called('b.json', 'heron ', 2.4))).toEqual({
      vehicle: { id: vehicle.id, name: 'heron ' },
      was: 'changed',
      before: 'Heron',
    });
    expect((await json('list')).vehicles).toHaveLength(1);

    // a library may hold two all the same, from before or from the window of another program
    const library = await openLibrary({
      folder: join(home, 'library'),
      dataFolder: home,
      now: () => new Date(0),
    });
    const body = { vehicleId: 'other', card: { ...card, name: 'Heron', heightM: 3.1 } };
    worked(await library.put({ kind: 'vehicle', id: 'vehicle-other', body }));
    const { complaint } = await yard('vehicle', 'remove', 'HERON');
    expect(complaint).toContain('may be 2 of the library');
    for (const choice of [`"heron" (${vehicle.id})`, '"Heron" (vehicle-other)'])
      expect(complaint).toContain(choice);
    expect((await yard('vehicle', 'remove', 'heron')).complaint).toContain('may be 2 of the library');
    const refused = await yard('vehicle', 'add', called('c.json', 'HERON', 2.9));
    expect(refused.complaint).toContain('case and blanks make no other name');
    expect((await yard('vehicle', 'remove', 'Heron')).out).toBe(
      '"Heron" (vehicle-other) lies in the bin for 90 days.\n',
    );
  });

  it('keeps another place for the library, and leaves what lies in the one before', async () => {
    await json('add', BARRED);
    const folder = join(home, 'shared');
    expect((await yard('place', folder)).out).toContain('copy its folders');
    expect((await yard('place', join(home, 'library'))).out).not.toContain('copy');
    expect(await json('place', folder)).toEqual({ folder, before: join(home, 'library') });
    expect(await json('list')).toMatchObject({ folder, drives: [] });
    const nowhere = join(write('a file', ''), 'library');
    for (const refused of [nowhere, '/proc/nowhere']) {
      const said = await yard('place', refused);
      expect(said).toMatchObject({ exit: 2, complaint: expect.stringContaining('The one before stays.') });
    }
    expect((await json('place')).folder).toBe(folder);
    await json('place', join(home, 'library'));
    expect((await json('list')).drives).toHaveLength(1);
  });

  it('keeps a note with its figures, lists and removes it', async () => {
    const words = ['--say', 'Measured it', '--height', '3.40', '--seen', '2026-05-01', '--by', 'AB'];
    const asked = ['note', 'add', '--at', '-54.1,-9.2', ...words, '--answers', 'height:w1f'];
    const { note, say } = await json(...asked);
    expect(say).toBe('No drive of the library has this finding so far.');
    expect(note.answers).toEqual({ finding: 'height:w1f', subject: 'height' });
    expect(note).toMatchObject({ at: { lat: -54.1, lon: -9.2 }, heightM: 3.4, seen: '2026-05-01', by: 'AB' });
    expect((await json('note', 'list')).notes).toEqual([note]);
    expect((await yard('note', 'list')).out).toContain('height 3.40 m (11\'1")');
    await json('note', 'remove', note.id);
    expect((await json('note', 'list')).notes).toEqual([]);
  });

  it('gives notes to another firm, which takes each in once', async () => {
    await json('note', 'add', '--at', '54,9', '--say', 'Bent tree', '--height', '3.1');
    const file = join(home, 'out', 'notes.geojson');
    expect((await yard('note', 'export', file)).out).toBe('"notes.geojson": one note written.\n');
    const theirs = ['--yard', join(home, 'theirs')];
    expect((await json('note', 'import', file, ...theirs)).say).toEqual(['One note taken in.']);
    expect((await json('note', 'import', file, ...theirs)).say).toContain('One note was here already.');
    const strip = ({ id: _, ...note }: { id: string }) => note;
    expect((await json('note', 'list', ...theirs)).notes.map(strip)).toEqual(
      (await json('note', 'list')).notes.map(strip),
    );
    // what is there is never written over
    expect((await yard('note', 'export', file)).exit).toBe(2);
    // and what somebody took away does not come back by itself
    const [taken] = (await json('note', 'list', ...theirs)).notes;
    await json('note', 'remove', taken.id, ...theirs);
    expect((await yard('note', 'import', file, ...theirs)).out).toContain('One note lies in the bin here');
    expect((await json('note', 'list', ...theirs)).notes).toEqual([]);
  });

  it('says that a note lies on no road that is known', async () => {
    const added = await yard('note', 'add', '--at', '54,9', '--say', 'Gate');
    expect(added.out).toContain('No map at hand shows whether a road lies there.');
  });

  it.each([
    [['--height', '3,40'], '--height "3,40" cannot be used: it wants metres'],
    [['--height', '34'], 'metres from 0.5 to 20'],
    [['--seen', '2026-02-30'], '--seen "2026-02-30" is not a day'],
    [['--seen', '2026-05-02', '--until', '2026-05-01'], 'would never hold'],
    [['--answers', 'nonsense:123'], '--answers "nonsense:123" is not the id of a finding'],
    [['--answers', 'height', '--leave'], 'is not the id of a finding'],
    [['--answers', 'height:123'], 'is not the id of a finding'],
    [['--answers', 'map:guessed:54.1000,9.2000'], 'a denser file alone settles that'],
    [['--by', 'ABCDEFG'], '--by is 1 to 6 characters'],
  ])('refuses a note with %j', async (words, sentence) => {
    const refused = await yard('note', 'add', '--at', '54,9', '--say', 'Gate', ...words);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain(sentence);
    expect(existsSync(join(home, 'library'))).toBe(false);
  });

  it.each([
    [['nothing'], "There is no 'yard nothing'"],
    [['remov', 'x'], "'yard remove'"],
    [[], 'yard needs a word after it'],
    [['note'], "There is no 'yard note'"],
    [['list', '--yard'], '--yard needs a folder'],
    [['remove', 'drive-0'], 'There is no drive "drive-0" in the library'],
    [['vehicle', 'add', 'no.json'], 'There is no file'],
  ])('refuses %j', async (words, sentence) => {
    const refused = await yard(...words);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain(sentence);
  });
});
