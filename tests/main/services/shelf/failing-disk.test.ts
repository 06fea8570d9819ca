import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { importPart } from '../../../../main/services/shelf/import/import-part.ts';
import { runHere } from '../../../../main/services/shelf/import/runner.ts';
import { listMaps } from '../../../../main/services/shelf/list-maps.ts';
import type { ImportPart } from '../../../../main/services/shelf/put-on-shelf.ts';
import { mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { type Failure, failFrom } from '../../../support/failing-disk.ts';
import { worked } from '../../../support/scratch-files.ts';
import { leftAfterSweep } from '../../../support/shelf/leftovers.ts';
import { servedBy, writeVersion } from '../../../support/shelf/two-maps.ts';

/** In this thread, where its operations can be made to fail. */
const here: ImportPart = (source, outFile, tempFolder, { signal }) =>
  importPart(source, outFile, tempFolder, { signal }, runHere);

function newShelf() {
  const home = mkdtempSync(join(tmpdir(), 'failing-'));
  onTestFinished(() => rmSync(home, { recursive: true, force: true }));
  const shelf = join(home, 'shelf');
  return {
    shelf,
    source: (version: number) => writeVersion(home, version, 4),
    put: (path: string) =>
      importMap(
        { shelf, importPart: here, now: () => new Date('2027-06-12T09:30:00Z') },
        { name: 'Vale', files: [{ path, name: 'version', stays: true }], origin: { by: 'file' } },
        { signal: new AbortController().signal, onProgress: () => {} },
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
