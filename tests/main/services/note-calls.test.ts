import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fail, ok } from '../../../geo/result.ts';
import type { Engine } from '../../../main/services/engine/engine.ts';
import { openLibrary } from '../../../main/services/library/open-library.ts';
import { noteCalls } from '../../../main/services/note-calls.ts';
import { worked } from '../../support/scratch-files.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'notes-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const hooks = { signal: new AbortController().signal, onProgress: () => {} };
const ROAD = { osm: { type: 'way' as const, id: 7 }, road: { name: 'Mill Lane' } };
/** An engine whose open map has one road, or none. */
const engine = (map: 'road' | 'none'): Engine => ({
  ask: async (name) =>
    (name === 'roadAt' && map === 'road' ? ok(ROAD) : fail('no-map', 'No map is open.')) as never,
  warm: () => {},
  close: async () => {},
});
const FIELDS = { at: { lat: 52, lon: -0.7 }, say: 'Low arch', heightM: 3.1 };

async function open(map: 'road' | 'none' = 'road', folder = 'yard') {
  const options = { folder: join(home, folder), dataFolder: home, now: () => new Date(0) };
  const library = await openLibrary(options);
  return { library, calls: noteCalls({ engine: engine(map), stores: { library } }) };
}

describe('the window’s local notes', () => {
  it('are kept on the road they were made on, and without a map as they are', async () => {
    const { calls } = await open();
    const kept = worked(await calls.saveNote({ fields: FIELDS }, hooks));
    expect(kept.notes).toMatchObject([{ fields: { ...FIELDS, ...ROAD }, others: [] }]);
    const without = await open('none', 'other');
    const plain = worked(await without.calls.saveNote({ fields: FIELDS }, hooks));
    expect(plain.notes[0]?.fields).toEqual(FIELDS);
  });

  it('are changed and taken away; a change made elsewhere meanwhile is shown beside', async () => {
    const { calls, library } = await open();
    const [note] = worked(await calls.saveNote({ fields: FIELDS }, hooks)).notes;
    const { id, heads: over } = note ?? { id: '', heads: [] };
    worked(await library.put({ kind: 'note', id, body: { ...FIELDS, heightM: 3 }, over }));
    const changed = worked(await calls.saveNote({ id, over, fields: { ...FIELDS, heightM: 3.2 } }, hooks));
    const all = changed.notes.flatMap(({ fields, others }) => [fields, ...others]);
    expect(all.map(({ heightM }) => heightM).sort()).toEqual([3, 3.2]);
    const [both] = changed.notes;
    expect(worked(await calls.removeNote({ id, over: both?.heads ?? [] }, hooks)).notes).toEqual([]);
  });

  it('go to another firm and come in there once, however often the file is opened', async () => {
    const { calls } = await open();
    worked(await calls.saveNote({ fields: FIELDS }, hooks));
    const { text } = worked(await calls.exportNotes({ as: 'geojson' }, hooks));
    const other = await open('none', 'other');
    const first = worked(await other.calls.importNotes({ name: 'notes.geojson', text }, hooks));
    expect(first.notes).toMatchObject([{ fields: { ...FIELDS, ...ROAD } }]);
    expect(first.say).toEqual(['One note taken in.']);
    const again = worked(await other.calls.importNotes({ name: 'notes.geojson', text }, hooks));
    expect(again.notes).toEqual(first.notes);
    expect(again.say).toEqual(['0 notes taken in.', 'One note was here already.']);
    const bad = await other.calls.importNotes({ name: 'notes.geojson', text: 'x' }, hooks);
    expect(bad.ok ? '' : bad.error.message).toContain('not JSON');
  });
});
