import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { extracts, inventedMap, linesOf } from '../../../../support/map-server/extracts.ts';
import { boxRegion, indexText } from '../../../../support/map-server/invented-regions.ts';
import * as bad from '../../../../support/map-server/misbehave.ts';
import type { Reply } from '../../../../support/map-server/serve.ts';
import { worked } from '../../../../support/scratch-files.ts';
import { ACROSS, fetching } from './fetching.ts';

const NORTH = inventedMap(1);
const SOUTH = inventedMap(2);
const REGIONS = [boxRegion('north', [8, 50, 10, 51]), boxRegion('south', [10, 50, 12, 51])];
const DAY_MS = 86_400_000;

const serving = () => extracts(REGIONS, { north: NORTH, south: SOUTH });

describe('fetching by region', () => {
  it('asks nobody before the first yes, and each yes asks what was said and no more', async () => {
    const { fetch, server } = await fetching(serving());
    const steps = async () => (await fetch.plan(ACROSS)).map(({ step }) => step);
    expect(await steps()).toEqual(['index']);
    expect(linesOf(server)).toEqual([]);

    worked(await fetch.fetchIndex());
    expect(await steps()).toEqual(['sizes', 'maps']);
    expect(linesOf(server)).toEqual(['GET /index-v1.json']);

    const [sizes] = await fetch.plan(ACROSS);
    if (sizes?.step !== 'sizes') throw new Error(sizes?.step);
    worked(await fetch.fetchSizes(sizes.regions));
    expect(linesOf(server).slice(1)).toEqual(['HEAD /north-latest.osm.pbf', 'HEAD /south-latest.osm.pbf']);

    const [maps, ...rest] = await fetch.plan(ACROSS);
    if (maps?.step !== 'maps') throw new Error(maps?.step);
    expect(rest).toEqual([]);
    expect(maps.choice).toMatchObject({ bytes: NORTH.length + SOUTH.length, guessed: false });
    expect(linesOf(server)).toHaveLength(3);

    const files = [];
    for (const { region } of maps.choice.regions) files.push(worked(await fetch.fetchMap(region)));
    expect(await readFile(files[0]?.path ?? '')).toEqual(Buffer.from(NORTH));
    expect(await readFile(files[1]?.path ?? '')).toEqual(Buffer.from(SOUTH));
    expect(linesOf(server).slice(3)).toEqual([
      'GET /north-latest.osm.pbf.md5',
      'GET /north-latest.osm.pbf',
      'GET /south-latest.osm.pbf.md5',
      'GET /south-latest.osm.pbf',
    ]);
    expect(server.mostAtOnce()).toBe(1);
  });

  it('says program and version, and nothing of the drive', async () => {
    const { fetch, server } = await fetching(serving());
    worked(await fetch.fetchIndex());
    for (const { headers, body } of server.asked) {
      expect(headers['user-agent']).toMatch(/^Lanegauge\/\d/u);
      expect(headers.cookie).toBeUndefined();
      expect(body).toBe('');
    }
  });

  it('has one connection at a time, however many steps are begun at once', async () => {
    const { fetch, server } = await fetching(serving());
    await Promise.all([fetch.fetchIndex(), fetch.fetchIndex(), fetch.fetchIndex()]);
    expect(linesOf(server)).toHaveLength(3);
    expect(server.mostAtOnce()).toBe(1);
  });
});

