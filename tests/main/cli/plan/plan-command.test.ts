import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkCommand } from '../../../../main/cli/check/check-command.ts';
import { planCommand } from '../../../../main/cli/plan/plan-command.ts';
import { terminalOf } from '../../../support/terminal.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const MAP = ['--map', join(SAMPLE, 'district.osm.pbf'), '--country', 'GB'];
const VEHICLE = ['--vehicle', join(SAMPLE, 'vehicles', 'coach-built-7.4.json')];
/** Where the sample drive `clear` begins and ends. */
const [START, END] = ['47.499642,-19.985473', '47.492903,-20.059178'];

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'plan-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function plan(...words: readonly string[]) {
  const { terminal, said } = terminalOf(home);
  const exit = await planCommand([...VEHICLE, ...words], terminal);
  return { exit, ...said };
}

describe('lanegauge plan', () => {
  it('lays out a drive that nothing mapped stops, as a track that is followed on the same roads', async () => {
    const planned = await plan('--at', START, '--at', END, '--gpx', 'new.gpx', '--json', ...MAP);
    expect(planned).toMatchObject({ exit: 0, complaint: '' });
    const report = JSON.parse(planned.out);
    expect(report.findings.filter(({ level }: { level: string }) => level === 'barred')).toEqual([]);
    const { terminal, said } = terminalOf(home);
    const drive = join(home, 'new.gpx');
    expect(await checkCommand(['--route', drive, '--json', ...VEHICLE, ...MAP], terminal)).toBe(0);
    const again = JSON.parse(said.out);
    const ways = (of: typeof report) => of.roads.map(({ way }: { way: number }) => way);
    expect(ways(again)).toEqual(ways(report));
    expect(again.match).toMatchObject({ offMapM: 0, guessedM: 0 });
  });

  it('tells what each name is taken for: what it is, where it lies, and which it could have been', async () => {
    const planned = await plan('--at', 'pellam', '--at', END, '--gpx', 'new.gpx', '--json', ...MAP);
    expect(planned.exit).toBe(0);
    expect(JSON.parse(planned.out).cautions).toContainEqual(
      expect.stringMatching(
        /^"pellam" is taken for "Pellam" \(village, [\d.]+ km .* of \w+\): 47\.\d{5},-20\.\d{5}\.$/,
      ),
    );
    const several = await plan('--at', 'Oat', '--at', END, '--gpx', 'n.gpx', ...MAP);
    expect(several.complaint).toMatch(/"Oat \w+" \(street, [\d.]+ k?m .* of [^)]+\): /);
  });

  it('takes a place south of the equator, and writes nothing where there is no drive', async () => {
    const refused = await plan('--at', '-47.5,-20', '--at', END, '--gpx', 'new.gpx', ...MAP);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain('Place 1 (-47.50000, -20.00000)');
    expect(existsSync(join(home, 'new.gpx'))).toBe(false);
  });

  it('overwrites no file', async () => {
    const words = ['--at', START, '--at', END, '--gpx', 'new.gpx', ...MAP];
    expect((await plan(...words)).exit).toBe(0);
    const before = readFileSync(join(home, 'new.gpx'), 'utf8');
    expect((await plan(...words)).complaint).toContain('is there already and stays as it is');
    expect(readFileSync(join(home, 'new.gpx'), 'utf8')).toBe(before);
  });

  it.each([
    [['--at', START, '--gpx', 'n.gpx'], 'two places or more'],
    [['--at', START, '--at', 'here', '--gpx', 'n.gpx', ...MAP], 'no place or road on the map is called so'],
    [['--at', START, '--at', '51', '--gpx', 'n.gpx'], 'is not a place such as'],
    [['--at', START, '--at', '120,10', '--gpx', 'n.gpx'], 'no place on Earth'],
    [['--at', START, '--at', START, '--gpx', 'n.gpx', ...MAP], 'the same'],
    [['--at', '-20.02,47.49', '--at', END, '--gpx', 'n.gpx', ...MAP], 'swapped'],
    [['--at', START, '--at', END, '--gpx', 'n.gpx', '--prefer', 'nice'], 'neither quickest nor widest'],
    [['--at', START, '--at', END, '--gpx', 'n.gpx'], 'No map is named'],
  ])('refuses %j in one sentence', async (words, sentence) => {
    const refused = await plan(...words);
    expect(refused).toMatchObject({ exit: 2, out: '' });
    expect(refused.complaint).toContain(sentence);
  });
});

describe('lanegauge check --way-round', () => {
  it('adds ways past what is barred to the report, and keeps the exit code', async () => {
    const { terminal, said } = terminalOf(home);
    const words = ['--route', join(SAMPLE, 'drives', 'barred.gpx'), ...VEHICLE, ...MAP, '--json'];
    const out = join(home, 'ways');
    expect(await checkCommand([...words, '--way-round', '--out', out], terminal)).toBe(1);
    const { waysRound, noWayRound, findings } = JSON.parse(said.out);
    const barred = findings.filter(({ level }: { level: string }) => level === 'barred');
    const told = [...waysRound, ...noWayRound].flatMap(({ findingIds }) => findingIds);
    expect(new Set(told)).toEqual(new Set(barred.map(({ id }: { id: string }) => id)));

    // each way lies there as a drive of its own, named in the text by its roads
    expect(readFileSync(join(out, 'report.txt'), 'utf8')).toMatch(
      /back on it at\s+[\d.]+\s+km\s+\([\d.]+\s+mi\),\s+by [A-Z]/,
    );
    expect(waysRound.length).toBeGreaterThan(0);
    expect(readdirSync(out).filter((name) => name.startsWith('way-round-'))).toHaveLength(waysRound.length);
    // of a way by which the drive is still barred the file's track says so, and the text never says to drive it
    const tracks = waysRound.map((_: unknown, i: number) =>
      readFileSync(join(out, `way-round-${i + 1}.gpx`), 'utf8').replace(
        /^[\s\S]*<trk>\s*|<trkseg>[\s\S]*$/g,
        '',
      ),
    );
    expect(tracks[0]).toMatch(/^<name>(?!STILL).*, way round 1<\/name>\s*<desc>Nothing mapped stops it\./);
    expect(tracks.at(-1)).toMatch(
      /^<name>STILL BARRED: .*<\/name>\s*<desc>Barred\. Still barred: .* Do not drive/,
    );
    expect(readFileSync(join(out, 'report.txt'), 'utf8').replace(/\s+/g, ' ')).toContain(
      'Nothing mapped bars the whole drive by way round 1. By any other way alone it is still barred: do not drive it like that.',
    );

    for (const [i, { findingIds }] of waysRound.slice(0, 2).entries()) {
      const route = join(out, `way-round-${i + 1}.gpx`);
      const again = terminalOf(home);
      await checkCommand(['--route', route, ...VEHICLE, ...MAP, '--json'], again.terminal);
      const ids = JSON.parse(again.said.out).findings.map(({ id }: { id: string }) => id);
      expect(ids.filter((id: string) => findingIds.includes(id))).toEqual([]);
    }
  });

  it('refuses a finding that is none', async () => {
    const { terminal, said } = terminalOf(home);
    const words = ['--route', join(SAMPLE, 'drives', 'barred.gpx'), ...VEHICLE, ...MAP, '--json'];
    expect(await checkCommand([...words, '--way-round', '--past', 'height:w1'], terminal)).toBe(2);
    expect(said.complaint).toContain('There is no finding "height:w1"');
  });
});
