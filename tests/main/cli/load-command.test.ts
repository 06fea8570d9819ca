import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { driveReportSchema } from '../../../geo/report/report.ts';
import { checkCommand } from '../../../main/cli/check/check-command.ts';
import { loadCommand } from '../../../main/cli/load-command.ts';
import { terminalOf } from '../../support/terminal.ts';

const SAMPLES = resolve(import.meta.dirname, '../../../sample-routes');
const CARD = join(SAMPLES, 'vehicles/coach-built-7.4.json');
const FAMILY = join(SAMPLES, 'loads/family-of-four.json');

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-load-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** Runs a command as if typed. */
async function typed(command: typeof loadCommand, ...words: string[]) {
  const { terminal, said } = terminalOf(folder);
  return { exit: await command(words, terminal), said };
}
async function load(...words: string[]) {
  const { exit, said } = await typed(loadCommand, ...words);
  return { exit, ...said };
}
const fileOf = async (name: string, items: unknown) => {
  await writeFile(join(folder, name), JSON.stringify({ format: 'lanegauge.load', version: 1, items }));
  return name;
};

describe('lanegauge load', () => {
  it('of a family of four with full water names what is over and what to do, and exits 1', async () => {
    const { exit, out, complaint } = await load('--vehicle', CARD, '--load', FAMILY);
    expect([exit, complaint]).toEqual([1, '']);
    expect(out).toContain('OVER: gross by 26 kg. Do not leave like this.');
    expect(out).toContain('Do: Drain 76 litres from "Fresh water tank"');
    expect(out).toMatch(/Gross +3500 kg +3526 kg +−26 kg +over/);
    expect(out).toMatch(/Rear axle +2000 kg +1808 kg +192 kg\n/);
    expect(out).toContain('Weigh the vehicle');
  });

  it('refuses a photo or another file in the place of a card or a list as what it is', async () => {
    const photo = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.alloc(2_000_000)]);
    await writeFile(join(folder, 'card.json'), photo);
    const card = await load('--vehicle', 'card.json', '--load', FAMILY);
    expect(card.exit).toBe(2);
    expect(card.complaint).toContain('card.json is a picture, not a vehicle card. Name the file of the');
    await writeFile(join(folder, 'list.json'), '%PDF-1.7 ...');
    const list = await load('--vehicle', CARD, '--load', 'list.json');
    expect(list.complaint).toContain('list.json is a PDF, not a load list.');
  });

  it('within the plates exits 0 and says how much is left', async () => {
    const name = await fileOf('light.json', [{ name: 'Bag', massKg: 20, xM: 2 }]);
    const { exit, out } = await load('--vehicle', CARD, '--load', name);
    expect(exit).toBe(0);
    expect(out).toMatch(/^WITHIN THE PLATES: least spare: front axle, 2\d\d kg\./);
    expect(out).not.toContain('Do:');
  });

  it('within the plates as it leaves and over one later says so first, what to do, and exits 1', async () => {
    const name = await fileOf('later.json', [{ name: 'Boxes', massKg: 410, xM: 2 }]);
    const { exit, out } = await load('--vehicle', CARD, '--load', name);
    expect(exit).toBe(1);
    expect(out).toMatch(/^OVER on the way, with the fresh water filled up: .* by \d+ kg\. As it leaves: /);
    expect(out).toMatch(/Do before you leave: /);
  });

  it('as JSON prints the figures alone, with the same exit code', async () => {
    const { exit, out } = await load('--vehicle', CARD, '--load', FAMILY, '--json');
    expect(exit).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      grossKg: 3526,
      spare: { grossKg: -26 },
      over: ['gross'],
      frontShare: expect.closeTo(0.4873, 4),
    });
  });

  it('refuses what it cannot use with one sentence, and prints nothing', async () => {
    const bad = await fileOf('bad.json', [{ name: 'Anvil', massKg: 60_000, xM: 2 }]);
    await writeFile(
      join(folder, 'bare.json'),
      JSON.stringify({ format: 'lanegauge.vehicle', version: 1, name: 'Bare' }),
    );
    for (const [words, sentence] of [
      [['--vehicle', CARD], 'Missing: --load FILE.json'],
      [['--vehicle', CARD, '--load', bad], 'item 1 "Anvil": massKg is 60000, but at most 20000 kg'],
      [['--vehicle', CARD, '--load', 'none.json'], 'There is no file'],
      [['--vehicle', CARD, '--load', CARD], 'is a vehicle card, not a load list'],
      [['--vehicle', 'bare.json', '--load', FAMILY], 'heightM is missing'],
      [['--vehicle', CARD, '--load', FAMILY, '--leave', 'now'], '--leave'],
      [['--vehicle', CARD, '--load', FAMILY, '--load', bad], '--load is given 2 times'],
    ] as const) {
      const { exit, out, complaint } = await load(...words);
      expect([exit, out]).toEqual([2, '']);
      expect(complaint).toContain(sentence);
    }
  });

  it('estimates the axles from the unladen mass alone, and says so', async () => {
    const { runningOrder: _, ...card } = JSON.parse(await readFile(CARD, 'utf8'));
    await writeFile(join(folder, 'card.json'), JSON.stringify(card));
    const { out } = await load('--vehicle', 'card.json', '--load', FAMILY);
    expect(out).toContain('ESTIMATE, NOT WEIGHED. ');
    const json = await load('--vehicle', 'card.json', '--load', FAMILY, '--json');
    expect(JSON.parse(json.out).estimated).toBe(true);
  });

  it('needs the empty weight of the vehicle, or its unladen mass', async () => {
    const { runningOrder: _, unladenKg: __, ...card } = JSON.parse(await readFile(CARD, 'utf8'));
    await writeFile(join(folder, 'card.json'), JSON.stringify(card));
    const { exit, out, complaint } = await load('--vehicle', 'card.json', '--load', FAMILY);
    expect([exit, out]).toEqual([2, '']);
    expect(complaint).toContain('has no empty weight');
  });
});

describe('lanegauge check with a load', () => {
  const check = async (drive: string, ...more: string[]) => {
    const { exit, said } = await typed(
      checkCommand,
      ...['--route', join(SAMPLES, 'drives', drive), '--map', join(SAMPLES, 'district.osm.pbf')],
      ...['--vehicle', CARD, '--country', 'GB', ...more],
    );
    return { exit, ...said };
  };

  it('puts it in the report, and an overload among the cautions and in the exit code, the verdict unchanged', async () => {
    const without = await check('clear.gpx', '--json');
    const loaded = await check('clear.gpx', '--load', FAMILY, '--json');
    expect([without.exit, loaded.exit]).toEqual([0, 1]);
    const report = driveReportSchema.parse(JSON.parse(loaded.out));
    expect(report.load?.over).toEqual(['gross']);
    expect(report.cautions[1]).toContain('must not leave as loaded');
    expect(report.verdict).toBe(JSON.parse(without.out).verdict);
    const { out } = await check('clear.gpx', '--load', FAMILY);
    expect(out.split('\n')[1]).toBe('AS LOADED OVER: gross by 26 kg. Do not leave like this.');
    // said once
    expect(out).not.toMatch(/must not leave as loaded|over its plate by/);
  });

  it('refuses a load it cannot use before reading the map', async () => {
    const bad = await fileOf('bad.json', [{ name: 'Anvil', massKg: 'heavy', xM: 2 }]);
    const { exit, out, complaint } = await check('clear.gpx', '--load', bad);
    expect([exit, out]).toEqual([2, '']);
    expect(complaint).toContain('item 1 "Anvil"');
  });
});