describe('the list of regions', () => {
  it('is kept for 30 days, for another program too', async () => {
    let nowMs = 1_800_000_000_000;
    const { fetch, again, server } = await fetching(serving(), { nowMs: () => nowMs });
    worked(await fetch.fetchIndex());
    const next = async () => (await again().plan(ACROSS))[0]?.step;
    expect(await next()).toBe('sizes');
    nowMs += 29 * DAY_MS;
    expect(await next()).toBe('sizes');
    nowMs += DAY_MS;
    expect(await next()).toBe('index');
    // a clock that was set back
    nowMs -= 40 * DAY_MS;
    expect(await next()).toBe('index');
    expect(linesOf(server)).toHaveLength(1);
  });

  it('that was damaged where it is kept comes first again', async () => {
    const { fetch, again, folder } = await fetching(serving());
    worked(await fetch.fetchIndex());
    const [name = ''] = await readdir(folder);
    const text = await readFile(join(folder, name), 'utf8');
    await writeFile(join(folder, name), text.replace('North', 'Nord!'));
    expect((await again().plan(ACROSS))[0]?.step).toBe('index');
  });

  it('names what of it cannot be used', async () => {
    const have = serving();
    have.regions = [
      ...REGIONS,
      boxRegion('far', [0, 0, 1, 1], { url: 'https://other.example.net/far.osm.pbf' }),
    ];
    const { fetch, host } = await fetching(have);
    expect(worked(await fetch.fetchIndex()).notes).toEqual([
      `Region "far" is left out: its file lies on another server than ${host}.`,
    ]);
  });

  it.each([
    ['a login page', bad.html('Log in'), /sent a web page in place of the list of regions/u],
    ['a page for a status', bad.status(403), /refuses the list of regions \(403\)/u],
    ['none there', bad.status(404), /has not got the list of regions \(404\)/u],
    ['a server in trouble', bad.status(503), /cannot give the list of regions now \(503\)/u],
    ['another host', bad.redirectTo('https://other.example.net/index-v1.json'), /which is another server/u],
    ['round in circles', bad.redirectTo('/index-v1.json'), /sends from one address to the next/u],
    ['cut short', bad.whole(indexText(REGIONS).slice(0, -9)), /is no whole JSON/u],
    ['a cut gzip', bad.cutGzip(indexText(REGIONS)), /is cut short/u],
    ['endless', bad.lyingLength('{', 40_000_000), /is larger than 32 MB/u],
    ['silent', bad.silence(), /fell silent/u],
  ])('is refused and not kept: %s', async (_, reply, why) => {
    const have = serving();
    have.odd.set('/index-v1.json', [reply]);
    const { fetch, folder } = await fetching(have, { silenceMs: 150 });
    const fetched = await fetch.fetchIndex();
    expect(fetched.ok ? '' : fetched.error.message).toMatch(why);
    expect(await readdir(folder)).toEqual([]);
  });

  it('serves this once where it cannot be kept', async () => {
    const { fetch } = await fetching(serving(), { folder: '/proc/lanegauge' });
    expect(worked(await fetch.fetchIndex()).notes[0]).toMatch(/could not be kept in \/proc\/lanegauge/u);
    expect((await fetch.plan(ACROSS))[0]?.step).toBe('sizes');
  });
});

describe('sizes', () => {
  const PATH = '/north-latest.osm.pbf';

  async function asked(reply: Reply) {
    const have = serving();
    have.odd.set(PATH, [reply]);
    const { fetch, host } = await fetching(have, { silenceMs: 150 });
    worked(await fetch.fetchIndex());
    const [sizes] = await fetch.plan(ACROSS);
    if (sizes?.step !== 'sizes') throw new Error(sizes?.step);
    const told = await fetch.fetchSizes(sizes.regions);
    const plan = await fetch.plan(ACROSS);
    return { told, plan, host };
  }

  it('of a file that is gone: the drive is planned without it, and what is then left out is told', async () => {
    const { told, plan, host } = await asked(bad.status(404));
    expect(worked(told).notes).toEqual([
      `${host} has not got the map of North (404). Fetch the list of regions anew, or look at the server's address.`,
    ]);
    expect(plan.map(({ step }) => step)).toEqual(['maps']);
    expect(plan[0]?.say).toMatch(
      /^1 map from .*South .*70\.\d km \(4\d\.\d mi\) from 0\.0 km \(0\.0 mi\) on lie in no region/u,
    );
  });

  it.each([
    [
      'no length',
      bad.status(200, '', { 'Content-Type': 'application/octet-stream', 'Transfer-Encoding': 'chunked' }),
      /does not tell how large/u,
    ],
    ['a login page', bad.html('Log in'), /sent a web page in place of the map of North/u],
    ['refused', bad.status(403), /refuses the map of North/u],
  ])('that a server does not tell stay guessed, and are not asked for again: %s', async (_, reply, why) => {
    const { told, plan } = await asked(reply);
    expect(worked(told).notes[0]).toMatch(why);
    expect(plan.map(({ step }) => step)).toEqual(['maps']);
    expect(plan[0]?.say).toMatch(/North \(about /u);
  });

  it('are not asked on where the server cannot be reached', async () => {
    const { told } = await asked(bad.silence());
    expect(told.ok ? '' : told.error.message).toMatch(/fell silent/u);
  });
});
