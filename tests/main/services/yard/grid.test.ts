import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DayPlan } from '../../../../geo/day/plan.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { cellOf } from '../../../../geo/yard/cell.ts';
import { seenChange } from '../../../../geo/yard/seen-changes.ts';
import { checkFromFiles } from '../../../../main/services/check-drive.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { readVehicleFile } from '../../../../main/services/vehicle/read-vehicle-file.ts';
import {
  acceptChanges,
  type GridNews,
  type GridOf,
  judgeGrid,
  knownCells,
  type Which,
} from '../../../../main/services/yard/grid/grid.ts';
import { failFrom } from '../../../support/failing-disk.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { judgeHere } from '../../../support/shelf/judge-here.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const CARD = join(SAMPLE, 'vehicles', 'coach-built-7.4.json');
const now = () => new Date('2027-06-12T09:30:00Z');
const MADE = now().toISOString();
const signal = new AbortController().signal;

let home: string;
let high: VehicleCard;
let grid: GridOf;

const drive = (id: string, name: string) => ({
  id,
  name,
  file: { path: join(SAMPLE, 'drives', name), name },
  gpx: `bytes of ${name}`,
  track: 1,
});

beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'grid-'));
  const shelf = join(home, 'shelf');
  const path = join(SAMPLE, 'district.osm.pbf');
  worked(
    await importMap(
      { shelf, importPart: importByHand, now },
      { name: 'District', files: [{ path, name: 'district.osm.pbf', stays: true }], origin: { by: 'file' } },
      { signal, onProgress: () => {} },
    ),
  );
  high = worked(await readVehicleFile(CARD));
  grid = {
    drives: [drive('b', 'barred.gpx'), { ...drive('c', 'clear.gpx'), leaveAt: '2027-06-12T09:30' }],
    vehicles: [
      { id: 'high', card: high },
      { id: 'low', card: { ...high, heightM: 2.4, name: 'Low' } },
    ],
    notes: [],
    shelf,
    kept: join(home, 'yard'),
    country: 'GB',
    units: 'metric',
    made: MADE,
  };
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Where a sample drive begins, degrees. */
function startOf(path: string): { lat: number; lon: number } {
  const [, lat = '', lon = ''] = /<trkpt lat="([^"]+)" lon="([^"]+)"/.exec(readFileSync(path, 'utf8')) ?? [];
  return { lat: Number(lat), lon: Number(lon) };
}

async function judge(of: GridOf, which: Which = 'stale'): Promise<GridNews[]> {
  const news: GridNews[] = [];
  worked(await judgeGrid(of, which, { signal, hear: (each) => news.push(each) }, judgeHere));
  return news;
}

describe('the grid', () => {
  it('says in each cell what a check of that drive with that vehicle says', async () => {
    expect(await knownCells(grid)).toEqual([]);
    const news = await judge(grid);
    expect(news).toHaveLength(4);
    const pairs = grid.drives.flatMap((each) => grid.vehicles.map((vehicle) => ({ ...each, vehicle })));
    for (const { id, file, leaveAt, vehicle } of pairs) {
      const vehiclePath = join(home, `${vehicle.id}.json`);
      writeFileSync(vehiclePath, JSON.stringify(vehicle.card));
      const { report } = worked(
        await checkFromFiles(
          {
            routePath: file.path,
            mapPaths: [],
            shelf: grid.shelf,
            vehiclePath,
            country: 'GB',
            ...(leaveAt === undefined ? {} : { leaveAt }),
          },
          { now },
        ),
      );
      expect(news).toContainEqual({
        kind: 'cell',
        cell: { drive: id, vehicle: vehicle.id, cell: cellOf(report), stale: [], changes: [] },
      });
    }
  });

  it('keeps what was judged, and judges nothing twice', async () => {
    const known = await knownCells(grid);
    expect(known).toHaveLength(4);
    expect(known.every(({ stale }) => stale.length === 0)).toBe(true);
    expect(await judge(grid)).toEqual([]);
  });

  it('tells why a cell is stale, and what is otherwise once it is judged anew, until that was seen', async () => {
    const lower = { ...high, heightM: 2.8 };
    const changed: GridOf = { ...grid, vehicles: [{ id: 'high', card: lower }, grid.vehicles[1]!] };
    const stale = (await knownCells(changed)).filter((cell) => cell.stale.length > 0);
    expect(stale.map(({ drive, vehicle, stale }) => [drive, vehicle, stale])).toEqual([
      ['b', 'high', ['card']],
      ['c', 'high', ['card']],
    ]);
    expect(await judge(changed)).toHaveLength(2);
    const changes = async () =>
      (await knownCells(changed)).flatMap(({ drive, vehicle, changes }) =>
        changes.map(({ kind }) => [drive, vehicle, kind]),
      );
    expect(await changes()).toContainEqual(['b', 'high', 'changed']);
    // seen on another computer
    const [change] = (await knownCells(changed)).flatMap(({ drive, changes }) =>
      drive === 'b' ? changes : [],
    );
    const ack = { id: 'seen-1', drive: 'b', vehicle: 'high', changes: [seenChange(change!)] };
    const left = (await knownCells({ ...changed, acknowledged: [ack] })).flatMap(({ changes }) => changes);
    expect(left).not.toContainEqual(change);
    await acceptChanges(join(home, 'yard'), { drive: 'b', vehicle: 'high' }, []);
    expect((await changes()).filter(([id]) => id === 'b')).toEqual([]);
    // judged once more, it is held against what was seen
    await judge(changed, 'all');
    expect((await changes()).filter(([id]) => id === 'b')).toEqual([]);
  });

  it('names a drive that cannot be read, and judges the others', async () => {
    const lost = { ...drive('x', 'nowhere.gpx'), name: 'Lost' };
    const news = await judge({ ...grid, drives: [lost, grid.drives[0]!], kept: join(home, 'other') });
    expect(news.filter(({ kind }) => kind === 'failed')).toEqual([
      { kind: 'failed', drive: 'x', say: expect.stringContaining('nowhere.gpx') },
    ]);
    expect(news.filter(({ kind }) => kind === 'cell')).toHaveLength(2);
  });

  it('counts the stays of the day that is kept with a drive: what comes after them is passed later', async () => {
    const leaveAt = '2027-06-12T04:30';
    const everything = { ...drive('e', 'everything.gpx'), leaveAt };
    const { lat, lon } = startOf(everything.file.path);
    const day: DayPlan = { stops: [{ name: 'At the yard', lat, lon, atM: 0, stayMin: 9 * 60 }] };
    const kept = join(home, 'day');
    const stayed = { ...grid, drives: [{ ...everything, day }], vehicles: [grid.vehicles[0]!], kept };
    const plain = await judge({ ...stayed, drives: [everything] });
    // with another day or leave time it is out of date, and what it said is what newer answers are compared with
    const staleWith = async (drives: GridOf['drives']) =>
      (await knownCells({ ...stayed, drives })).map(({ stale }) => stale);
    expect(await staleWith(stayed.drives)).toEqual([['day']]);
    expect(await staleWith([{ ...everything, leaveAt: '2027-06-12T13:30' }])).toEqual([['leave']]);
    const { report } = worked(
      await checkFromFiles(
        {
          routePath: everything.file.path,
          mapPaths: [],
          shelf: grid.shelf,
          vehiclePath: CARD,
          country: 'GB',
          leaveAt,
          day,
        },
        { now },
      ),
    );
    const judged = await judge(stayed);
    expect(judged).toMatchObject([{ cell: { cell: cellOf(report) } }]);
    expect(judged).not.toMatchObject(
      plain.map((each) => each.kind === 'cell' && { cell: { cell: each.cell.cell } }),
    );
    // a lower card and another leave time at once: what is worse is told, whichever of them it came by
    const { leaveAt: _, ...whenever } = everything;
    const [higher] = await judge({
      ...stayed,
      drives: [whenever],
      vehicles: [{ id: 'high', card: { ...high, heightM: high.heightM + 0.6 } }],
    });
    expect(higher?.kind === 'cell' && higher.cell.changes.length).toBeGreaterThan(0);
  });

  it('says so where a drive’s cells cannot be kept, and judges the others', async () => {
    const kept = join(home, 'in-the-way');
    mkdirSync(join(kept, 'b.json'), { recursive: true });
    const news: GridNews[] = [];
    const said = await judgeGrid(
      { ...grid, kept },
      'all',
      { signal, hear: (each) => news.push(each) },
      judgeHere,
    );
    expect(said).toMatchObject({ ok: false, error: { code: 'yard.unwritable' } });
    expect(news.filter(({ kind }) => kind === 'cell')).toHaveLength(4);
    expect(readdirSync(kept)).toContain('c.json');
  });

  it('shows what was checked, and says so, where the disk is full', async () => {
    const news: GridNews[] = [];
    const disk = await failFrom(0, 'full');
    const said = await judgeGrid(
      { ...grid, kept: join(home, 'full') },
      'all',
      { signal, hear: (each) => news.push(each) },
      judgeHere,
    ).finally(() => disk.restore());
    expect(said).toMatchObject({ ok: false, error: { code: 'yard.unwritable' } });
    expect(!said.ok && said.error.message).toMatch(
      /^What was checked is shown, but could not be kept: .*Make room/,
    );
    expect(news.map(({ kind }) => kind)).toEqual(['cell', 'cell', 'cell', 'cell']);
  });

  it('leaves out what was removed while its row was checked', async () => {
    const kept = join(home, 'removed');
    const [high] = grid.vehicles;
    await judge({ ...grid, kept });
    const left = await knownCells({ ...grid, vehicles: [high!], drives: [grid.drives[0]!], kept });
    expect(left.map(({ drive, vehicle }) => [drive, vehicle])).toEqual([['b', 'high']]);
    // had back from the bin, its cells are there again
    expect(await knownCells({ ...grid, kept })).toHaveLength(4);
  });

  it('does not judge a file that is not the one that was kept', async () => {
    const [one] = grid.drives;
    const changed = { ...one!, file: { ...one!.file, sha256: '0'.repeat(64) } };
    const news = await judge({ ...grid, drives: [changed], kept: join(home, 'changed') });
    expect(news).toEqual([
      { kind: 'failed', drive: 'b', say: expect.stringMatching(/^barred\.gpx is not what was kept/) },
    ]);
  });

  it('is given up at once, and keeps what was done', async () => {
    const stop = new AbortController();
    stop.abort();
    const given = await judgeGrid(grid, 'all', { signal: stop.signal, hear: () => {} }, judgeHere);
    expect(given).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(await knownCells(grid)).toHaveLength(4);
    expect(readdirSync(join(home, 'yard'))).toContain('b.json');
  });

  it('says that nothing can be checked where the shelf is empty', async () => {
    const empty = { ...grid, shelf: join(home, 'none') };
    const said = await judgeGrid(empty, 'stale', { signal, hear: () => {} });
    expect(said).toMatchObject({ ok: false, error: { code: 'shelf.empty' } });
  });
});
