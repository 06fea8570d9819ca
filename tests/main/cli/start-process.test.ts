import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

const START = resolve(import.meta.dirname, '../../../.build/program/cli/start.js');

let folder: string;
let child: ChildProcess | undefined;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-start-'));
});
afterEach(async () => {
  child?.kill('SIGKILL');
  await rm(folder, { recursive: true, force: true });
});

/** Starts the program as on a machine without a display and with nobody at the keyboard. */
function start(...words: string[]) {
  const env = { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '', LANEGAUGE_HOME: folder, INIT_CWD: folder };
  const started = spawn(process.execPath, [START, ...words], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  child = started;
  const said = { out: '', complaint: '' };
  started.stdout.on('data', (data) => {
    said.out += data;
  });
  started.stderr.on('data', (data) => {
    said.complaint += data;
  });
  const code = new Promise<number | null>((done) => started.on('close', done));
  return { said, code, stop: (signal: NodeJS.Signals) => started.kill(signal) };
}

describe.skipIf(process.platform !== 'linux')('npm start without a display', () => {
  it.each([
    ['SIGTERM', 0],
    ['SIGINT', 130],
  ] as const)('says why and where the window is served, until %s', async (signal, exit) => {
    const { said, code, stop } = start();
    await vi.waitFor(() => expect(said.out).toMatch(/http:\/\/127\.0\.0\.1:\d+\/#\S+\n/), 15_000);
    expect(said.out).toMatch(/^There is no display[^\n]*:\nhttp/);
    const address = /http\S+/.exec(said.out.slice(said.out.indexOf('There is no display')))?.[0] ?? '';
    expect((await fetch(new URL('/', address))).status).not.toBe(421);
    stop(signal);
    expect(await code).toBe(exit);
  });

  it('refuses a file that is not there in one sentence', async () => {
    const { said, code } = start('absent.gpx');
    expect(await code).toBe(2);
    expect(said.complaint).toMatch(/^lanegauge: There is no file .*absent\.gpx\..*\n$/);
    expect(said.out).toBe('');
  });

  it('refuses an unknown option in one sentence', async () => {
    const { said, code } = start('--port=80');
    expect([await code, said.out]).toEqual([2, '']);
    expect(said.complaint.split('\n')).toHaveLength(2);
  });
});
