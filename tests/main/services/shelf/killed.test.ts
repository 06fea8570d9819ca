import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { listMaps } from '../../../../main/services/shelf/list-maps.ts';
import { seeded } from '../../../support/random-drives.ts';
import { takeIn } from '../../../support/shelf/kill-program.ts';
import { leftAfterSweep } from '../../../support/shelf/leftovers.ts';
import { servedBy, writeVersion } from '../../../support/shelf/two-maps.ts';

/** Each costs the start of a program with its threads; fifty of each kind are killed by tests/bench/shelf/killed.ts. */
const KILLS = 3;

let home: string;
let shelf: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'killed-'));
  shelf = join(home, 'shelf');
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

it('a program killed while it takes a map in leaves the old map or the new one, and nothing half', async () => {
  const random = seeded(13);
  const begun = await takeIn(['import', shelf, 'Vale', writeVersion(home, 0)]);
  expect(begun).toMatchObject({ done: true, complaint: '' });
  let before = await servedBy(shelf);
  for (let version = 1; version <= KILLS; version++) {
    const words = ['import', shelf, 'Vale', writeVersion(home, version)];
    const killed = await takeIn(words, random() * 1.2 * begun.ms);
    expect(killed.complaint).toBe('');
    const after = await servedBy(shelf);
    const served = after === before ? 'old' : after.includes(`Version ${version}"`) ? 'new' : after;
    expect(served).toMatch(killed.done ? 'new' : /^(?:old|new)$/);
    expect(await listMaps(shelf)).toMatchObject([{ name: 'Vale', state: 'ready' }]);
    expect(await leftAfterSweep(shelf)).toEqual([]);
    expect(await servedBy(shelf)).toBe(after);
    before = after;
  }
  const last = await takeIn(['import', shelf, 'Vale', writeVersion(home, 9)]);
  expect(last).toMatchObject({ done: true, complaint: '' });
  expect(await servedBy(shelf)).toContain('Version 9"');
});

it('two programs that take in maps of one name leave one of them whole', async () => {
  const paths = [1, 2].map((version) => writeVersion(home, version));
  const both = await Promise.all(paths.map((path) => takeIn(['import', shelf, 'Vale', path])));
  expect(both).toMatchObject([
    { done: true, complaint: '' },
    { done: true, complaint: '' },
  ]);
  expect(await servedBy(shelf)).toMatch(/Version [12]"/);
  expect(await listMaps(shelf)).toHaveLength(1);
  expect(await leftAfterSweep(shelf)).toEqual([]);
});
