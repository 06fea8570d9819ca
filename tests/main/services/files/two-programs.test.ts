import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../../main/contract/default-settings.ts';
import { FLEET_MAX, LOADS_MAX } from '../../../../main/contract/limits.ts';
import { openRecents } from '../../../../main/services/recents/recents-store.ts';
import { openSettings } from '../../../../main/services/settings/settings-store.ts';
import { fleetIn, loadsIn } from '../../../support/library/kept-in.ts';
import { COACH_BUILT } from '../../contract/cards.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-two-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

const now = () => new Date('2026-05-01T09:00:00Z');
const vehicle = (id: string, heightM = 3.05) => ({
  id,
  card: { ...COACH_BUILT, name: `Van ${id}`, heightM },
});
const valueIn = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('two programs with one fleet', () => {
  const FIRST = [vehicle('a'), vehicle('b')];
  const open = () => fleetIn(folder, FIRST, now);
  const ids = async () => (await open()).current().map(({ id }) => id);

  it('keep what each has added, changed and deleted', async () => {
    const [one, other] = [await open(), await open()];
    await one.save([...FIRST, vehicle('c')]);
    await one.save([vehicle('a', 2.9), vehicle('b'), vehicle('c')]);
    const saved = valueIn(await other.save([vehicle('a'), vehicle('d')]));
    expect(saved.value).toEqual([vehicle('a', 2.9), vehicle('d'), vehicle('c')]);
    expect((await open()).current()).toEqual(saved.value);
    expect(saved.say).toEqual(['Added or changed in another window, and now here too: "Van a" and "Van c".']);
  });

  it('both changing one card keep both versions, and the later one is told', async () => {
    const [one, other] = [await open(), await open()];
    await one.save([vehicle('a', 2.9), vehicle('b')]);
    const saved = valueIn(await other.save([vehicle('a', 3.2), vehicle('b')]));
    expect(saved.value.map(({ card }) => [card.name, card.heightM])).toEqual([
      ['Van a', 3.2],
      ['Van a (other version)', 2.9],
      ['Van b', 3.05],
    ]);
    expect(saved.say.join()).toContain('"Van a" was changed in another window too. Both versions are kept');
    expect((await open()).current()).toEqual(saved.value);
  });

  it('do not delete what the other has changed, nor lose a change to what the other has deleted', async () => {
    const [one, other] = [await open(), await open()];
    await one.save([vehicle('a', 2.9)]);
    const saved = valueIn(await other.save([vehicle('b', 3.2)]));
    expect(new Set(saved.value)).toEqual(new Set([vehicle('a', 2.9), vehicle('b', 3.2)]));
    expect(saved.say).toHaveLength(2);
    expect(saved.say.join(' ')).toMatch(/"Van a" was not deleted.*|"Van b" was deleted in another window/);
  });

  it('saving at the same time lose nothing', async () => {
    const stores = await Promise.all(Array.from({ length: 6 }, open));
    const saved = stores.map((store, i) => store.save([...FIRST, vehicle(`v${i}`)]));
    expect((await Promise.all(saved)).every(({ ok }) => ok)).toBe(true);
    expect((await ids()).sort()).toEqual(['a', 'b', ...stores.map((_, i) => `v${i}`)]);
  });

  it('together over the most a fleet can have are refused, and what was kept stays', async () => {
    const [one, other] = [await open(), await open()];
    const many = Array.from({ length: FLEET_MAX - 2 }, (_, i) => vehicle(`m${i}`));
    valueIn(await one.save([...FIRST, ...many]));
    const refused = await other.save([...FIRST, vehicle('more')]);
    expect(refused.ok ? '' : refused.error.message).toContain('it would have 201 vehicles with what another');
    expect(await ids()).toHaveLength(FLEET_MAX);
  });

  it('tell two pages of one program apart by what each had read', async () => {
    const store = await open();
    await store.save([...FIRST, vehicle('c')], FIRST);
    const saved = valueIn(await store.save([...FIRST, vehicle('d')], FIRST));
    expect(saved.value.map(({ id }) => id)).toEqual(['a', 'b', 'd', 'c']);
  });
});

