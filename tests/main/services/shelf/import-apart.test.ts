import { existsSync, readFileSync, truncateSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { importApart, wantsApart } from '../../../../main/services/shelf/apart/import-apart.ts';
import { importPart } from '../../../../main/services/shelf/import/import-part.ts';
import { runHere } from '../../../../main/services/shelf/import/runner.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';
import { writeVersion } from '../../../support/shelf/two-maps.ts';

const write = scratchFiles();
const outFile = write('map.part', '');
const folder = dirname(outFile);
const tempFolder = join(folder, 'temp');
const source = { path: writeVersion(folder, 1), name: 'Vale' };
const asked = { source, outFile, tempFolder };

it('a large file, and no other, is taken in by a program of its own, where there is a Node to start', async () => {
  const large = write('large.osm.pbf', '');
  // a hole: it takes no room
  truncateSync(large, 200e6);
  const { electron: _, ...versions } = process.versions;
  expect(await wantsApart(large, versions)).toBe(true);
  expect(await wantsApart(source.path, versions)).toBe(false);
  expect(await wantsApart(join(folder, 'nowhere.osm.pbf'), versions)).toBe(false);
  expect(await wantsApart(large, { ...versions, electron: '45.5.0' })).toBe(false);
});

it('a program of its own makes the same part, byte for byte, tells how far it is, and refuses in the same words', async () => {
  const here = worked(await importPart(source, outFile, tempFolder, {}, runHere));
  const bytes = readFileSync(outFile);
  const shares: number[] = [];
  const apart = await importApart(asked, { onProgress: ({ share }) => shares.push(share) });
  expect(apart).toEqual({ ok: true, value: here });
  expect(readFileSync(outFile).equals(bytes)).toBe(true);
  expect(shares.at(-1)).toBe(1);
  const absent = { path: join(folder, 'nowhere.osm.pbf'), name: 'Nowhere' };
  expect(await importApart({ ...asked, source: absent }, {})).toEqual(
    await importPart(absent, outFile, tempFolder, {}, runHere),
  );
});

it('a program that is killed while it takes a map in is told of, and leaves nothing', async () => {
  const dies = `data:text/javascript,process.on('message',()=>process.kill(process.pid,'SIGKILL'))`;
  const killed = await importApart(asked, {}, { ...process.env, NODE_OPTIONS: `--import ${dies}` });
  expect(killed).toMatchObject({
    ok: false,
    error: {
      code: 'shelf.import-ended',
      message: expect.stringContaining('"Vale" ended before it was done (SIGKILL)'),
    },
  });
  expect([outFile, tempFolder].filter((path) => existsSync(path))).toEqual([]);
});

it('given up, it is ended and leaves nothing', async () => {
  const giveUp = new AbortController();
  const given = await importApart(asked, { signal: giveUp.signal, onProgress: () => giveUp.abort() });
  expect(given).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  expect([outFile, tempFolder].filter((path) => existsSync(path))).toEqual([]);
});
