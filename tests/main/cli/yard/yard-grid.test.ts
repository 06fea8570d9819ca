import { mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readFindingId } from '../../../../geo/notes/finding-id.ts';
import { cellOf } from '../../../../geo/yard/cell.ts';
import { makeCheck } from '../../../../main/cli/check/check-work.ts';
import { fromLibrary } from '../../../../main/cli/hand-over/from-library.ts';
import { yardCommand } from '../../../../main/cli/yard/yard-command.ts';
import { checkFromFiles } from '../../../../main/services/check-drive.ts';
import { workOfPair } from '../../../../main/services/hand-over/hand-over-many.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { readRouteFile } from '../../../../main/services/route/read-route-file.ts';
import { noteDamage } from '../../../../main/services/shelf/found-damaged.ts';
import { mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { shelfFolder } from '../../../../main/services/shelf/where-shelf.ts';
import { askedBy } from '../../../../main/services/yard/asked-by.ts';
import { type GridNews, judgeGrid } from '../../../../main/services/yard/grid/grid.ts';
import { takeCheck } from '../../../../main/services/yard/grid/take-check.ts';
import { gridOfLibrary } from '../../../../main/services/yard/yard-of.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { judgeHere } from '../../../support/shelf/judge-here.ts';
import { terminalOf } from '../../../support/terminal.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const DRIVES = ['barred', 'clear'].map((name) => join(SAMPLE, 'drives', `${name}.gpx`));
const CARD = join(SAMPLE, 'vehicles', 'coach-built-7.4.json');
const now = () => new Date('2027-06-12T09:30:00Z');

let home: string;
let low: string;

beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'yard-grid-'));
  const files = [{ path: join(SAMPLE, 'district.osm.pbf'), name: 'district.osm.pbf', stays: true }];
  const of = { shelf: shelfFolder(home), importPart: importByHand, now };
  worked(
    await importMap(
      of,
      { name: 'District', files, origin: { by: 'file' } },
      {
        signal: new AbortController().signal,
        onProgress: () => {},
      },
    ),
  );
  low = join(home, 'low.json');
  writeFileSync(
    low,
    JSON.stringify({ ...JSON.parse(readFileSync(CARD, 'utf8')), name: 'Low', heightM: 2.3 }),
  );
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

async function yard(...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const exit = await yardCommand(words, { ...terminal, now });
  return { exit, ...said };
}
async function json(...words: readonly string[]) {
  const done = await yard(...words, '--json');
  expect(done).toMatchObject({ exit: 0, complaint: '' });
  return JSON.parse(done.out);
}

