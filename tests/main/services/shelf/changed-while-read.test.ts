import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { ok } from '../../../../geo/result.ts';
import { openShelf } from '../../../../main/services/shelf/open-shelf.ts';
import { roadsFromShelf } from '../../../../main/services/shelf/roads-from-shelf.ts';
import { mapFolder } from '../../../../main/services/shelf/shelf-folder.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { sweepShelf } from '../../../../main/services/shelf/sweep-shelf.ts';
import { worked } from '../../../support/scratch-files.ts';
import { importByHand } from '../../../support/shelf/import-by-hand.ts';
import { DRIVE, sayOf, servedBy, writeVersion } from '../../../support/shelf/two-maps.ts';

/** A check looks up as often at least: after each tile, and between its steps. */
const LOOKS = 12;

let shelf: string;
let before: string;
beforeEach(async () => {
  shelf = mkdtempSync(join(tmpdir(), 'changed-'));
  await put(1);
  before = await servedBy(shelf);
});
afterEach(() => rmSync(shelf, { recursive: true, force: true }));

async function put(version: number): Promise<void> {
  const path = writeVersion(shelf, version);
  worked(
    await importMap(
      { shelf, importPart: importByHand, now: () => new Date('2027-06-12T09:30:00Z') },
      { name: 'Vale', files: [{ path, name: 'vale', stays: true }], origin: { by: 'file' } },
      { signal: new AbortController().signal, onProgress: () => {} },
    ),
  );
}

function partFiles(): string[] {
  const folder = mapFolder(shelf, 'Vale');
  return readdirSync(folder)
    .filter((name) => name.startsWith('part-'))
    .map((name) => join(folder, name));
}

/** A check that looks up once, and finds this done. @param at how many looks later */
async function checkWhile(at: number, done: () => Promise<void>): Promise<string> {
  const open = await openShelf(shelf);
  let looks = 0;
  try {
    const { roads } = await roadsFromShelf(open, DRIVE, async () => {
      if (looks++ === at) await done();
    });
    return sayOf(ok(roads));
  } finally {
    open.close();
  }
}

it('a check goes on with the map it began with while another program puts a new one in its place', async () => {
  const said = await checkWhile(1, async () => {
    await put(2);
    await sweepShelf(shelf, Date.now());
  });
  expect(said).toBe(before);
  expect(partFiles()).toHaveLength(1);
  expect(await servedBy(shelf)).toContain('Version 2"');
});

it('a part that is written over while a check reads is the old one or told as damaged, never a mixture', async () => {
  const [path = ''] = partFiles();
  const old = readFileSync(path);
  await put(2);
  const other = readFileSync(partFiles().find((each) => each !== path) ?? '');
  await put(1);
  const [, , current = ''] = partFiles();
  let told = 0;
  for (let at = 0; at < LOOKS; at++) {
    const said = await checkWhile(at, async () => writeFileSync(current, other));
    if (said !== before) {
      told++;
      expect(said).toContain('"Vale\\" is damaged');
      expect(said).not.toContain('Version 2');
    }
    writeFileSync(current, old);
    expect(await servedBy(shelf)).toBe(before);
  }
  expect(told).toBeGreaterThan(0);
});

it('a part whose disk is taken out while a check reads is told as damaged', async () => {
  const [path = ''] = partFiles();
  const bytes = readFileSync(path);
  let told = 0;
  for (let at = 0; at < LOOKS; at++) {
    const said = await checkWhile(at, async () => truncateSync(path, 0));
    if (said !== before) {
      told++;
      expect(said).toContain('"Vale\\" is damaged');
    }
    writeFileSync(path, bytes);
  }
  expect(told).toBeGreaterThan(0);
});
