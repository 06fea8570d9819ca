import { readdir, readFile, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pathsOf } from '../../../../../main/services/fetch/region/part-file.ts';
import { OWN_MARK } from '../../../../../main/services/files/owner-mark.ts';
import { sendFile } from '../../../../support/map-server/extracts.ts';
import * as bad from '../../../../support/map-server/misbehave.ts';
import type { Reply } from '../../../../support/map-server/serve.ts';
import { worked } from '../../../../support/scratch-files.ts';
import { ACROSS, fetching, regionOf } from './fetching.ts';
import { FILE, fetchNorth, HALF, halfFetched, left, NORTH, serving, whyNot } from './north.ts';

describe('a map is not taken, and nothing of it kept, that is', () => {
  const octets = { 'Content-Type': 'application/octet-stream' };

  it.each([
    [
      'a login page',
      bad.html('Log in'),
      /^HOST sent a web page in place of the map of North\. A network that asks for a login/u,
    ],
    [
      'a login page that calls itself a file',
      bad.status(200, '<html><body>Log in here</body></html>', octets),
      /^HOST sent a web page in place/u,
    ],
    [
      'another kind of file',
      bad.status(200, 'PK\u0003\u0004 and so on and so on', octets),
      /is no map file \(\.osm\.pbf\)/u,
    ],
    ['nothing', bad.status(200, '', octets), /without anything in it/u],
    ['gone', bad.status(404), /^HOST has not got the map of North \(404\)/u],
    ['refused', bad.status(403), /^HOST refuses the map of North \(403\)/u],
    ['odd', bad.status(418), /^HOST answered oddly to a question for the map of North \(418\)/u],
    [
      'on another host',
      bad.redirectTo('https://other.example.net/north.osm.pbf'),
      /which is another server/u,
    ],
    ['round in circles', bad.redirectTo(FILE), /sends from one address to the next/u],
    ['beyond any part that could be asked for', bad.status(416), /^HOST answered oddly .* \(416\)/u],
  ])('%s', async (_, reply, why) => {
    const at = await fetchNorth(serving({ [FILE]: [reply] }));
    expect(whyNot(at)).toMatch(why);
    expect(await left(at)).toEqual([]);
    expect(at.pauses).toEqual([]);
  });

  it('cut by a length that is too short', async () => {
    const short: Reply = (response) => {
      response.writeHead(200, { ...octets, 'Content-Length': HALF }).end(NORTH.subarray(0, HALF));
    };
    expect(whyNot(await fetchNorth(serving({ [FILE]: [short] })))).toMatch(/its checksum is another/u);
  });

  it('too large for the disk, said before it is begun', async () => {
    const at = await fetchNorth(serving(), { freeBytes: 30_000_000 });
    expect(whyNot(at)).toMatch(
      /^The map of North needs \d+ kB more in .*, and 30 MB are free there\. Make room/u,
    );
    expect(await left(at)).toEqual([]);
  });

  it('gone, and is left out of what is planned then', async () => {
    const at = await fetchNorth(serving({ [FILE]: [bad.status(404)] }));
    expect((await at.fetch.plan(ACROSS)).map(({ step }) => step)).toEqual(['none']);
  });
});

