import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readCheckArguments } from '../../../main/cli/arguments.ts';
import { swingCommand } from '../../../main/cli/swing-command.ts';
import { terminalOf } from '../../support/terminal.ts';

const SAMPLE = resolve(import.meta.dirname, '../../../sample-routes/vehicles/coach-built-7.4.json');
const folder = mkdtempSync(join(tmpdir(), 'lanegauge-swing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, held: unknown): void => writeFileSync(join(folder, name), JSON.stringify(held));
put('corner.json', { segments: [{ line: 30 }, { arc: 8, turnDeg: 90 }, { line: 40 }] });
put('tight.json', { segments: [{ line: 30 }, { arc: 4.5, turnDeg: -90 }, { line: 40 }] });
put('lock.json', { segments: [{ arc: 4.985, turnDeg: 90 }] });
put('straight.json', { segments: [{ line: 30 }] });
put('small.json', { segments: [{ line: 30 }, { arc: 4, turnDeg: 90 }] });
const { rearAxleRadiusMinM: _, ...unmeasured } = JSON.parse(readFileSync(SAMPLE, 'utf8')) as Record<
  string,
  unknown
>;
put('unmeasured.json', unmeasured);

async function swing(path: string, axle: string, ...more: string[]) {
  const { terminal, said } = terminalOf(folder);
  const words = ['--path', path, '--follow', axle, ...more];
  const code = await swingCommand(
    words.includes('--vehicle') ? words : ['--vehicle', SAMPLE, ...words],
    terminal,
  );
  return { code, ...said, words: said.out.replace(/\s+/g, ' ') };
}

describe('lanegauge swing', () => {
  it('prints centimetres, the side and the caution of the model', async () => {
    const { code, out } = await swing('corner.json', 'front');
    expect(code).toBe(0);
    expect(out).toMatch(/Tail swing +17 cm +to the right/);
    expect(out).toMatch(/Cut-in +99 cm/);
    expect(out).toContain("full lock 4.99 m, the card's own figure");
    expect(out.replace(/\s+/g, ' ')).toContain(
      'tyres that do not slide and a body with square corners. The real vehicle may be 5 cm off',
    );
  });

  it('runs as the readme has it, on the sample path', async () => {
    const readme = readFileSync(resolve(SAMPLE, '../../../README.md'), 'utf8');
    const typed = /lanegauge -- (swing [^`]*?)\n```/.exec(readme)?.[1] ?? '';
    const [, ...words] = typed.replaceAll('\\\n', ' ').split(/\s+/);
    const { terminal, said } = terminalOf(resolve(SAMPLE, '../../..'));
    expect(await swingCommand(words, terminal)).toBe(0);
    expect(said.out).toMatch(/Tail swing +\d+ cm/);
    expect(said.out).not.toMatch(/off-tracking|no slip|rectangle/i);
  });

  it('says that full lock was measured in the yard, with its range, on paper and as JSON', async () => {
    const measured = { rearWheelCircleM: 8.15, by: 'AB', on: '2026-05-01' };
    put('measured.json', { ...unmeasured, measured });
    const printed = await swing('corner.json', 'front', '--vehicle', 'measured.json');
    expect(printed.words).toMatch(
      /full lock 4\.\d\d m, measured in the yard\. It may lie anywhere from 4\.\d\d to 5\.\d\d m\./,
    );
    expect(printed.words).toContain('Worked out from full lock as measured in the yard');
    const { out } = await swing('corner.json', 'front', '--vehicle', 'measured.json', '--json');
    const report = JSON.parse(out) as Record<string, number | string>;
    expect(report['fullLockFrom']).toBe('measured');
    expect(report['rearAxleRadiusMinFromM']).toBeLessThan(Number(report['rearAxleRadiusMinM']));
    expect(report['rearAxleRadiusMinToM']).toBeGreaterThan(Number(report['rearAxleRadiusMinM']));
  });

  it('prints the figures alone as JSON', async () => {
    const { code, out } = await swing('corner.json', 'rear', '--json');
    const report = JSON.parse(out) as Record<string, unknown>;
    expect(code).toBe(0);
    expect(Object.keys(report)).toEqual([
      'tailSwingM',
      'cutInM',
      'sweptWidthM',
      'frontCornerOutM',
      'offTrackingM',
      'rearAxleRadiusMinM',
      'fullLockSwingM',
      'pathRearAxleRadiusMinM',
      'tighterThanFullLock',
      'fullLockFrom',
    ]);
    expect(report).toMatchObject({
      rearAxleRadiusMinM: 4.985,
      pathRearAxleRadiusMinM: 8,
      tighterThanFullLock: false,
    });
  });

  it('computes a path tighter than full lock, says that it cannot be made, and ends with 1', async () => {
    const { code, out } = await swing('tight.json', 'rear');
    expect([code, out.split(':')[0]]).toEqual([1, 'CANNOT BE MADE']);
    expect(out).toMatch(/Tail swing +\d+ cm +to the left/);
    const json = await swing('tight.json', 'rear', '--json');
    expect([
      json.code,
      (JSON.parse(json.out) as { tighterThanFullLock: boolean }).tighterThanFullLock,
    ]).toEqual([1, true]);
  });

  it('takes a path at full lock itself', async () => {
    expect((await swing('lock.json', 'rear')).code).toBe(0);
  });

  it('has no least radius on a straight', async () => {
    const { code, out } = await swing('straight.json', 'front', '--json');
    expect([code, (JSON.parse(out) as { pathRearAxleRadiusMinM: unknown }).pathRearAxleRadiusMinM]).toEqual([
      0,
      null,
    ]);
  });

  it('says where full lock is only an estimate, and how far it may be off', async () => {
    const { words } = await swing('corner.json', 'front', '--vehicle', 'unmeasured.json');
    expect(words).toContain('an estimate, since the card gives no turning circle');
    const near = await swing('tight.json', 'rear', '--vehicle', 'unmeasured.json');
    expect(near.words).toContain('It may lie anywhere from 4.81 m to 5.98 m: measure the turning circle');
  });

  it.each([
    ['small.json', 'front', 'an arc of 4 m is not wider than the 4.04 m'],
    ['corner.json', 'middle', '--follow is front or rear'],
    ['absent.json', 'front', 'There is no file'],
  ])('refuses %s by the %s axle in one sentence', async (path, axle, says) => {
    const { code, out, complaint } = await swing(path, axle);
    expect([code, out]).toEqual([2, '']);
    expect(complaint).toContain(says);
  });

  it('names what is missing', async () => {
    const { terminal, said } = terminalOf(folder);
    expect(await swingCommand([], terminal)).toBe(2);
    expect(said.complaint).toContain('--vehicle FILE.json, --path FILE.json, --follow front|rear');
  });
});

describe('an option without its value', () => {
  it.each([
    [
      ['--track', '-1'],
      '--track needs a value, but -1 stands there; a value that begins with a dash is written --track=-1.',
    ],
    [['--track', '--json'], '--track needs a value, but --json stands there'],
    [['--track'], '--track needs a value after it.'],
  ])('%j is told so in our words', (words, says) => {
    const read = readCheckArguments(words, '/');
    expect(read.ok ? 'accepted' : read.error.message).toContain(says);
  });

  it('may begin with a dash when it is tied to its option', () => {
    const read = readCheckArguments(['--track=-1', '--route', 'a', '--map', 'b', '--vehicle', 'c'], '/');
    expect(read.ok && read.value.track).toBe('-1');
  });
});
