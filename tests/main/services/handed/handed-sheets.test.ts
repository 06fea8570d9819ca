import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { makeCheck } from '../../../../main/cli/check/check-work.ts';
import { fromLibrary } from '../../../../main/cli/hand-over/from-library.ts';
import { yardCommand } from '../../../../main/cli/yard/yard-command.ts';
import { handOverFromFiles } from '../../../../main/services/hand-over/hand-over-from-files.ts';
import { handOverMany, workOfPair } from '../../../../main/services/hand-over/hand-over-many.ts';
import { keepHanded } from '../../../../main/services/handed/handed-sheets.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { shelfFolder } from '../../../../main/services/shelf/where-shelf.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { terminalOf } from '../../../support/terminal.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const CARD = join(SAMPLE, 'vehicles', 'coach-built-7.4.json');
const now = () => new Date('2027-06-10T09:30:00Z');

let home: string;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'handed-sheets-'));
  await importDistrict('district.osm.pbf');
  await yard('add', join(SAMPLE, 'drives', 'barred.gpx'));
  const low = join(home, 'low.json');
  writeFileSync(low, JSON.stringify({ ...JSON.parse(readFileSync(CARD, 'utf8')), heightM: 2.3 }));
  await yard('vehicle', 'add', low);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

async function importDistrict(name: string) {
  const files = [{ path: join(SAMPLE, name), name, stays: true }];
  const of = { shelf: shelfFolder(home), importPart: importByHand, now };
  const hooks = { signal: new AbortController().signal, onProgress: () => {} };
  worked(await importMap(of, { name: 'District', files, origin: { by: 'file' } }, hooks));
}

async function yard(...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const exit = await yardCommand(words, { ...terminal, now });
  return { exit, ...said };
}

const openHome = () => openLibrary({ folder: join(home, 'library'), dataFolder: home, now });

/** What `hand-over --drive … --vehicle-id …` does, without a thread of its own. */
async function handOverFirst(leaveAt: string) {
  const library = await openHome();
  const [drive, vehicle] = [library.list('drive')[0]!, library.list('vehicle')[0]!];
  const [pair] = worked(
    fromLibrary(library, { drives: [], vehicles: [], pairs: [{ drive: drive.id, vehicle: vehicle.id }] }),
  );
  const asked = { leaveAt, shelf: shelfFolder(home), country: 'GB', yard: { dataFolder: home } };
  const work = workOfPair(pair!, { library, asked, own: undefined });
  const done = worked(await makeCheck({ ...work, files: 'hand over' }, { now }));
  const { number, facts } = done.handedOver!;
  worked(await keepHanded(library, { number, facts, files: done.files }));
  return { number, facts, files: done.files };
}

interface Out {
  readonly number: string;
  readonly since: string[];
  readonly worse?: string[];
}
const out = async (): Promise<Out[]> => JSON.parse((await yard('out', '--json')).out).sheets;
/** Those that something changed of. */
const sheets = async () => (await out()).filter(({ since }) => since.length > 0);

it('keeps what was handed over byte for byte, whatever map and card become, and tells what is worse', async () => {
  const first = await handOverFirst('2027-06-12T09:30');
  expect(first.number).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
  expect(first.files['sheet.html']).toContain(first.number);
  expect(await out()).toMatchObject([{ number: first.number, since: [], leaves: 'coming' }]);
  expect((await yard('out')).out).toMatch(
    new RegExp(
      `as handed over:\\n  BARRED: sheet ${first.number}: ".+" with ".+", handed out 10 June 2027, leaves Saturday 12 June 2027, 09:30`,
      'u',
    ),
  );

  // the vehicle is higher than the card said
  const library = await openHome();
  const vehicle = library.list('vehicle')[0]!;
  const { body } = vehicle.versions[0]!;
  worked(
    await library.put({
      kind: 'vehicle',
      id: vehicle.id,
      body: { ...body, card: { ...body.card, heightM: 3.1 } },
    }),
  );
  const changed = await sheets();
  expect(changed).toMatchObject([{ number: first.number, since: ['card'] }]);
  expect(changed[0]?.worse?.length).toBeGreaterThan(0);

  // and the map another file
  await importDistrict('district.osm.gz');
  expect(await sheets()).toMatchObject([{ since: ['map', 'card'] }]);

  const again = join(home, 'again');
  expect(await yard('sheet', first.number.toLowerCase(), '--out', again)).toMatchObject({ exit: 0 });
  expect(readdirSync(again).sort()).toEqual(Object.keys(first.files).sort());
  for (const [name, text] of Object.entries(first.files))
    expect(readFileSync(join(again, name), 'utf8')).toBe(text);
  // what lies there is not written over
  expect(await yard('sheet', first.number, '--out', again)).toMatchObject({ exit: 2 });

  const second = await handOverFirst('2027-06-12T09:30');
  expect(second.facts.replaces).toBe(first.number);
  expect(second.files['sheet.html']).toContain(first.number);
  expect(await sheets()).toEqual([]);
});