describe('a server in trouble', () => {
  it('is asked again after longer and longer pauses, and then no more', async () => {
    const at = await fetchNorth(serving({ [FILE]: [bad.status(503)] }));
    expect(whyNot(at)).toBe('HOST cannot give the map of North now (503). Try again later.');
    expect(at.pauses).toEqual([2000, 10_000, 30_000, 60_000]);
    expect(at.lines()).toHaveLength(6);
  });

  it('that asks to be left alone for some time is; for more than five minutes, it is not asked again', async () => {
    const have = serving();
    const busy = (seconds: string) => bad.status(429, '', { 'Retry-After': seconds });
    have.odd.set(FILE, [busy('40'), sendFile(have, NORTH)]);
    const at = await fetchNorth(have);
    expect(at.fetched.ok).toBe(true);
    expect(at.pauses).toEqual([40_000]);
    const long = await fetchNorth(serving({ [FILE]: [busy('9999')] }));
    expect(whyNot(long)).toBe(
      'HOST asks not to be asked so often (429). Try again later. It asks to wait 167 min.',
    );
    expect(long.pauses).toEqual([]);
  });

  it('that falls silent, drips or lies about the length is gone on with', async () => {
    const have = serving();
    const lying: Reply = (response) => {
      const head = `HTTP/1.1 200 OK\r\nETag: ${have.etag(NORTH)}\r\nContent-Length: ${NORTH.length}\r\n\r\n`;
      response.socket?.write(Buffer.concat([Buffer.from(head), NORTH.subarray(0, 9000)]));
      setTimeout(() => response.socket?.end(), 20);
    };
    const silent: Reply = (response) => {
      const range = `bytes 9000-${NORTH.length - 1}/${NORTH.length}`;
      response.writeHead(206, { 'Content-Range': range, ETag: have.etag(NORTH) ?? '' });
      response.write(NORTH.subarray(9000, 12_000));
    };
    have.odd.set(FILE, [lying, silent, sendFile(have, NORTH)]);
    const at = await fetchNorth(have, { silenceMs: 150 });
    expect(await readFile(worked(at.fetched).path)).toEqual(Buffer.from(NORTH));
    expect(at.lines().slice(2)).toEqual([`GET ${FILE} from 9000`, `GET ${FILE} from 12000`]);
  });

  it('that is not there at all is not waited for without end', async () => {
    const at = await fetching(serving());
    const region = await regionOf(at, 'north');
    const stop = new AbortController();
    stop.abort();
    const fetched = await at.fetch.fetchMap(region, { signal: stop.signal });
    expect(whyNot({ ...at, fetched })).toBe('Cancelled.');
    expect(await left(at)).toEqual([]);
  });
});

describe('the folder of files that come', () => {
  it.runIf(process.platform === 'linux')('on a full disk: the sentence says so', async () => {
    const at = await fetching(serving());
    const region = await regionOf(at, 'north');
    await symlink('/dev/full', pathsOf(at.folder, region).part);
    const fetched = await at.fetch.fetchMap(region);
    expect(whyNot({ ...at, fetched })).toMatch(
      /could not be written in .*: the disk is full\. Make room there/u,
    );
  });

  it('that cannot be made', async () => {
    const at = await fetching(serving(), { folder: '/proc/lanegauge' });
    const region = await regionOf(at, 'north');
    expect(whyNot({ ...at, fetched: await at.fetch.fetchMap(region) })).toMatch(
      /could not be kept in \/proc\/lanegauge/u,
    );
  });

  it('is shared: a file that another fetches is left to it, one that ended is not waited for', async () => {
    const at = await fetching(serving());
    const region = await regionOf(at, 'north');
    const { claim } = pathsOf(at.folder, region);
    await writeFile(claim, OWN_MARK);
    expect(whyNot({ ...at, fetched: await at.fetch.fetchMap(region) })).toBe(
      'Another Lanegauge is fetching the map of North now. Wait for it.',
    );
    // its process number was given to another program since
    const longAgo = new Date(Date.now() - 3_600_000);
    await utimes(claim, longAgo, longAgo);
    expect((await at.fetch.fetchMap(region)).ok).toBe(true);
    expect((await left(at)).sort()).toEqual(['north.about', 'north.osm.pbf']);
  });

  it('is swept of what nobody went on with for two weeks', async () => {
    const at = await halfFetched(serving());
    const old = new Date(Date.now() - 15 * 86_400_000);
    for (const name of await readdir(at.folder)) await utimes(join(at.folder, name), old, old);
    const other = await fetching(serving(), { folder: at.folder });
    const region = await regionOf(other, 'north');
    const map = worked(await other.fetch.fetchMap(region));
    expect((await left(at)).sort()).toEqual(['north.about', 'north.osm.pbf']);
    expect((await stat(map.path)).size).toBe(NORTH.length);
  });
});
