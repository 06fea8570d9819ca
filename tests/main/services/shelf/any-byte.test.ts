import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Result } from '../../../../geo/result.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { roadsOnShelf } from '../../../../main/services/shelf/roads-on-shelf.ts';
import { mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { seeded } from '../../../support/random-drives.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { DRIVE, sayOf, writeVersion } from '../../../support/shelf/two-maps.ts';

let shelf: string;
let folder: string;
let whole: Result<Roads>;
beforeAll(async () => {
  shelf = mkdtempSync(join(tmpdir(), 'any-byte-'));
  const path = writeVersion(shelf, 3, 3);
  worked(
    await importMap(
      { shelf, importPart: importByHand, now: () => new Date('2027-06-12T09:30:00Z') },
      { name: 'Vale', files: [{ path, name: 'vale', stays: false }], origin: { by: 'file' } },
      { signal: new AbortController().signal, onProgress: () => {} },
    ),
  );
  folder = mapFolder(shelf, 'Vale');
  whole = await roadsOnShelf(shelf, DRIVE);
});
afterAll(() => rmSync(shelf, { recursive: true, force: true }));

/** All that a check reads of a map, its index apart, whose functions are others each time. */
function dataOf({ index: _, ...data }: Roads): string {
  return JSON.stringify([
    data,
    [...data.nodes.lat, ...data.nodes.lon],
    [...data.ways.id, ...data.ways.refs],
    [...data.nodes.tags],
  ]);
}

/** Nothing is told of any damage, and yet something else is served. */
async function isSilentlyOther(): Promise<boolean> {
  const read = await roadsOnShelf(shelf, DRIVE);
  if (!read.ok) return !/damaged/.test(read.error.message);
  if (worked(whole) && dataOf(read.value) === dataOf(worked(whole))) return false;
  // a report begins with what is incomplete: the drive is unknown there
  return !(read.value.incomplete ?? []).some((each) => each.includes('"Vale" is damaged'));
}

/** Each byte changed in turn, by a bit of chance; the file is put back. */
async function changeEach(name: string, bytes = readFileSync(join(folder, name))): Promise<number[]> {
  const random = seeded(bytes.length);
  const path = join(folder, name);
  const silent: number[] = [];
  for (let at = 0; at < bytes.length; at++) {
    const changed = Buffer.from(bytes);
    changed[at] = changed[at]! ^ (1 << Math.floor(random() * 8));
    writeFileSync(path, changed);
    if (await isSilentlyOther()) silent.push(at);
  }
  writeFileSync(path, bytes);
  return silent;
}

describe('with any one byte changed a map gives the same roads or is told as damaged:', () => {
  it('of a part', async () => {
    const name = readdirSync(folder).find((each) => each.startsWith('part-')) ?? '';
    expect(await changeEach(name)).toEqual([]);
  });

  it('of either copy of its manifest, which the other stands in for', async () => {
    for (const name of ['map-1.json', 'map-2.json']) {
      const path = join(folder, name);
      const text = readFileSync(path);
      expect(await changeEach(name)).toEqual([]);
      expect(readFileSync(path).equals(text)).toBe(true);
    }
  });

  it('of its manifest where there is but one copy', async () => {
    const other = join(folder, 'map-2.json');
    const text = readFileSync(other);
    rmSync(other);
    expect(await changeEach('map-1.json')).toEqual([]);
    writeFileSync(other, text);
  });

  it('and cut short at any place', async () => {
    const name = readdirSync(folder).find((each) => each.startsWith('part-')) ?? '';
    const path = join(folder, name);
    const bytes = readFileSync(path);
    const silent: number[] = [];
    for (let length = 0; length < bytes.length; length++) {
      writeFileSync(path, bytes.subarray(0, length));
      if (await isSilentlyOther()) silent.push(length);
    }
    writeFileSync(path, bytes);
    expect(silent).toEqual([]);
    expect(sayOf(await roadsOnShelf(shelf, DRIVE))).toBe(sayOf(whole));
  });
});