it('ends a sheet when its vehicle is back, which can be taken back; the beginning of its number will do', async () => {
  const { number } = await handOverFirst('2027-06-12T09:30');
  const begun = number.slice(0, 6).toLowerCase();
  expect((await yard('back', begun)).out).toMatch(/: back, 10 June 2027\.\n$/u);
  expect((await yard('out')).out).toContain(`Back:\n  BARRED: sheet ${number}`);
  // nothing takes the place of a sheet that has ended
  expect((await handOverFirst('2027-06-13T09:30')).facts.replaces).toBeUndefined();
  expect((await yard('back', number, '--undo')).out).toMatch(/: out again\.\n$/u);
  expect((await yard('out')).out).not.toContain('Back:');
  expect((await yard('back')).exit).toBe(2);
});

it('says so where a number is not kept, or a kept file was changed', async () => {
  expect((await yard('sheet', 'AAAA-AAAA', '--out', join(home, 'none'))).complaint).toContain('No sheet');
  const { number } = await handOverFirst('2027-06-13T09:30');
  const kept = join(home, 'library', 'handed');
  for (const name of readdirSync(kept)) writeFileSync(join(kept, name), 'other');
  const refused = await yard('sheet', number, '--out', join(home, 'none'));
  expect(refused).toMatchObject({ exit: 2, complaint: expect.stringContaining('is not what was kept') });
});

it('hands over several, each kept: what is barred waits for a word more, what cannot be is told, the others go on', async () => {
  await yard('add', join(SAMPLE, 'drives', 'clear.gpx'));
  const library = await openHome();
  const [vehicle] = library.list('vehicle');
  const { vehicleId, card } = vehicle!.versions[0]!.body;
  const column = { id: vehicle!.id, vehicleId, card: { ...card, heightM: 3.1 }, versions: [] };
  const drives = library.list('drive');
  const lost = { ...drives[0]!, versions: [] };
  const pairs = [lost, ...drives].map((drive) => ({ drive, vehicle: column }));
  const run = async (evenBarred: boolean, most = pairs.length) => {
    const told: string[] = [];
    const stop = new AbortController();
    await handOverMany(
      pairs,
      {
        library,
        asked: { shelf: shelfFolder(home), country: 'GB', leaveAt: '2027-06-12T09:30' },
        own: undefined,
        evenBarred,
        signal: stop.signal,
        make: (work) => handOverFromFiles(work, { now }),
      },
      (_, done) => {
        told.push(done.kind === 'made' ? (done.made.facts.verdict ?? '') : done.kind);
        if (told.length === most) stop.abort();
      },
    );
    return told.sort();
  };
  const count = library.list('handed').length;
  expect(await run(false)).toEqual(['barred', 'clear', 'failed']);
  expect(library.list('handed').length).toBe(count + 1);
  // stopped after the second: what was handed over until then is kept
  expect(await run(true, 2)).toHaveLength(2);
});

it('a day that cannot be read stands on the sheet', async () => {
  const library = await openHome();
  const drive = library.list('drive')[0]!;
  const body = { ...drive.versions[0]!.body, plan: { stops: 'none' } };
  worked(await library.put({ kind: 'drive', id: drive.id, body }));
  const { files } = await handOverFirst('2027-06-14T09:30');
  expect(files['sheet.html']).toContain('The day kept with this drive cannot be read');
});
