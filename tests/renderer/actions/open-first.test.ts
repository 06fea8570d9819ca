import { beforeEach, describe, expect, it } from 'vitest';
import { fail, ok } from '../../../geo/result.ts';
import type { Description, Sample } from '../../../main/contract/description.ts';
import type { AddedFile } from '../../../main/contract/source.ts';
import { workBegun } from '../../../renderer/actions/long-work.ts';
import { openFirst } from '../../../renderer/actions/open-first.ts';
import { setHost } from '../../../renderer/host/ask.ts';
import type { Client } from '../../../renderer/host/client.ts';
import { notice } from '../../../renderer/state/happening.ts';
import { description } from '../../../renderer/state/kept.ts';
import { openedDrive, openedMap } from '../../../renderer/state/opened.ts';
import { takeFiles } from '../../../renderer/take/take-files.ts';

const LAST = { kind: 'recent', id: 'last' } as const;
const LAST_MAP = { kind: 'recent', id: 'last-map' } as const;
const CHOSEN = { kind: 'upload', token: 'chosen' } as const;
const SAMPLE = { map: 'district', defaultDrive: 'round' } as unknown as Sample;
const WANTED = { map: { source: LAST_MAP }, drive: { source: LAST } };

let chosen: AddedFile;
let refused: boolean;
/** what opens only when it is let */
let held: Promise<void>;
let lastGone: boolean;

beforeEach(() => {
  chosen = { use: 'drive', name: 'line.gpx', source: CHOSEN, bytes: 1 } as unknown as AddedFile;
  refused = false;
  lastGone = false;
  held = Promise.resolve();
  const call = async (name: string, request: Record<string, unknown>, options?: { signal?: AbortSignal }) => {
    if (name === 'describe') return ok({ recents: [], shelfMaps: 0 });
    await held;
    if (options?.signal?.aborted) return fail('cancelled', 'Cancelled.');
    if (name === 'openMap') return ok({ name: 'map' });
    if (lastGone && request['source'] === LAST) return fail('missing', 'The last drive has gone.');
    return ok({ driveId: 'd', taken: 1, tracks: [{}], lengthM: 1, match: { offMapM: 0 } });
  };
  const addFile = async () => (refused ? fail('no-drive', 'The file holds no drive.') : ok(chosen));
  setHost({ call, addFile } as unknown as Client);
  description.value = { recents: [], shelfMaps: 0 } as unknown as Description;
  for (const each of [openedMap, openedDrive, notice]) each.value = undefined;
});

const choose = () => takeFiles([new File(['<gpx version="1.1"/>'], 'line.gpx')]);

const begin = (begunBefore: number) => openFirst({ wanted: WANTED, sample: SAMPLE, begunBefore });
const shown = () => ({ map: openedMap.value?.source, drive: openedDrive.value?.source });

describe('the window opens what it was left with', () => {
  it('where nothing else was chosen', async () => {
    expect(await begin(workBegun())).toBe(false);
    expect(shown()).toEqual({ map: LAST_MAP, drive: LAST });
  });

  it('but not over a drive that was chosen before it came to that', async () => {
    const before = workBegun();
    const choosing = choose();
    expect(await begin(before)).toBe(true);
    await choosing;
    expect(shown().drive).toEqual(CHOSEN);
    expect(notice.value).toBeUndefined();
  });

  it('nor over one chosen while it opens', async () => {
    let letGo = () => {};
    held = new Promise((resolve) => {
      letGo = resolve;
    });
    const beginning = begin(workBegun());
    const choosing = choose();
    letGo();
    await Promise.all([beginning, choosing]);
    expect(shown().drive).toEqual(CHOSEN);
  });

  it('nor shows the sample for a last drive that has gone, where another was chosen', async () => {
    lastGone = true;
    const before = workBegun();
    const choosing = choose();
    await Promise.all([begin(before), choosing]);
    expect(shown().drive).toEqual(CHOSEN);
    await begin(workBegun());
    expect(shown().drive).toEqual(CHOSEN);
  });

  it('after a chosen file that could not be read, which stays said', async () => {
    refused = true;
    const before = workBegun();
    const choosing = choose();
    await Promise.all([begin(before), choosing]);
    expect(shown()).toEqual({ map: LAST_MAP, drive: LAST });
    expect(notice.value?.say).toContain('holds no drive');
  });

  it('on a map that was chosen', async () => {
    chosen = { ...chosen, use: 'map' };
    const before = workBegun();
    const choosing = choose();
    await Promise.all([begin(before), choosing]);
    expect(shown()).toEqual({ map: CHOSEN, drive: LAST });
  });
});
