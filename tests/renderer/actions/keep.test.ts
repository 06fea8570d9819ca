import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fail, ok } from '../../../geo/result.ts';
import { DEFAULT_SETTINGS } from '../../../main/contract/default-settings.ts';
import type { Description } from '../../../main/contract/description.ts';
import { saveSettings, saveVehicles } from '../../../renderer/actions/keep.ts';
import { setHost } from '../../../renderer/host/ask.ts';
import type { Client } from '../../../renderer/host/client.ts';
import { saveNow, saveSoon } from '../../../renderer/load/state/save-soon.ts';
import { notice } from '../../../renderer/state/happening.ts';
import { description, settings, vehicles } from '../../../renderer/state/kept.ts';
import { loads } from '../../../renderer/state/loads.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';

type Answer = ReturnType<typeof ok> | ReturnType<typeof fail>;
let asked: { name: string; request: Record<string, unknown> }[];
let answer: (name: string, request: Record<string, unknown>) => Answer | Promise<Answer>;

beforeEach(() => {
  asked = [];
  const call = async (name: string, request: object) => {
    const found = { name, request: request as Record<string, unknown> };
    asked.push(found);
    return answer(name, found.request);
  };
  setHost({ call, addFile: call } as unknown as Client);
  // what tests before left waiting to be kept goes first
  answer = () => ok({ items: [], say: [] });
  saveNow();
  asked = [];
  description.value = { settings: DEFAULT_SETTINGS, loads: [], recents: [] } as unknown as Description;
  settings.value = DEFAULT_SETTINGS;
  vehicles.value = [];
  loads.value = {};
  notice.value = undefined;
});
afterEach(() => {
  vi.useRealTimers();
});

const NIGHT = { ...DEFAULT_SETTINGS, palette: 'night' } as const;
const FULL = fail('not-saved', 'The disk is full.');
const keptAsSent = (_: string, { settings }: Record<string, unknown>) => ok({ settings, say: [] });

describe('a choice in the settings', () => {
  it('that cannot be kept still holds, is said not to be kept, and can be tried again', async () => {
    answer = () => FULL;
    await saveSettings(NIGHT);
    expect(settings.value).toEqual(NIGHT);
    expect(notice.value).toMatchObject({
      kind: 'error',
      say: expect.stringContaining('is not kept. The disk'),
    });
    answer = keptAsSent;
    notice.value?.again?.();
    await vi.waitFor(() => expect(asked).toHaveLength(2));
    expect(asked[1]?.request).toEqual({ settings: NIGHT, known: DEFAULT_SETTINGS });
  });

  it('is sent with what it was made from, and what another window chose comes back beside it', async () => {
    answer = () => ok({ settings: { ...NIGHT, country: 'FR' }, say: ['The colours had been changed too.'] });
    await saveSettings(NIGHT);
    expect(settings.value).toEqual({ ...NIGHT, country: 'FR' });
    expect(notice.value).toEqual({ kind: 'note', say: 'The colours had been changed too.' });
    answer = keptAsSent;
    await saveSettings({ ...settings.value, units: 'both' });
    expect(asked[1]?.request['known']).toEqual({ ...NIGHT, country: 'FR' });
  });

  it('made while another is being written is not taken back by its answer', async () => {
    answer = async (_, { settings: sent }) => {
      if (asked.length === 1) void saveSettings({ ...settings.peek(), units: 'both' });
      return ok({ settings: { ...(sent as typeof NIGHT), country: 'FR' }, say: [] });
    };
    await saveSettings(NIGHT);
    await vi.waitFor(() => expect(asked).toHaveLength(2));
    expect(asked[1]?.request).toEqual({
      settings: { ...NIGHT, country: 'FR', units: 'both' },
      known: { ...NIGHT, country: 'FR' },
    });
  });
});

describe('a change of the fleet', () => {
  const van = (id: string) => ({ id, card: { ...COACH_BUILT, name: id } });

  it('waits for the one before, and is made from what that left', async () => {
    answer = (_, request) => ok({ vehicles: request['vehicles'], say: [] });
    await Promise.all([
      saveVehicles((fleet) => [...fleet, van('a')]),
      saveVehicles((fleet) => [...fleet, van('b')]),
    ]);
    expect(asked[1]?.request).toEqual({ vehicles: [van('a'), van('b')], known: [van('a')] });
    expect(vehicles.value).toHaveLength(2);
  });

  it('that cannot be kept leaves the window as it was, with the reason', async () => {
    answer = () => FULL;
    expect(await saveVehicles(() => [van('a')])).toEqual({ problem: 'The disk is full.' });
    expect(vehicles.value).toEqual([]);
  });
});

describe('what is aboard', () => {
  const KAYAK = [{ name: 'Kayak', massKg: 30, xM: 5 }];
  const asList = (items: readonly unknown[]) => ({ format: 'lanegauge.load', version: 1, items });
  const asSent = (_: string, { load }: Record<string, unknown>) =>
    ok({ items: (load as { items: unknown }).items, say: [] });

  it('stays on screen where it cannot be kept, and goes with the page at the latest', async () => {
    vi.useFakeTimers();
    answer = () => FULL;
    loads.value = { heron: KAYAK };
    saveSoon('heron');
    await vi.advanceTimersByTimeAsync(500);
    expect(loads.value).toEqual({ heron: KAYAK });
    expect(notice.value?.say).toContain('is not kept');
    answer = asSent;
    saveNow();
    await vi.advanceTimersByTimeAsync(0);
    expect(asked[1]?.request).toEqual({ vehicleId: 'heron', load: asList(KAYAK), known: asList([]) });
    saveNow();
    expect(asked).toHaveLength(2);
  });

  it('is sent with what this window knows to be kept', async () => {
    vi.useFakeTimers();
    answer = asSent;
    const more = [...KAYAK, { name: 'Tent', massKg: 9, xM: 4 }];
    for (const items of [KAYAK, more]) {
      loads.value = { heron: items };
      saveSoon('heron');
      await vi.advanceTimersByTimeAsync(500);
    }
    expect(asked.map(({ request }) => request['known'])).toEqual([asList([]), asList(KAYAK)]);
  });
});
