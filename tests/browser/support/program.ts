import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/** Tests and benches, built or not, run from the root. */
const ROOT = resolve('.');
const START = join(ROOT, '.build/program/cli/start.js');
const READY_MS = 120_000;

/** The built program, serving its window to a browser. */
export interface Program {
  /** good for one page */
  readonly address: string;
  stop(): Promise<void>;
}

/**
 * Starts the program as on a machine without a display, with a data folder of its own.
 * @param words after `npm start --`
 */
export async function startProgram(words: readonly string[] = [], folder?: string): Promise<Program> {
  if (!existsSync(START) || !existsSync(join(ROOT, '.build/window/index.html')))
    throw new Error("The program is not built: run 'npm run build' first.");
  const home = folder ?? (await mkdtemp(join(tmpdir(), 'lanegauge-journey-')));
  const env = { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '', LANEGAUGE_HOME: home, INIT_CWD: home };
  const child = spawn(process.execPath, [START, ...words], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  const ended = new Promise<void>((done) => child.once('close', () => done()));
  const address = await new Promise<string>((found, failed) => {
    let said = '';
    const late = setTimeout(
      () => failed(new Error(`The program did not serve its window:\n${said}`)),
      READY_MS,
    );
    const listen = (data: Buffer) => {
      said += data.toString();
      const [, told] = /^(http:\/\/127\.0\.0\.1:\d+\/#\S+)$/m.exec(said) ?? [];
      if (told === undefined) return;
      clearTimeout(late);
      found(told);
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.once('close', () => failed(new Error(`The program ended:\n${said}`)));
  });
  return {
    address,
    async stop() {
      child.kill('SIGTERM');
      await ended;
      if (folder === undefined) await rm(home, { recursive: true, force: true });
    },
  };
}
