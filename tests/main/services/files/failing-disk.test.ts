import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../../main/contract/default-settings.ts';
import { writeNew } from '../../../../main/services/files/write-new.ts';
import { findHanded, keepHanded, readHanded } from '../../../../main/services/handed/handed-sheets.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { openSettings } from '../../../../main/services/settings/settings-store.ts';
import { type Failure, failFrom } from '../../../support/failing-disk.ts';
import { handedOver } from '../../../support/hand-over/handed-over.ts';
import { worked } from '../../../support/scratch-files.ts';
import { road } from '../../../support/way-round/ask-ways.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'lanegauge-failing-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));
const now = () => new Date('2026-05-01T09:00:00Z');

/** Fails one operation later each time, until nothing fails any more. */
async function failEach<T>(
  failure: Failure,
  act: () => Promise<T>,
  hold: (done: T) => unknown,
): Promise<number> {
  for (let from = 0; ; from++) {
    const disk = await failFrom(from, failure);
    const done = await act().finally(disk.restore);
    await hold(done);
    if (disk.count() <= from) return from;
  }
}

describe.each<Failure>(['full', 'ended'])('on a disk that fails (%s) from any operation on', (failure) => {
  it('settings are those before or those chosen, and a refusal is a sentence', async () => {
    let [loadMarginKg, before] = [0, DEFAULT_SETTINGS.loadMarginKg];
    const steps = await failEach(
      failure,
      async () => (await openSettings(home, now)).save({ ...DEFAULT_SETTINGS, loadMarginKg: ++loadMarginKg }),
      async (saved) => {
        // a program that has ended holds no turn; this one, which plays it, still runs
        if (failure === 'ended') rmSync(join(home, 'turns'), { recursive: true, force: true });
        const store = await openSettings(home, now);
        expect(store.notices()).toEqual([]);
        const kept = store.current().loadMarginKg;
        if (saved.ok) expect(kept).toBe(loadMarginKg);
        else {
          expect(saved.error.message).toMatch(/^The settings file could not be saved in .*unchanged\.$/u);
          expect([before, loadMarginKg]).toContain(kept);
        }
        before = kept;
      },
    );
    expect(steps).toBeGreaterThan(5);
  });

  it('a sheet is kept whole, every file of it, or it is not there', async () => {
    const { facts } = handedOver([road(1, ['0,0', '5,0'])], [1]);
    let count = 0;
    const open = () => openLibrary({ folder: join(home, 'yard'), dataFolder: home, now });
    const steps = await failEach(
      failure,
      async () => {
        const number = `K7QM-4X${String(++count).padStart(2, '0')}`;
        const files = { 'sheet.html': `sheet ${count}`, 'report.json': `report ${count}` };
        return { number, kept: await keepHanded(await open(), { number, facts, files }) };
      },
      async ({ number, kept }) => {
        const library = await open();
        const found = findHanded(library, number);
        if (kept.ok) expect(found.ok).toBe(true);
        if (!found.ok) return;
        const files = worked(await readHanded(library, found.value));
        expect(Buffer.from(files['report.json']!).toString()).toBe(`report ${count}`);
      },
    );
    expect(steps).toBeGreaterThan(5);
  });

  it('an export is there whole, or nothing of it is under its name', async () => {
    let count = 0;
    await failEach(
      failure,
      () => writeNew(join(home, `out-${++count}`), { 'a.csv': 'all of a', 'b.json': 'all of b' }),
      (written) => {
        const folder = join(home, `out-${count}`);
        const names = readIfThere(folder).filter((name) => !name.startsWith('.'));
        for (const name of names) expect(readFileSync(join(folder, name), 'utf8')).toMatch(/^all of [ab]$/u);
        if (written.ok) expect(names).toEqual(['a.csv', 'b.json']);
        else if (failure === 'full') expect(names).toEqual([]);
      },
    );
  });
});

function readIfThere(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}
