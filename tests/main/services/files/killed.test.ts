import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openSettings } from '../../../../main/services/settings/settings-store.ts';
import { fleetIn, loadsIn } from '../../../support/library/kept-in.ts';
import { COACH_BUILT } from '../../contract/cards.ts';

const ROOT = new URL('../../../../.build/main/services/', import.meta.url);
/** Each costs the start of a program, a quarter of a second: enough to hit every step of a save, and no more. */
const ROUNDS = 5;

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-killed-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** A program that changes vehicles, loads and settings without end, and says which once it is told they are kept. */
const WRITER = `
const [, folder, name, card, root] = process.argv;
const { openFleet } = await import(root + 'fleet/fleet-store.js');
const { openLoads } = await import(root + 'loads/loads-store.js');
const { openLibrary } = await import(root + 'library/open-library.js');
const now = () => new Date();
const library = await openLibrary({ folder: folder + '/library', dataFolder: folder, now });
const fleet = openFleet(library, []);
const loads = openLoads({ folder, library, first: [], nameOf: () => undefined });
const { openSettings } = await import(root + 'settings/settings-store.js');
const settings = await openSettings(folder, now);
const must = (saved) => { if (!saved.ok) throw new Error(saved.error.message); };
for (let revision = 1; ; revision++) {
  const id = name + '-' + (revision % 3);
  const vehicle = { id, card: { ...JSON.parse(card), notes: String(revision) } };
  const known = fleet.current();
  must(await fleet.save([...known.filter((each) => each.id !== id), vehicle], known));
  process.stdout.write('vehicle ' + id + ' ' + revision + '\\n');
  must(await loads.save(id, [{ name: String(revision), massKg: 1, xM: 1 }]));
  process.stdout.write('load ' + id + ' ' + revision + '\\n');
  must(await settings.save({ ...settings.current(), loadMarginKg: 1 + (revision % 100) }));
}`;

interface Writer {
  readonly child: ChildProcess;
  readonly said: () => string;
  readonly complaint: () => string;
}

function startWriter(name: string): Writer {
  const words = [folder, name, JSON.stringify(COACH_BUILT), ROOT.href];
  const child = spawn(process.execPath, ['--input-type=module', '-e', WRITER, ...words]);
  let said = '';
  let complaint = '';
  child.stdout?.on('data', (data) => {
    said += String(data);
  });
  child.stderr?.on('data', (data) => {
    complaint += String(data);
  });
  return { child, said: () => said, complaint: () => complaint };
}

/** What was acknowledged last, by vehicle. */
function lastSaid(writers: readonly Writer[], what: string): Map<string, number> {
  const lines = writers.flatMap(({ said }) => said().split('\n').slice(0, -1));
  const words = lines.map((line) => line.split(' ')).filter(([about]) => about === what);
  return new Map(words.map(([, id, revision]) => [id!, Number(revision)]));
}

describe('two programs that write and are killed, again and again', () => {
  it('have kept everything that they were told is kept', { timeout: 60_000 }, async () => {
    const random = randomFrom(20260501);
    const writers: Writer[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const two = [startWriter(`a${round}`), startWriter(`b${round}`)];
      writers.push(...two);
      await Promise.all(
        two.map(async ({ child, said, complaint }) => {
          await vi.waitFor(() => expect(`${said()}${complaint()}`).not.toBe(''), { timeout: 20_000 });
          await new Promise((resolve) => setTimeout(resolve, random() * 60));
          const gone = new Promise((resolve) => child.once('close', resolve));
          child.kill('SIGKILL');
          await gone;
        }),
      );
    }
    expect(writers.map(({ complaint }) => complaint()).join('')).toBe('');
    const now = () => new Date();
    const fleet = await fleetIn(folder, [], now);
    const loads = await loadsIn(folder, now, () => undefined);
    expect([...fleet.notices(), ...loads.notices()]).toEqual([]);
    // two programs chose it by turns: what is kept was chosen whole by one of them
    const settings = await openSettings(folder, now);
    expect([settings.notices(), settings.current().loadMarginKg > 0]).toEqual([[], true]);
    const vehicles = new Map(fleet.current().map(({ id, card }) => [id, Number(card.notes)]));
    const aboard = new Map(
      loads.current().map(({ vehicleId, items }) => [vehicleId, Number(items[0]?.name)]),
    );
    const said = lastSaid(writers, 'vehicle');
    expect(said.size).toBeGreaterThanOrEqual(2 * ROUNDS);
    // a save may have come to its end and its word not: never the other way round
    for (const [id, revision] of said) expect([id, vehicles.get(id)! >= revision]).toEqual([id, true]);
    for (const [id, revision] of lastSaid(writers, 'load'))
      expect([id, aboard.get(id)! >= revision]).toEqual([id, true]);
    // nor does the next program wait for the dead
    const saved = await fleet.save([], fleet.current());
    expect(saved.ok && saved.value.value).toEqual([]);
  });
});

function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
