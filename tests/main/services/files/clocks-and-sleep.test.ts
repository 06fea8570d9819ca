import { mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../../main/contract/default-settings.ts';
import { OWN_MARK } from '../../../../main/services/files/owner-mark.ts';
import { replaceFile } from '../../../../main/services/files/replace-file.ts';
import { inTurn } from '../../../../main/services/files/take-turn.ts';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { openSettings } from '../../../../main/services/settings/settings-store.ts';
import { worked } from '../../../support/scratch-files.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lanegauge-clocks-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** By a clock that is right, was put forward by years, and was set back to where clocks begin. */
const CLOCKS = ['2026-05-01T09:00:00Z', '2038-01-19T04:00:00Z', '1970-01-01T00:00:00Z'];
const at = (iso: string) => () => new Date(iso);

describe('a clock that jumps', () => {
  it('loses no setting: what was chosen last holds', async () => {
    for (const [i, clock] of [...CLOCKS, ...CLOCKS].entries()) {
      const settings = await openSettings(folder, at(clock));
      expect(settings.notices()).toEqual([]);
      worked(await settings.save({ ...settings.current(), loadMarginKg: i }));
      expect((await openSettings(folder, at(CLOCKS[0]!))).current()).toEqual({
        ...DEFAULT_SETTINGS,
        loadMarginKg: i,
      });
    }
  });

  it('decides of no change which is the newer: that is told by what it was made from', async () => {
    for (const [i, clock] of [...CLOCKS, ...CLOCKS].entries()) {
      const library = await openLibrary({
        folder: join(folder, 'yard'),
        dataFolder: join(folder, `${i}`),
        now: at(clock),
      });
      worked(
        await library.put({
          kind: 'note',
          id: 'note-1',
          body: { at: { lat: 54, lon: 9 }, say: `Gate ${i}` },
        }),
      );
      expect(library.list('note').map(({ versions }) => versions.map(({ body }) => body.say))).toEqual([
        [`Gate ${i}`],
      ]);
      await library.sweep();
      expect(library.list('note')).toHaveLength(1);
    }
  });

  it.each([1970, 2038])('has nobody wait for a turn that seems to be of %i', async (year) => {
    worked(await inTurn(folder, async () => {}));
    // of a program that runs
    const turn = join(folder, 'turns', '2');
    writeFileSync(turn, OWN_MARK.replace(/\d+$/u, String(process.ppid)));
    utimesSync(turn, new Date(`${year}-02-01`), new Date(`${year}-02-01`));
    expect(await inTurn(folder, async () => 'done')).toEqual({ ok: true, value: 'done' });
  });
});

describe('a computer that sleeps while it writes', () => {
  it('and wakes when another program has taken the turn writes nothing over what that one wrote', async () => {
    const path = join(folder, 'n.json');
    const woken = inTurn(folder, async ({ isMine }) => {
      // meanwhile, to the others it was held for too long
      writeFileSync(join(folder, 'turns', '2'), OWN_MARK);
      writeFileSync(path, 'theirs');
      await replaceFile(path, 'ours', { mayStill: isMine });
    });
    await expect(woken).rejects.toThrow('another program has written meanwhile');
    expect(readFileSync(path, 'utf8')).toBe('theirs');
  });
});
