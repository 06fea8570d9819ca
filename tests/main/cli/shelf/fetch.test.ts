import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { shelfCommand } from '../../../../main/cli/shelf/shelf-command.ts';
import { checkFromFiles } from '../../../../main/services/check-drive.ts';
import { readDistrict, SAMPLES } from '../../../sample-routes/read-district.ts';
import { extracts, serveExtracts } from '../../../support/map-server/extracts.ts';
import { fastPace } from '../../../support/map-server/fast-pace.ts';
import { boxRegion } from '../../../support/map-server/invented-regions.ts';
import { MapInMemory } from '../../../support/map-server/map-in-memory.ts';
import { serveHere } from '../../../support/map-server/serve.ts';
import { serveOverpass } from '../../../support/map-server/serve-overpass.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { terminalOf } from '../../../support/terminal.ts';

const DRIVE = join(SAMPLES, 'drives', 'barred.gpx');

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'fetch-cli-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function shelf(...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const exit = await shelfCommand(words, terminal, { importPart: importByHand, pace: fastPace() });
  return { exit, ...said };
}

/** In this thread: that a check of the terminal reads the shelf is stated in shelf-command.test.ts. */
async function reportOf(...mapPaths: readonly string[]) {
  const vehiclePath = join(SAMPLES, 'vehicles', 'coach-built-7.4.json');
  const request = { routePath: DRIVE, mapPaths, vehiclePath, country: 'GB', shelf: join(home, 'shelf') };
  return worked(await checkFromFiles(request, { now: () => new Date(0) })).report;
}

const MAP = join(SAMPLES, 'district.osm.pbf');
let told: ReturnType<typeof reportOf> | undefined;

/** The findings as the whole map's file gives them, read once. */
async function fromFile() {
  told ??= reportOf(MAP);
  return (await told).findings;
}

describe('lanegauge shelf fetch', () => {
  it('along the line: asks nothing before the yes, then puts a map on the shelf that gives the same findings', async () => {
    const server = await serveOverpass(new MapInMemory(await readDistrict()));
    const words = ['fetch', '--route', DRIVE, '--by', 'line', '--from', server.address.href];
    const planned = await shelf(...words);
    expect(planned.exit).toBe(0);
    expect(planned.out).toContain(server.address.host);
    expect(planned.out).toContain('Nothing was asked. To do it, add --yes.');
    expect(planned.out).not.toContain('The shelf has');
    expect(server.asked).toEqual([]);

    const fetched = await shelf(...words, '--yes', '--json');
    expect(fetched).toMatchObject({ exit: 0, complaint: '' });
    const { maps, lacking } = JSON.parse(fetched.out);
    expect(maps).toHaveLength(1);
    expect(lacking).toEqual([]);
    expect(server.mostAtOnce()).toBe(1);
    const report = await reportOf();
    expect(report.findings).toEqual(await fromFile());
    expect(report.cautions.join(' ')).toContain('Only what lies close to the drive is fetched');
    expect((await shelf(...words)).out).toContain('The shelf has roads along all of this drive already');
    // what was fetched is on the shelf and nowhere besides
    expect(readdirSync(join(home, 'fetch', 'line')).filter((name) => name.endsWith('.json'))).toEqual([]);
  });

  it('along the line: tells what came back and when it asks again, and keeps no map without a road of the drive', async () => {
    let asked = 0;
    const stub = (lat: unknown) => ({
      version: 0.6,
      osm3s: { timestamp_osm_base: '2026-11-01T00:00:00Z' },
      elements: [
        { type: 'node', id: 1, lat, lon: -20 },
        { type: 'node', id: 2, lat: 47.501, lon: -20.001 },
        { type: 'way', id: 5, nodes: [1, 2], tags: { highway: 'residential' } },
      ],
    });
    let lat: unknown = 47.5;
    const server = await serveHere((reply) => {
      asked++;
      if (asked === 2) reply.writeHead(504).end();
      else reply.writeHead(200, { 'Content-Type': 'application/json' }).end(JSON.stringify(stub(lat)));
    });
    const from = (path: string) =>
      shelf(
        'fetch',
        '--route',
        DRIVE,
        '--by',
        'line',
        '--from',
        `${server.origin}/${path}/interpreter`,
        '--yes',
      );
    const few = await from('api');
    const { host } = new URL(server.origin);
    expect(few.steps).toContain(`${host} answered 504: asks again in 30 s (2 of 4)`);
    expect(few.out).toContain('No road in what was fetched along 17.0 km of the drive');
    lat = 'abc';
    const unreadable = await from('other');
    expect(unreadable).toMatchObject({ exit: 2, out: '' });
    expect(unreadable.complaint).toContain('holds a road within reach of this drive, so it was not kept');
    expect(unreadable.complaint).toMatch(/\d of the things that .* sent cannot be read/u);
    expect(((await shelf('list')).out.match(/data of/gu) ?? []).length).toBe(1);
  });

  it('by region: the list, then sizes, then the map, each only after the yes', async () => {
    const map = readFileSync(MAP);
    const have = extracts([boxRegion('district', [-1, 48, 1, 50]), boxRegion('afar', [20, 48, 22, 50])], {
      district: map,
    });
    const [lon, lat] = await somewhere();
    have.regions = [
      boxRegion('district', [lon - 1, lat - 1, lon + 1, lat + 1]),
      boxRegion('afar', [lon + 20, lat - 1, lon + 22, lat + 1]),
    ];
    const server = await serveHere(serveExtracts(have));
    const words = ['fetch', '--route', DRIVE, '--by', 'region', '--from', `${server.origin}/index-v1.json`];
    const planned = await shelf(...words);
    expect(planned.out).toContain('First the list of regions');
    expect(server.asked).toEqual([]);

    const fetched = await shelf(...words, '--yes');
    expect(fetched).toMatchObject({ exit: 0, complaint: '' });
    expect(fetched.out).toContain('On the shelf: ');
    expect((await reportOf()).findings).toEqual(await fromFile());
    // the list is kept: what comes next is known without asking
    const before = server.asked.length;
    expect((await shelf(...words)).out).not.toContain('First the list of regions');
    expect(server.asked).toHaveLength(before);
  });

  it.each([
    [['--by', 'line'], '--route FILE.gpx'],
    [['--route', DRIVE], '--by line|region'],
    [['--route', DRIVE, '--by', 'air'], 'neither line nor region'],
    [['--route', DRIVE, '--by', 'line', '--from', 'ftp://example.org/x'], 'begins with'],
    [['--route', 'nowhere.gpx', '--by', 'line'], 'nowhere.gpx'],
  ])('refuses %j in one sentence', async (words, sentence) => {
    const refused = await shelf('fetch', ...words);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain(sentence);
  });
});

/** A place of the drive: longitude, latitude. */
async function somewhere(): Promise<readonly [number, number]> {
  const text = readFileSync(DRIVE, 'utf8');
  const [, lat, lon] = /<trkpt lat="([-\d.]+)" lon="([-\d.]+)"/.exec(text) ?? [];
  return [Number(lon), Number(lat)];
}