describe('a fleet with a bad card', () => {
  const write = (vehicles: readonly unknown[]) =>
    writeFile(
      join(folder, 'fleet.json'),
      JSON.stringify({ format: 'lanegauge.fleet', version: 1, vehicles }),
    );
  const bad = { id: 'bad', card: { ...COACH_BUILT, name: 'Heron', heightM: -1 } };

  it('loses that card alone: it is named, and the whole as it was stays on the disk', async () => {
    await write([vehicle('a'), bad, vehicle('b')]);
    const before = await readFile(join(folder, 'fleet.json'), 'utf8');
    const fleet = await fleetIn(folder, [], now);
    expect(fleet.current()).toEqual([vehicle('a'), vehicle('b')]);
    expect(fleet.notices().join()).toMatch(
      /"Heron" \(card\.heightM is -1, but at least 1\.5 m is needed\)\. The rest stays/,
    );
    await fleet.save([...fleet.current(), vehicle('c')]);
    const [aside] = (await readdir(folder)).filter((name) => name.includes('.damaged-'));
    expect(await readFile(join(folder, aside ?? ''), 'utf8')).toBe(before);
    expect((await fleetIn(folder, [], now)).current()).toHaveLength(3);
  });

  it('is set aside once, however often it is read', async () => {
    await write([vehicle('a'), bad]);
    for (let i = 0; i < 3; i++) await fleetIn(folder, [], now);
    expect((await readdir(folder)).filter((name) => name.includes('.damaged-'))).toHaveLength(1);
  });

  it('of an id that another has, or beyond the most, is treated alike', async () => {
    await write([vehicle('a'), vehicle('a', 2), ...Array.from({ length: 205 }, (_, i) => vehicle(`v${i}`))]);
    const fleet = await fleetIn(folder, [], now);
    expect(fleet.current()).toHaveLength(FLEET_MAX);
    expect(fleet.notices().join()).toMatch(/another carries the same id.*there are more than 200.* 2 more/);
  });
});

describe('two programs with one list of loads', () => {
  const open = () => loadsIn(folder, now, () => 'Heron 7.4');
  const load = (name: string) => [{ name, massKg: 30, xM: 5.5 }];

  it('keep the lists of different vehicles', async () => {
    const [one, other] = [await open(), await open()];
    await one.save('heron', load('Kayak'));
    await other.save('wren', load('Tent'));
    expect((await open()).current().map(({ vehicleId }) => vehicleId)).toEqual(['heron', 'wren']);
  });

  it('both changing one list keep both: the other lies in a file that can be opened, and that is told', async () => {
    const [one, other] = [await open(), await open()];
    await one.save('heron', load('Kayak'));
    const saved = valueIn(await other.save('heron', load('Tent')));
    expect(saved.value).toEqual(load('Tent'));
    const [, path = ''] = /the other list lies at (.*\.json) and/.exec(saved.say.join()) ?? [];
    expect(JSON.parse(await readFile(path, 'utf8'))).toEqual({
      format: 'lanegauge.load',
      version: 1,
      items: load('Kayak'),
    });
    expect(path).toContain('load-Heron-7-4-');
  });

  it('do not clear a list that the other has changed', async () => {
    const one = await open();
    await one.save('heron', load('Kayak'));
    const other = await open();
    await one.save('heron', load('Canoe'));
    const saved = valueIn(await other.save('heron', []));
    expect([saved.value, saved.say.join()]).toEqual([load('Canoe'), expect.stringContaining('not cleared')]);
  });
});

describe('two programs with the same settings', () => {
  const open = () => openSettings(folder, now);

  it('keep the choices of both; of one that both made the later holds, and is told', async () => {
    const [one, other] = [await open(), await open()];
    await one.save({ ...DEFAULT_SETTINGS, palette: 'night', country: 'FR' });
    const saved = valueIn(await other.save({ ...DEFAULT_SETTINGS, units: 'both', country: 'GB' }));
    expect(saved.value).toMatchObject({ palette: 'night', units: 'both', country: 'GB' });
    expect(saved.say).toEqual([expect.stringContaining('in another window too, to FR. What you')]);
    expect((await open()).current()).toEqual(saved.value);
  });
});

describe('two programs with the same recent files', () => {
  const file = (path: string, passing = false) =>
    ({ path, name: path, use: 'drive', passing, bytes: 5 }) as const;

  it('keep the files of both, and the copies of both', async () => {
    const open = () => openRecents(folder, now);
    const [one, other] = [await open(), await open()];
    for (const [i, store] of [one, other].entries()) {
      await writeFile(join(folder, `passing-${i}`), `drive ${i}`);
      await store.add(file(join(folder, `passing-${i}`), true));
    }
    await one.add(file('/drives/third.gpx'));
    const entries = (await open()).list();
    expect(entries.map(({ name }) => name.split('/').at(-1))).toEqual([
      'third.gpx',
      'passing-1',
      'passing-0',
    ]);
    const copies = entries.slice(1).map(({ id }) => one.find(id)?.path ?? '');
    const texts = await Promise.all(copies.map((path) => readFile(path, 'utf8')));
    expect(texts).toEqual(['drive 1', 'drive 0']);
  });
});

describe('what could not be read back', () => {
  it('is refused: more lists of loads than can be kept', async () => {
    const loads = Array.from({ length: LOADS_MAX }, (_, i) => ({
      vehicleId: `v${i}`,
      items: [{ name: 'Box', massKg: 1, xM: 1 }],
    }));
    const text = JSON.stringify({ format: 'lanegauge.loads', version: 1, loads });
    await writeFile(join(folder, 'loads.json'), text);
    // no library can be made here: the lists are shown from their file
    await writeFile(join(folder, 'library'), '');
    const store = await loadsIn(folder, now, () => undefined);
    const refused = await store.save('one-more', loads[0]!.items);
    expect(refused.ok ? '' : refused.error.message).toContain(`lists of ${LOADS_MAX} vehicles are kept`);
    expect(await readFile(join(folder, 'loads.json'), 'utf8')).toBe(text);
  });
});
