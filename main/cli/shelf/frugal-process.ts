import { spawn } from 'node:child_process';
import { statSync } from 'node:fs';
import { EXIT_UNUSABLE } from '../terminal.ts';

/** The same below which an import keeps its threads: what these leave is little. */
const LARGE_BYTES = 150e6;

/**
 * How glibc's allocator is to keep memory that was given back to it. Left alone it raises both figures to tens of
 * megabytes and keeps as much for every thread that has ended: measured on 400 MB of map, 225 MB at the end in place of
 * 145. It reads them when a program starts and at no other time.
 */
export const FRUGAL = {
  MALLOC_ARENA_MAX: '2',
  MALLOC_MMAP_THRESHOLD_: '1048576',
  MALLOC_TRIM_THRESHOLD_: '1048576',
};

/** What of a process tells whether it has a choice. */
interface Host {
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly versions: Readonly<Record<string, string | undefined>>;
}

/** Whether an import of these files is better done by a program started anew with a frugal allocator. */
export function wantsFrugal(paths: readonly string[], { platform, env, versions }: Host = process): boolean {
  if (platform !== 'linux' || versions['electron'] !== undefined) return false;
  if (Object.keys(FRUGAL).some((name) => env[name] !== undefined)) return false;
  return paths.some((path) => (statSync(path, { throwIfNoEntry: false })?.size ?? 0) > LARGE_BYTES);
}

/**
 * Runs this very command in a program of its own with a frugal allocator. It writes where this one does, is told of
 * Ctrl-C, and ends when this one is gone, however that came about.
 * @returns its exit code
 */
export function runFrugally(signal: AbortSignal): Promise<number> {
  const child = spawn(process.execPath, [...process.execArgv, ...process.argv.slice(1)], {
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
    env: { ...process.env, ...FRUGAL },
    // Ctrl-C at the terminal would reach it twice: once by itself, once from here
    detached: true,
  });
  const interrupt = () => void child.kill('SIGINT');
  signal.addEventListener('abort', interrupt, { once: true });
  return new Promise<number>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => resolve(code ?? EXIT_UNUSABLE));
  }).finally(() => signal.removeEventListener('abort', interrupt));
}

/** In a program that was started so: ends it when the one that started it is gone. */
export function endWithStarter(): void {
  const started = Object.entries(FRUGAL).every(([name, value]) => process.env[name] === value);
  if (!started || process.send === undefined) return;
  process.once('disconnect', () => process.exit(EXIT_UNUSABLE));
  process.channel?.unref();
}
