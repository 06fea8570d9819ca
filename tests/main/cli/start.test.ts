import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findElectron, hasDisplay } from '../../../main/cli/start/find-electron.ts';
import { readStartArguments } from '../../../main/cli/start/start-arguments.ts';

describe('npm start', () => {
  it.each([
    [[], { once: false, help: false }],
    [['a.gpx'], { once: false, help: false, file: '/here/a.gpx' }],
    [['--once'], { once: true, help: false }],
    [['--help'], { once: false, help: true }],
  ])('takes %j', (words, read) => {
    expect(readStartArguments(words, '/here')).toEqual({ ok: true, value: read });
  });

  it.each([[['--port', '80']], [['a.gpx', 'b.gpx']], [['a.gpx', '--once']]])(
    'refuses %j in a sentence',
    (words) => {
      const read = readStartArguments(words, '/here');
      expect(read.ok ? '' : read.error.message).toMatch(/\.$/);
    },
  );

  it('counts files that are too many, however many, and names none', () => {
    const read = readStartArguments(Array<string>(400).fill('/drives/a.gpx'), '/here');
    expect(read.ok ? '' : read.error.message).toBe(
      "One file at a time, and 400 are named: write 'npm start -- FILE.gpx'.",
    );
  });
});

describe("Electron's program", () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'lanegauge-find-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true, force: true });
  });

  it('is found by the file that names it, only where it lies', async () => {
    expect(findElectron(folder)).toBeUndefined();
    await writeFile(join(folder, 'path.txt'), 'electron\n');
    expect(findElectron(folder)).toBeUndefined();
    await mkdir(join(folder, 'dist'));
    await writeFile(join(folder, 'dist', 'electron'), '');
    expect(findElectron(folder)).toBe(join(folder, 'dist', 'electron'));
  });

  it.each([
    ['linux', {}, false],
    ['linux', { DISPLAY: '' }, false],
    ['linux', { DISPLAY: ':0' }, true],
    ['linux', { WAYLAND_DISPLAY: 'wayland-0' }, true],
    ['darwin', {}, true],
    ['win32', {}, true],
  ] as const)('on %s with %j has a display: %s', (platform, env, has) => {
    expect(hasDisplay(env, platform)).toBe(has);
  });
});