it('checks every drive with every vehicle as check does, keeps that, and checks again what is old', async () => {
  expect((await yard('grid')).out).toContain('holds no drive');
  await yard('add', ...DRIVES);
  await yard('vehicle', 'add', CARD);

  const grid = await json('grid');
  expect(grid.vehicles).toHaveLength(1);
  expect(grid.cells).toHaveLength(2);
  for (const path of DRIVES) {
    const asked = { routePath: path, mapPaths: [], shelf: shelfFolder(home), vehiclePath: CARD };
    const { verdict, counts, tightest } = cellOf(worked(await checkFromFiles(asked, { now })).report);
    expect(grid.cells).toContainEqual(
      expect.objectContaining({ verdict, counts, ...(tightest && { tightest }) }),
    );
  }
  const [kept] = readdirSync(join(home, 'yard')).filter((name) => name.endsWith('.json'));
  expect(kept).toMatch(/^drive-/);

  // a note answers what a check has told, and nothing else
  const { findings } = worked(
    await checkFromFiles(
      { routePath: DRIVES[0]!, mapPaths: [], shelf: shelfFolder(home), vehiclePath: CARD },
      { now },
    ),
  ).report;
  for (const each of findings) expect(readFindingId(each.id)?.subject, each.id).toBe(each.subject);
  const { id, subject, kind } = findings.find(({ wants }) => wants !== 'route')!;
  const answering = ['note', 'add', '--at', '0,0', '--say', 'seen', '--answers'];
  const answered = await json(...answering, id);
  expect(answered.note.answers).toEqual({ finding: id, subject, kind });
  expect(answered).not.toHaveProperty('say');
  expect(await yard(...answering, 'height:w1f', '--leave')).toMatchObject({
    exit: 2,
    complaint: expect.stringContaining('no drive of the library has this finding'),
  });

  // a note elsewhere makes nothing old; one on the drives does
  await yard('note', 'add', '--at', '0,0', '--say', 'far away');
  expect((await json('grid')).cells.filter(({ stale }: { stale?: string[] }) => stale)).toEqual([]);
  const asked = { routePath: DRIVES[1]!, mapPaths: [], shelf: shelfFolder(home), vehiclePath: CARD };
  const { lat, lon } = worked(await checkFromFiles(asked, { now })).route.segments[0]!;
  await yard('note', 'add', `--at=${lat[40]},${lon[40]}`, '--say', 'low', '--height', '2');
  const old = await json('grid');
  expect(old.cells.flatMap(({ stale }: { stale?: string[] }) => stale ?? [])).toContain('note');
  expect((await yard('grid')).out).toMatch(
    /Out of date, check again: since then a local note was added or changed; it said/,
  );
  const { changes } = await json('recheck');
  expect(changes).toContainEqual(expect.objectContaining({ vehicle: grid.vehicles[0].id, kind: 'new' }));
  expect((await yard('recheck')).out).toContain('Nothing has changed since it was checked');
  // with a map found damaged nothing is up to date
  const folder = mapFolder(shelfFolder(home), 'District');
  await noteDamage(folder, 1);
  expect((await yard('recheck')).out).toMatch(
    /^Nothing was checked again, but "District" on the shelf is damaged/,
  );
  await noteDamage(folder, undefined);
});

it('takes the check of a handing-over as the cell’s own, and tells what is otherwise until somebody has seen it', async () => {
  const library = await openLibrary({ folder: join(home, 'library'), dataFolder: home, now });
  await yard('changes', '--seen-by', 'AB');
  const { drives } = await json('list');
  const [clear] = worked(
    fromLibrary(library, {
      drives: drives.map(({ id }: { id: string }) => id),
      vehicles: ['coach'],
      pairs: [],
    }),
  ).filter(({ drive }) => drive.versions[0]?.body.file === 'clear.gpx');
  const path = library.pathOf('gpx', clear!.drive.versions[0]!.body.gpx);
  const { lat, lon } = worked(await readRouteFile(path)).routes[0]!.segments[0]!;
  await yard('note', 'add', `--at=${lat[60]},${lon[60]}`, '--say', 'narrow', '--width', '2');
  await library.refresh();
  const isOld = async () =>
    (await json('grid')).cells.flatMap(({ drive, stale }: { drive: string; stale?: string[] }) =>
      stale === undefined ? [] : [drive],
    );
  expect(await isOld()).toContain(clear!.drive.id);

  const asked = { shelf: shelfFolder(home), yard: { dataFolder: home } };
  const done = worked(
    await makeCheck(
      { ...workOfPair(clear!, { library, asked, own: undefined }), files: 'hand over' },
      { now },
    ),
  );
  const of = gridOfLibrary(await askedBy(library, { ...terminalOf(home).terminal, now }));
  await takeCheck(of, { facts: done.handedOver!.facts, files: done.files });
  expect(await isOld()).not.toContain(clear!.drive.id);

  const told = await yard('changes');
  expect(told.out).toMatch(/new: .+\nWhen you have seen this: lanegauge yard changes --seen-by INITIALS/);
  expect((await yard('changes', '--seen-by', 'TOOLONG')).exit).toBe(2);
  expect((await yard('changes', '--seen-by', 'CD', '--drive', clear!.drive.id)).out).toContain(
    'Kept as seen by CD',
  );
  expect((await json('changes')).changes).toEqual([]);
});

