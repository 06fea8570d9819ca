import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fail, ok } from '../../../geo/result.ts';
import { DEFAULT_SETTINGS } from '../../../main/contract/default-settings.ts';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { yardCalls } from '../../../main/services/yard-calls.ts';
import { worked } from '../../support/scratch-files.ts';
import { COACH_BUILT } from '../contract/cards.ts';

const DRIVES = join(import.meta.dirname, '../../../sample-routes/drives');
const now = () => new Date('2027-06-12T09:30:00Z');
const hooks = { signal: new AbortController().signal, onProgress: () => {} };

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'yard-calls-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function open() {
  const library = await openLibrary({ folder: join(home, 'library'), dataFolder: home, now });
  const calls = yardCalls({
    stores: {
      library,
      settings: { current: () => DEFAULT_SETTINGS },
      fleet: { current: () => [{ id: 'heron', card: COACH_BUILT }] },
    },
    sources: {
      find: (source) =>
        source.kind === 'sample'
          ? ok({ path: join(DRIVES, `${source.id}.gpx`), name: `${source.id}.gpx` })
          : fail('no-such-file', 'It has gone.'),
    },
    dataFolder: home,
    now,
  });
  const add = async (id: string) =>
    worked(await calls.addToYard({ source: { kind: 'sample', id } }, hooks)).drives[0]!;
  return { library, calls, add };
}

describe('the window’s yard', () => {
  it('takes a drive in, gives it a name and a leave time, and takes them away again', async () => {
    const { calls, add } = await open();
    const { id, was } = await add('barred');
    expect(was).toBe('new');
    expect((await add('barred')).was).toBe('there');
    const { vehicles, drives } = worked(await calls.yard({}, hooks));
    // what the fleet begins with, before it was changed
    expect(vehicles).toMatchObject([{ id: 'vehicle-heron', vehicleId: 'heron' }]);
    const [drive] = drives;
    const over = drive!.heads;
    const named = worked(
      await calls.changeDrive({ id, over, name: 'Coast', leaveAt: '2027-06-12T09:30' }, hooks),
    );
    expect(named.drives).toMatchObject([{ id, name: 'Coast', leaveAt: '2027-06-12T09:30' }]);
    const heads = named.drives[0]!.heads;
    const plain = worked(await calls.changeDrive({ id, over: heads, name: null }, hooks));
    expect(plain.drives).toMatchObject([{ name: drive!.name, leaveAt: '2027-06-12T09:30' }]);
  });

  it('shows both versions of what was changed in two places, until one is chosen', async () => {
    const { calls, add } = await open();
    const { id } = await add('barred');
    const { heads: over } = worked(await calls.yard({}, hooks)).drives[0]!;
    await calls.changeDrive({ id, over, name: 'Here' }, hooks);
    const both = worked(await calls.changeDrive({ id, over, name: 'There' }, hooks));
    expect(both.apart).toMatchObject([{ id, kind: 'drive' }]);
    const versions = both.apart[0]!.versions;
    expect(versions.map(({ says }) => says).sort()).toEqual([['name: Here'], ['name: There']]);
    const { version } = versions.find(({ says }) => says[0] === 'name: There')!;
    const chosen = worked(await calls.chooseVersion({ id, version }, hooks));
    expect(chosen).toMatchObject({ drives: [{ name: 'There' }], apart: [] });
  });

  it('puts a drive into the bin under its name, and takes it out', async () => {
    const { calls, add } = await open();
    const { id, name } = await add('clear');
    const { heads: over } = worked(await calls.yard({}, hooks)).drives[0]!;
    const removed = worked(await calls.removeDrive({ id, over }, hooks));
    expect(removed).toMatchObject({
      drives: [],
      bin: [{ id, kind: 'drive', name, deleted: now().toISOString() }],
    });
    const back = worked(await calls.restoreItem({ id }, hooks));
    expect(back).toMatchObject({ drives: [{ id, name }], bin: [] });
  });

  it('names what cannot be taken in, and says that without a map nothing is checked', async () => {
    const { calls } = await open();
    const none = await calls.addToYard({ source: { kind: 'upload', token: 'abcdefgh' } }, hooks);
    expect(none).toMatchObject({ ok: false, error: { code: 'no-such-file' } });
    const judged = await calls.judgeYard({ which: 'stale' }, hooks);
    expect(judged).toMatchObject({ ok: false, error: { code: 'shelf.empty' } });
    expect(await calls.acceptChanges({ pairs: [], by: 'AB', on: '2027-06-12' }, hooks)).toEqual(ok({}));
  });
});
