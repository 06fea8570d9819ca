import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkCommand } from '../../../main/cli/check/check-command.ts';
import { loadCommand } from '../../../main/cli/load-command.ts';
import { swingCommand } from '../../../main/cli/swing-command.ts';
import { terminalOf } from '../../support/terminal.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const SAMPLES = join(ROOT, 'sample-routes');
const folder = mkdtempSync(join(tmpdir(), 'lanegauge-files-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
execFileSync('mkfifo', [join(folder, 'pipe')]);
mkdirSync(join(folder, 'folder'));

const ROUTE = ['--route', `${SAMPLES}/drives/clear.gpx`];
const MAP = ['--map', `${SAMPLES}/district.osm.pbf`];
const VEHICLE = ['--vehicle', `${SAMPLES}/vehicles/coach-built-7.4.json`];
const LOAD = ['--load', `${SAMPLES}/loads/family-of-four.json`];

/** Each option that takes a file, and what else its command needs. */
const OPTIONS = [
  ['check', '--route', [...MAP, ...VEHICLE], 'drive'],
  ['check', '--map', [...ROUTE, ...VEHICLE], 'map file'],
  ['check', '--vehicle', [...ROUTE, ...MAP], 'vehicle card'],
  ['check', '--load', [...ROUTE, ...MAP, ...VEHICLE], 'load list'],
  ['load', '--vehicle', LOAD, 'vehicle card'],
  ['load', '--load', VEHICLE, 'load list'],
  ['swing', '--vehicle', ['--path', 'x.json', '--follow', 'rear'], 'vehicle card'],
  ['swing', '--path', [...VEHICLE, '--follow', 'rear'], 'path'],
] as const;

const COMMANDS = { check: checkCommand, load: loadCommand, swing: swingCommand };

/** The program, as a user sees what it writes to the screen. */
function lanegauge(...words: string[]) {
  const program = join(ROOT, '.build/program/cli/main.js');
  const { status, stderr } = spawnSync(process.execPath, [program, ...words], {
    env: { ...process.env, npm_lifecycle_event: '' },
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, stderr };
}

/** A command as if typed in the folder. */
async function typed(command: keyof typeof COMMANDS, ...words: string[]) {
  const { terminal, said } = terminalOf(folder);
  return { status: await COMMANDS[command](words, terminal), say: said.complaint };
}

// paths mean what they mean to who stands there
const from = process.cwd();
beforeAll(() => process.chdir(folder));
afterAll(() => process.chdir(from));

describe.skipIf(process.platform === 'win32')('each option that takes a file', () => {
  it.each(OPTIONS)(
    '%s %s refuses what is no file in the same words, as it was typed',
    async (command, option, rest, what) => {
      const say = (name: string) => typed(command, option, name, ...rest);
      expect(await say('absent')).toEqual({
        status: 2,
        say: `There is no file absent. Check the name of the ${what}.`,
      });
      expect(await say('pipe')).toEqual({
        status: 2,
        say: `pipe is a pipe or a device, not a ${what}. Name an ordinary file.`,
      });
      expect((await say('./folder')).say).toBe(`./folder is a folder, not a ${what}. Name the file itself.`);
      expect((await say('/dev/zero')).say).toContain('/dev/zero is a pipe or a device');
    },
  );

  it('quotes a name without what it could do to the screen', () => {
    const { status, stderr } = lanegauge('load', '--vehicle', 'a\u001b[31m\u202e\nb.json', ...LOAD);
    expect([status, stderr]).toEqual([
      2,
      'lanegauge: There is no file a·[31m· b.json. Check the name of the vehicle card.\n',
    ]);
  });

  it('quotes what a file holds without what it could do to the screen', () => {
    writeFileSync(join(folder, 'card.json'), JSON.stringify({ 'na\u009bme': '\u001b]0;x\u0007' }));
    const { stderr } = lanegauge('load', '--vehicle', 'card.json', ...LOAD);
    expect(stderr).toMatch(/^lanegauge: card\.json is not a usable vehicle card: \P{Cc}*\n$/u);
  });
});
