import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { importPart } from '../../../../main/services/shelf/import/import-part.ts';
import { runHere } from '../../../../main/services/shelf/import/runner.ts';
import { listMaps } from '../../../../main/services/shelf/list-maps.ts';
import type { ImportPart } from '../../../../main/services/shelf/put-on-shelf.ts';
import { findMaps, mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importMap, removeByName, verifyMaps } from '../../../../main/services/shelf/shelf-work.ts';
import { type Failure, failFrom } from '../../../support/failing-disk.ts';
import { worked } from '../../../support/scratch-files.ts';
import { leftAfterSweep } from '../../../support/shelf/leftovers.ts';
import { servedBy, writeVersion } from '../../../support/shelf/two-maps.ts';

const HOOKS = { signal: new AbortController().signal, onProgress: () => {} };

/** In this thread, where its operations can be made to fail. */
const here: ImportPart = (source, outFile, tempFolder, { signal }) =>
  importPart(source, outFile, tempFolder, { signal }, runHere);

function newShelf() {
  const home = mkdtempSync(join(tmpdir(), 'failing-'));
  onTestFinished(() => rmSync(home, { recursive: true, force: true }));
  const shelf = join(home, 'shelf');
  const tools = { shelf, importPart: here, now: () => new Date('2027-06-12T09:30:00Z') };
  return {
    shelf,
    tools,
    source: (version: number) => writeVersion(home, version, 4),
    put: (path: string) =>
      importMap(
        tools,
        { name: 'Vale', files: [{ path, name: 'version', stays: true }], origin: { by: 'file' } },
        HOOKS,
      ),
  };
}

/** Fails one operation later each time, until nothing fails any more. */
async function failEach(failure: Failure, shelf: ReturnType<typeof newShelf>) {
  worked(await shelf.put(shelf.source(0)));
  let before = await servedBy(shelf.shelf);
  for (let number = 0; ; number++) {
    const source = shelf.source(number + 1);
    const disk = await failFrom(number, failure);
    const put = await shelf.put(source).finally(disk.restore);
    const after = await servedBy(shelf.shelf);
    const isNew = after.includes(`Version ${number + 1}"`);
    if (put.ok) expect(isNew).toBe(true);
    else expect(put.error.message).toMatch(/^.{20,400}\.$/);
    if (!isNew) expect(after).toBe(before);
    expect(await listMaps(shelf.shelf)).toMatchObject([{ name: 'Vale', state: 'ready' }]);
    if (disk.count() <= number) return number;
    await onEnd(shelf, failure);
    before = after;
  }
}

/** A full disk leaves nothing behind. A program that has ended holds no turn; this one, which plays it, still runs. */
async function onEnd({ shelf }: ReturnType<typeof newShelf>, failure: Failure) {
  if (failure === 'full') expect(await leftAfterSweep(shelf)).toEqual([]);
  else rmSync(join(mapFolder(shelf, 'Vale'), 'turns'), { recursive: true, force: true });
}

it('a disk that is full at any moment keeps the old map, and says so', async () => {
  const shelf = newShelf();
  expect(await failEach('full', shelf)).toBeGreaterThan(20);
  expect(await leftAfterSweep(shelf.shelf)).toEqual([]);
});

it('an import that ends between any two steps keeps the old map, and the next one works', async () => {
  expect(await failEach('ended', newShelf())).toBeGreaterThan(25);
});

it.each<Failure>(['full', 'ended'])(
  'a map that is taken off while the disk fails (%s) is there whole, or gone',
  async (failure) => {
    const { shelf, source, put } = newShelf();
    for (let from = 0; ; from++) {
      worked(await put(source(0)));
      const before = await servedBy(shelf);
      const disk = await failFrom(from, failure);
      const removed = await removeByName(shelf, 'Vale').finally(disk.restore);
      const left = await listMaps(shelf);
      if (removed.ok) expect(left).toEqual([]);
      else expect(removed.error.message).toMatch(/^.{20,400}\.$/u);
      if (left.length > 0) expect([left[0]?.state, await servedBy(shelf)]).toEqual(['ready', before]);
      rmSync(join(mapFolder(shelf, 'Vale'), 'turns'), { recursive: true, force: true });
      if (disk.count() <= from) break;
    }
  },
);

it('a map that is mended on a disk that is full is told as damaged until it is sound', async () => {
  const { shelf, source, put, tools } = newShelf();
  worked(await put(source(0)));
  const sound = await servedBy(shelf);
  const folder = mapFolder(shelf, 'Vale');
  for (let from = 0; ; from += 3) {
    const part = join(folder, readdirSync(folder).find((name) => name.startsWith('part-')) ?? '');
    const bytes = readFileSync(part);
    bytes[40] = bytes[40]! ^ 1;
    writeFileSync(part, bytes);
    const disk = await failFrom(from, 'full');
    const [mended] = worked(
      await verifyMaps(tools, await findMaps(shelf), { repair: true, note: true }, HOOKS).finally(
        disk.restore,
      ),
    );
    const served = await servedBy(shelf);
    if (mended?.repair?.done === true) expect(served).toBe(sound);
    else if (served !== sound) expect(served).toContain('damaged');
    if (disk.count() <= from) break;
    worked(await verifyMaps(tools, await findMaps(shelf), { repair: true, note: true }, HOOKS));
    expect(await servedBy(shelf)).toBe(sound);
  }
});

it('a folder that nothing may be written to is read all the same, and keeps its map', async () => {
  const shelf = newShelf();
  worked(await shelf.put(shelf.source(0)));
  const before = await servedBy(shelf.shelf);
  const source = shelf.source(1);
  const disk = await failFrom(0, 'ended');
  try {
    expect(await shelf.put(source)).toMatchObject({ ok: false, error: { code: 'shelf.unwritable' } });
    expect(await servedBy(shelf.shelf)).toBe(before);
  } finally {
    disk.restore();
  }
});
