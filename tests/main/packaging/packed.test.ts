import { execFile, spawn } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packer, writeStubElectron } from './stub-electron.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const MB = 1e6;
const run = promisify(execFile);

const { getCurrentFuseWire, FuseV1Options } = packer('@electron/fuses') as {
  getCurrentFuseWire(path: string): Promise<Record<number, number>>;
  FuseV1Options: Record<string, number>;
};
/** How a fuse that is on stands in the program. */
const ON = '1'.charCodeAt(0);
const asar = packer('@electron/asar') as {
  listPackage(path: string, options: { isPack: boolean }): string[];
  extractAll(path: string, folder: string): void;
};

let folder: string;
/** The packed program, laid out as files again, and its samples beside it where a checkout has them. */
let unpacked: string;
const resourcesOf = { linux: 'linux-unpacked/resources', win: 'win-unpacked/resources' };

async function pack(): Promise<void> {
  await run(process.execPath, [join(ROOT, '.build/main/electron/icons/write-icons.js')], { cwd: ROOT });
  const electron = join(folder, 'electron');
  writeStubElectron(electron);
  const words = ['--dir', '--x64', '--linux', '--win', '--mac', '--publish', 'never'];
  const into = [`-c.electronDist=${electron}`, `-c.directories.output=${join(folder, 'out')}`];
  const config = ['--config', join(ROOT, 'electron-builder.yml')];
  await run(process.execPath, [packer.resolve('electron-builder/cli.js'), ...words, ...config, ...into], {
    cwd: ROOT,
    env: { ...process.env, CSC_IDENTITY_AUTO_DISCOVERY: 'false' },
  });
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-packed-'));
  await pack();
  const resources = join(folder, 'out', resourcesOf.linux);
  unpacked = join(folder, 'unpacked');
  asar.extractAll(join(resources, 'app.asar'), unpacked);
  cpSync(join(resources, 'sample-routes'), join(unpacked, 'sample-routes'), { recursive: true });
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs the packed terminal in plain Node, from inside the packed tree, with nothing of the checkout in reach. */
async function lanegauge(...words: string[]): Promise<{ code: number; out: string }> {
  const env = { PATH: process.env['PATH'], LANEGAUGE_HOME: join(folder, 'home') };
  const program = [join(unpacked, '.build/program/cli/main.js'), ...words];
  try {
    const { stdout } = await run(process.execPath, program, { cwd: join(unpacked, 'sample-routes'), env });
    return { code: 0, out: stdout };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
    return { code, out: stdout + stderr };
  }
}

describe('the packed program', () => {
  it('is small, and holds no tests, maps of its source or packages that are in its bundles already', () => {
    const archive = join(folder, 'out', resourcesOf.linux, 'app.asar');
    expect(statSync(archive).size).toBeLessThan(15 * MB);
    const names = asar.listPackage(archive, { isPack: false });
    expect(names.filter((name) => /\.(map|ts|tsx|mts|cts)$|\.test\.|\/tests?\//.test(name))).toEqual([]);
    const packages = readdirSync(join(unpacked, 'node_modules')).sort();
    expect(packages).toEqual(['gpxparser', 'jsdom', 'jsdom-global', 'opening_hours', 'suncalc']);
  });

  it('checks the sample drive in the terminal', async () => {
    const drive = ['--route', 'drives/barred.gpx', '--vehicle', 'vehicles/coach-built-7.4.json'];
    const { code, out } = await lanegauge(
      'check',
      ...drive,
      '--map',
      'district.osm.pbf',
      '--leave',
      '2026-08-01T09:30',
    );
    expect(out).toMatch(/^BARRED: /);
    expect(code).toBe(1);
  });

  it('takes a map in on its threads', async () => {
    const { code, out } = await lanegauge('shelf', 'import', 'district.osm.pbf');
    expect({ code, out }).toMatchObject({ code: 0 });
  });

  it('serves its window, and checks in it on the thread that reads maps', async () => {
    const env = { PATH: process.env['PATH'], LANEGAUGE_HOME: join(folder, 'home'), CI: 'true' };
    const start = join(unpacked, '.build/program/cli/start.js');
    const child = spawn(process.execPath, [start], { env, stdio: ['ignore', 'pipe', 'pipe'] });
    const ended = new Promise((done) => child.once('close', done));
    let said = '';
    const address = await new Promise<string>((found, failed) => {
      const listen = (data: Buffer) => {
        said += String(data);
        const told = /^http:\/\/127\.0\.0\.1:\d+\//m.exec(said);
        if (told && said.includes('BARRED: ')) found(told[0]);
      };
      child.stdout.on('data', listen);
      child.stderr.on('data', listen);
      child.once('close', () => failed(new Error(`The packed program ended:\n${said}`)));
    });
    const page = await fetch(address);
    child.kill('SIGTERM');
    await ended;
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Lanegauge');
  });

  it.each([
    ['Linux', 'linux-unpacked/lanegauge'],
    ['Windows', 'win-unpacked/Lanegauge.exe'],
    ['macOS', 'mac/Lanegauge.app'],
  ])('has its fuses set on %s', async (_, program) => {
    const wire = await getCurrentFuseWire(join(folder, 'out', program));
    const on = (name: string) => wire[FuseV1Options[name]!] === ON;
    expect(['OnlyLoadAppFromAsar', 'EnableEmbeddedAsarIntegrityValidation'].map(on)).toEqual([true, true]);
    expect(['RunAsNode', 'EnableNodeCliInspectArguments'].map(on)).toEqual([false, false]);
  });

  it('brings the licence of every package that is in it', () => {
    const licences = join(folder, 'out', resourcesOf.linux, 'licences');
    const told = ['program.txt', 'window.txt']
      .map((name) => readFileSync(join(licences, name), 'utf8'))
      .join();
    for (const name of ['gpxparser', 'leaflet', 'opening_hours', 'preact', 'saxes', 'suncalc', 'zod'])
      expect(told).toMatch(new RegExp(`^${name} \\d`, 'm'));
    expect(told).toContain('GNU LESSER GENERAL PUBLIC LICENSE');
    expect(readFileSync(join(licences, 'gpl-3.0.txt'), 'utf8')).toContain('GNU GENERAL PUBLIC LICENSE');
  });

  it('leaves the part that its user may replace outside the archive, on every system', () => {
    for (const resources of [...Object.values(resourcesOf), 'mac/Lanegauge.app/Contents/Resources']) {
      const part = join(folder, 'out', resources, 'app.asar.unpacked/node_modules/opening_hours');
      expect(existsSync(join(part, 'build/opening_hours.js'))).toBe(true);
      expect(existsSync(join(part, 'LICENSES/LGPL-3.0-only.txt'))).toBe(true);
    }
  });
});
