import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

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

/** The program in the folder, as a user stands in it. */
function lanegauge(...words: string[]) {
  const env = { ...process.env, npm_lifecycle_event: '' };
  const program = join(ROOT, '.build/main/cli/main.js');
  const { status, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    env,
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, stderr };
}

describe.skipIf(process.platform === 'win32')('each option that takes a file', () => {
  it.each(OPTIONS)(
    '%s %s refuses what is no file in the same words, as it was typed',
    (command, option, rest, what) => {
      const say = (name: string) => lanegauge(command, option, name, ...rest);
      expect(say('absent')).toEqual({
        status: 2,
        stderr: `lanegauge: There is no file absent. Check the name of the ${what}.\n`,
      });
      expect(say('pipe')).toEqual({
        status: 2,
        stderr: `lanegauge: pipe is a pipe or a device, not a ${what}. Name an ordinary file.\n`,
      });
      expect(say('./folder').stderr).toBe(
        `lanegauge: ./folder is a folder, not a ${what}. Name the file itself.\n`,
      );
      expect(say('/dev/zero').stderr).toContain('/dev/zero is a pipe or a device');
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
