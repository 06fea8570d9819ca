import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkDrive } from '../../../../geo/check.ts';
import { chooseRoute } from '../../../../geo/drive/gpx/choose-route.ts';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { readRouteFile } from '../../../../main/services/route/read-route-file.ts';
import { type OpenPart, openPart } from '../../../../main/services/shelf/read-part.ts';
import { roadsFromShelf } from '../../../../main/services/shelf/roads-from-shelf.ts';
import { readVehicleFile } from '../../../../main/services/vehicle/read-vehicle-file.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';
import { makePart } from '../../../support/shelf/make-part.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const MAP = join(SAMPLE, 'district.osm.pbf');
const DRIVES = readdirSync(join(SAMPLE, 'drives')).filter((name) => name.endsWith('.gpx'));
const scratch = scratchFiles();
const pause = async () => {};

let path: string;
beforeAll(async () => {
  path = scratch('district.shelf', '');
  await makePart(MAP, path);
});

function shelfOf(...parts: readonly OpenPart[]) {
  return {
    parts: parts.map((part) => ({ map: 'District', part, notes: [] })),
    maps: parts.length,
    damaged: [],
    forbidden: [],
    state: '',
    close() {},
  };
}

async function routeOf(name: string): Promise<Route> {
  const file = worked(await readRouteFile(join(SAMPLE, 'drives', name)));
  return worked(chooseRoute(file, undefined)).route;
}

async function report(route: Route, roads: Roads) {
  const card = worked(await readVehicleFile(join(SAMPLE, 'vehicles', 'coach-built-7.4.json')));
  const drive = followRoads(route, roads);
  const { map, ...rest } = checkDrive({
    route,
    file: 'drive.gpx',
    drive,
    roads,
    card,
    country: 'GB',
    program: '',
    made: '',
  });
  return { map, rest: JSON.stringify(rest) };
}

describe('a drive checked from the shelf', () => {
  it.each(DRIVES)('%s: the same report as from the file, byte for byte', async (name) => {
    const route = await routeOf(name);
    const fromFile = await report(route, worked(await openMap([MAP], route)));
    const part = openPart(path);
    const { roads, damaged, used } = await roadsFromShelf(shelfOf(part), route, pause);
    const fromShelf = await report(route, roads);
    part.close();
    expect(damaged).toEqual([]);
    expect(used.map(({ map }) => map)).toEqual(['District']);
    expect(fromShelf.rest).toBe(fromFile.rest);
    expect(fromShelf.map.sources).toEqual(fromFile.map.sources);
  });

  it('twice on the shelf: the same still, nothing differs between a map and itself', async () => {
    const route = await routeOf('barred.gpx');
    const part = openPart(path);
    const once = await report(route, (await roadsFromShelf(shelfOf(part), route, pause)).roads);
    const twice = await report(route, (await roadsFromShelf(shelfOf(part, part), route, pause)).roads);
    part.close();
    expect(twice.rest).toBe(once.rest);
    expect(twice.map.sources).toHaveLength(2);
  });

  it('with nothing there: no road and no source', async () => {
    const route = await routeOf('clear.gpx');
    const part = openPart(path);
    const elsewhere = {
      ...route,
      segments: [{ ...route.segments[0]!, lat: route.segments[0]!.lat.map((lat) => lat - 20) }],
    };
    const { roads, used } = await roadsFromShelf(shelfOf(part), elsewhere, pause);
    part.close();
    expect(roads.ways.count).toBe(0);
    expect(used).toEqual([]);
  });

  it('with a map beside it that may not be read: the map is named', async () => {
    const route = await routeOf('clear.gpx');
    const part = openPart(path);
    const shelf = { ...shelfOf(part), forbidden: ['Hills'] };
    const { roads } = await roadsFromShelf(shelf, route, pause);
    part.close();
    expect(roads.notes.join('\n')).toContain('The map "Hills" may not be read by this user');
  });

  it('with a tile damaged: what is left is used, the map is named and the drive is unknown there', async () => {
    const route = await routeOf('barred.gpx');
    const bytes = readFileSync(path);
    const whole = openPart(path);
    // every tile of roads loses a bit of its middle
    for (let place = 0; place < whole.directory.count; place += 2)
      bytes[(whole.directory.offset[place]! + whole.directory.length[place]! / 2) | 0]! ^= 1;
    whole.close();
    const hurt = scratch('hurt.shelf', '');
    writeFileSync(hurt, bytes);
    const part = openPart(hurt);
    const { roads, damaged } = await roadsFromShelf(shelfOf(part), route, pause);
    part.close();
    expect(damaged).toEqual(['District']);
    expect(roads.notes.join('\n')).toContain('The map "District" is damaged');
    const { rest } = await report(route, roads);
    expect(JSON.parse(rest).cautions.join('\n')).toContain('The map "District" is damaged');
    expect(
      JSON.parse(rest).findings.some(
        ({ subject, level }: { subject: string; level: string }) => subject === 'map' && level === 'unknown',
      ),
    ).toBe(true);
  });

  it('from a file that is cut, foreign or changed: refused when it is opened', () => {
    const bytes = readFileSync(path);
    const cases = [
      bytes.subarray(0, bytes.length - 1),
      bytes.subarray(0, 40),
      Buffer.from('<html>'.repeat(100)),
      Buffer.concat([bytes, Buffer.from([0])]),
      Buffer.concat([bytes.subarray(0, bytes.length - 200), Buffer.alloc(200)]),
    ];
    for (const [i, content] of cases.entries())
      expect(() => openPart(scratch(`bad-${i}.shelf`, content))).toThrow(/it/);
  });
});