it('says so where the library vanishes in the middle of a check, and loses nothing of it', async () => {
  const folder = join(home, 'library');
  const library = await openLibrary({ folder, dataFolder: home, now });
  const before = await json('list');
  const of = gridOfLibrary(await askedBy(library, { ...terminalOf(home).terminal, now }));
  const told: GridNews[] = [];
  const hooks = { signal: new AbortController().signal, hear: (news: GridNews) => told.push(news) };
  const judged = await judgeGrid(of, 'all', hooks, (tasks, setup, { hear, signal }) =>
    judgeHere(tasks, setup, {
      signal,
      hear(news) {
        hear(news);
        if (news.kind === 'done') renameSync(folder, `${folder} away`);
      },
    }),
  );
  expect(judged).toMatchObject({ ok: true, value: 1 });
  expect(told.map(({ kind }) => kind)).toEqual(['cell', 'failed']);
  expect(told[1]).toMatchObject({
    say: expect.stringMatching(/^The library’s own copy of \w+\.gpx is not there: its disk is not connected/),
  });
  // meanwhile the terminal says where the library should be, and shows what it last saw
  const gone = await yard('list');
  expect(gone.complaint).toContain('The library is not in');
  expect(gone.out).toContain('2 drives');
  renameSync(`${folder} away`, folder);
  expect(await json('list')).toEqual(before);
  const { cells } = await json('grid');
  expect(cells).toHaveLength(2);
});

it('checks exactly the cards named, and keeps nothing of it', async () => {
  const before = readdirSync(join(home, 'yard'));
  const { vehicles, cells } = await json('grid', '--vehicle', low, '--vehicle', CARD);
  expect(vehicles.map(({ name }: { name: string }) => name)[0]).toBe('Low');
  expect(cells).toHaveLength(4);
  expect(readdirSync(join(home, 'yard'))).toEqual(before);
  const csv = await yard('grid', '--vehicle', low, '--csv');
  expect(csv.out.split('\r\n')).toHaveLength(4);
  expect(await yard('grid', '--json', '--csv')).toMatchObject({ exit: 2, out: '' });
  // by its name in the library as well
  const [{ id, name }] = (await json('list')).vehicles;
  expect((await json('grid', '--vehicle', low, '--vehicle', name.toUpperCase())).vehicles[1]).toEqual({
    id,
    name,
  });
  expect((await yard('grid', '--vehicle', 'Nobody')).complaint).toContain('"Nobody" is neither the file');
  const none = await yard('grid', '--vehicle', join(home, 'none.json'));
  expect(none).toMatchObject({ exit: 2, out: '' });
});

it('tells a day stop by stop, as the drive is met on the shelf', async () => {
  const { drives, vehicles } = await json('list');
  const gpx = readFileSync(join(SAMPLE, 'drives', 'clear.gpx'), 'utf8');
  const points = [...gpx.matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)"/g)];
  const [, lat, lon] = points[points.length >> 1] ?? [];
  const clear = drives.find(({ file }: { file: string }) => file === 'clear.gpx').id;
  const vehicle = vehicles[0].id;
  await json('day', clear, '--leave', '2027-06-12T09:00', '--home-by', '2027-06-12T17:00');
  const { day } = await json('day', clear, '--stop', `${lat},${lon},45,The mill`, '--vehicle-id', vehicle);
  expect(day.stops).toMatchObject([{ name: 'The mill', stayS: 2700 }]);
  expect(day.stops[0].latestLeaveAt > day.stops[0].leaveAt).toBe(true);
  const { out } = await yard('day', clear, '--vehicle-id', vehicle);
  expect(out).toMatch(/"The mill": there \d\d:\d\d, stay 45 min, leave \d\d:\d\d, at the latest \d\d:\d\d/);
  expect(out).toContain('due there 17:00');
});

it('puts a note on the road of the shelf that it lies on, and lists for mappers what the map lacks', async () => {
  const gpx = readFileSync(join(SAMPLE, 'drives', 'clear.gpx'), 'utf8');
  const [, lat, lon] = /<trkpt lat="([^"]+)" lon="([^"]+)"/.exec(gpx) ?? [];
  const added = await json('note', 'add', '--at', `${lat},${lon}`, '--say', 'Measured', '--width', '2.7');
  expect(added.note.osm).toMatchObject({ type: 'way' });
  const far = await yard('note', 'add', '--at', '0.5,0.5', '--say', 'Nowhere');
  expect(far.out).toContain('No road of your maps lies within 25 m');
  const file = join(home, 'mappers.csv');
  await json('note', 'for-mappers', file);
  expect(readFileSync(file, 'utf8')).toContain('2.7');
});
