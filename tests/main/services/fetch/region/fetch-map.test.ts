import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  cutAfter,
  inventedMap,
  linesOf,
  md5Of,
  sendFile,
  stallAfter,
} from '../../../../support/map-server/extracts.ts';
import * as bad from '../../../../support/map-server/misbehave.ts';
import type { Reply } from '../../../../support/map-server/serve.ts';
import { worked } from '../../../../support/scratch-files.ts';

import { FILE, fetchNorth, HALF, halfFetched, left, NEWER, NORTH, SUM, serving, whyNot } from './north.ts';

describe('the map of a region', () => {
  it('comes whole, held against its checksum, and goes when it was read', async () => {
    const heard: number[] = [];
    const at = await fetchNorth(serving(), {
      hooks: { onProgress: ({ bytes, of }) => heard.push(bytes / (of ?? 0)) },
    });
    const map = worked(at.fetched);
    expect(await readFile(map.path)).toEqual(Buffer.from(NORTH));
    expect(map).toMatchObject({ bytes: NORTH.length, verified: true, notes: [] });
    expect(heard.at(-1)).toBe(1);
    expect(heard).toEqual(heard.toSorted((a, b) => a - b));
    expect((await left(at)).sort()).toEqual(['north.about', 'north.osm.pbf']);
    await map.discard();
    expect(await left(at)).toEqual([]);
  });

  it('goes on where the connection fell silent, after a pause', async () => {
    const have = serving();
    have.odd.set(FILE, [
      stallAfter(have, NORTH, 10_000),
      stallAfter(have, NORTH, 5_000),
      sendFile(have, NORTH),
    ]);
    const at = await fetchNorth(have, { silenceMs: 400 });
    expect(await readFile(worked(at.fetched).path)).toEqual(Buffer.from(NORTH));
    expect(at.lines()).toEqual([
      `GET ${SUM}`,
      `GET ${FILE}`,
      `GET ${FILE} from 10000`,
      `GET ${FILE} from 15000`,
    ]);
    expect(at.pauses).toEqual([2000, 2000]);
  });

  it('goes on where the connection broke, and no byte is there twice', async () => {
    const have = serving();
    const cuts = [7_000, 1_000, 9_000].map((count) => cutAfter(have, NORTH, count));
    have.odd.set(FILE, [...cuts, sendFile(have, NORTH)]);
    const at = await fetchNorth(have);
    expect(await readFile(worked(at.fetched).path)).toEqual(Buffer.from(NORTH));
    expect(at.lines()).toHaveLength(5);
  });

  it('goes on in another program, where the user broke it off', async () => {
    const at = await halfFetched(serving());
    expect(whyNot(at)).toMatch(
      /^Cancelled\. What has come \(\d+ kB\) is kept, and fetching goes on from there\.$/u,
    );
    const map = worked(await at.again().fetchMap(at.region));
    expect(await readFile(map.path)).toEqual(Buffer.from(NORTH));
    expect(linesOf(at.server).at(-1)).toBe(`GET ${FILE} from ${HALF}`);
    expect(at.server.asked.at(-1)?.headers['if-range']).toMatch(/^"/u);
  });

  it('is not asked for again where it was whole already when the program ended', async () => {
    const at = await fetchNorth(serving());
    worked(at.fetched);
    const before = at.lines().length;
    expect(worked(await at.again().fetchMap(at.region)).verified).toBe(true);
    expect(at.lines().slice(before)).toEqual([`GET ${SUM}`]);
  });

  it('begins anew where the server has another file by now', async () => {
    const have = serving();
    const at = await halfFetched(have);
    have.files.set('north', NEWER);
    const map = worked(await at.again().fetchMap(at.region));
    expect(await readFile(map.path)).toEqual(Buffer.from(NEWER));
  });

  it('begins anew where a server passes over what part is asked for', async () => {
    const have = serving();
    const at = await halfFetched(have);
    have.honoursRange = false;
    expect(await readFile(worked(await at.again().fetchMap(at.region)).path)).toEqual(Buffer.from(NORTH));
  });

  it('begins anew where the part that is sent is another than was asked for', async () => {
    const have = serving();
    const at = await halfFetched(have);
    const shifted: Reply = (response) => {
      response
        .writeHead(206, { 'Content-Range': `bytes 5-${NORTH.length - 1}/${NORTH.length}` })
        .end(NORTH.subarray(5));
    };
    have.odd.set(FILE, [shifted, sendFile(have, NORTH)]);
    expect(await readFile(worked(await at.again().fetchMap(at.region)).path)).toEqual(Buffer.from(NORTH));
  });

  it('begins anew where more was kept than the server has', async () => {
    const have = serving();
    const at = await halfFetched(have);
    const [part = ''] = (await readdir(at.folder)).filter((name) => name.endsWith('.part'));
    await writeFile(join(at.folder, part), Buffer.alloc(NORTH.length + 9));
    expect(await readFile(worked(await at.again().fetchMap(at.region)).path)).toEqual(Buffer.from(NORTH));
    expect(linesOf(at.server).slice(-2)).toEqual([`GET ${FILE} from ${NORTH.length + 9}`, `GET ${FILE}`]);
  });

  it('is thrown away where what was kept was damaged meanwhile', async () => {
    const have = serving();
    const at = await halfFetched(have);
    const [part = ''] = (await readdir(at.folder)).filter((name) => name.endsWith('.part'));
    await writeFile(join(at.folder, part), Buffer.alloc(HALF));
    expect(whyNot({ ...at, fetched: await at.again().fetchMap(at.region) })).toMatch(
      /its checksum is another/u,
    );
    expect(await left(at)).toEqual([]);
    expect(worked(await at.again().fetchMap(at.region)).verified).toBe(true);
  });

  it('is kept from the first byte only where the server names its version', async () => {
    const have = serving();
    have.etag = () => undefined;
    have.odd.set(FILE, [cutAfter(have, NORTH, 10_000), sendFile(have, NORTH)]);
    const at = await fetchNorth(have);
    expect(await readFile(worked(at.fetched).path)).toEqual(Buffer.from(NORTH));
    expect(at.lines()).toEqual([`GET ${SUM}`, `GET ${FILE}`, `GET ${FILE}`]);
  });

  it('is not gone on with by a tag that stands for like files', async () => {
    const have = serving();
    have.etag = () => 'W/"like"';
    have.odd.set(FILE, [cutAfter(have, NORTH, 10_000), sendFile(have, NORTH)]);
    const at = await fetchNorth(have);
    expect(at.lines().at(-1)).toBe(`GET ${FILE}`);
    expect(at.fetched.ok).toBe(true);
  });
});

describe('the checksum of a map', () => {
  const sum =
    (text: string): Reply =>
    (response) => {
      response.end(text);
    };

  it('that is wrong and stays so has the file thrown away', async () => {
    const at = await fetchNorth(serving({ [SUM]: [sum(`${md5Of(NEWER)}  x\n`)] }));
    expect(whyNot(at)).toBe(
      'The map of North is not what HOST says it is: its checksum is another. It was thrown away; try again later.',
    );
    expect(await left(at)).toEqual([]);
  });

  it('that was the older file’s is asked for once more', async () => {
    const at = await fetchNorth(serving({ [SUM]: [sum(md5Of(NEWER)), sum(md5Of(NORTH).toUpperCase())] }));
    expect(worked(at.fetched)).toMatchObject({ verified: true, notes: [] });
    expect(at.lines()).toEqual([`GET ${SUM}`, `GET ${FILE}`, `GET ${SUM}`]);
  });

  it('that became another’s tells that the file was replaced underneath: it is fetched anew, once', async () => {
    const have = serving({ [SUM]: [sum(md5Of(inventedMap(5))), sum(md5Of(NEWER))] });
    have.odd.set(FILE, [sendFile(have, NORTH), sendFile(have, NEWER)]);
    const at = await fetchNorth(have);
    expect(await readFile(worked(at.fetched).path)).toEqual(Buffer.from(NEWER));
    expect(worked(at.fetched).notes.map((note) => note.replace(at.host, 'HOST'))).toEqual([
      'HOST replaced the map of North while it was being fetched; it was fetched anew.',
    ]);
    let day = 0;
    const always = await fetchNorth(
      serving({ [SUM]: [(response) => response.end(md5Of(Uint8Array.of(day++))) && undefined] }),
    );
    expect(whyNot(always)).toBe(
      'HOST replaced the map of North while it was being fetched, twice. Try again in an hour.',
    );
  });

  it.each([
    ['is not there', bad.status(404), 'the server answered 404'],
    ['is a web page', bad.html('Log in'), 'what lies there is none'],
    ['is a word', sum('none today'), 'what lies there is none'],
    ['is endless', sum('0'.repeat(200_000)), 'what lies there is none'],
  ])('that %s leaves the length alone to tell, and that is said', async (_, reply, why) => {
    const at = await fetchNorth(serving({ [SUM]: [reply] }));
    expect(worked(at.fetched)).toMatchObject({
      verified: false,
      notes: [
        `The checksum of the map of North could not be had (${why}): that it came whole is told by its length alone.`,
      ],
    });
  });

  it('and length both missing: nothing tells that it came whole', async () => {
    const untilClose: Reply = (response) => {
      response.socket?.end(Buffer.concat([Buffer.from('HTTP/1.1 200 OK\r\n\r\n'), NORTH]));
    };
    const at = await fetchNorth(serving({ [SUM]: [bad.status(404)], [FILE]: [untilClose] }));
    expect(whyNot(at)).toMatch(/nothing tells that this is all of it/u);
    const summed = await fetchNorth(serving({ [FILE]: [untilClose] }));
    expect(worked(summed.fetched).verified).toBe(true);
  });
});
