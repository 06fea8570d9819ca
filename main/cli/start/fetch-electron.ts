import { spawn } from 'node:child_process';
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { messageOf } from '../../services/files/system-error.ts';

const LOOK_EVERY_MS = 500;
const LONGEST_SAID = 160;

export interface FetchOptions {
  /** Electron's own installer, a script */
  readonly installer: string;
  /** how long it may take in all */
  readonly limitMs: number;
  readonly signal: AbortSignal;
  /** called now and then with what has come so far */
  onBytes(bytes: number): void;
}

/**
 * Lets Electron's own installer fetch its program. Nothing of a fetch that failed or was given up is left behind.
 * @returns nothing, or why it did not come
 */
export async function fetchElectron(options: FetchOptions): Promise<Result<void>> {
  // the installer downloads into the folder for temporary files: one of our own shows how far it is
  const scratch = await mkdtemp(join(tmpdir(), 'lanegauge-electron-'));
  const looking = setInterval(() => void sizeOf(scratch).then(options.onBytes), LOOK_EVERY_MS);
  try {
    return await install(options, scratch);
  } finally {
    clearInterval(looking);
    await rm(scratch, { recursive: true, force: true, maxRetries: 5 });
  }
}

function install({ installer, limitMs, signal }: FetchOptions, scratch: string): Promise<Result<void>> {
  const limit = AbortSignal.timeout(limitMs);
  const child = spawn(process.execPath, [installer], {
    env: { ...process.env, TMPDIR: scratch, TEMP: scratch, TMP: scratch },
    stdio: ['ignore', 'ignore', 'pipe'],
    signal: AbortSignal.any([limit, signal]),
    killSignal: 'SIGKILL',
  });
  let said = '';
  child.stderr.on('data', (data: Buffer) => {
    if (said.length < LONGEST_SAID) said += data.toString();
  });
  return new Promise((resolve) => {
    child.on('error', (error) => {
      if (signal.aborted) resolve(fail('stopped', 'it was stopped'));
      else if (limit.aborted)
        resolve(fail('slow', `it did not come within ${Math.round(limitMs / 60_000)} minutes`));
      else resolve(fail('start', messageOf(error)));
    });
    child.on('close', (code) => {
      const [first = ''] = said.trim().split('\n');
      resolve(
        code === 0 ? ok(undefined) : fail('failed', first.slice(0, LONGEST_SAID) || `exit code ${code}`),
      );
    });
  });
}

async function sizeOf(folder: string): Promise<number> {
  let bytes = 0;
  try {
    for (const file of await readdir(folder, { recursive: true })) {
      const there = await stat(join(folder, file));
      if (there.isFile()) bytes += there.size;
    }
  } catch {
    // it is written to while it is looked at
  }
  return bytes;
}
