import { type ChildProcess, fork } from 'node:child_process';
import { rm, stat } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { fail, type Problem, type Result } from '../../../../geo/result.ts';
import type { PartMeta } from '../../../../geo/shelf/part-meta.ts';
import { quote } from '../../../../geo/units/text.ts';
import { builtFile } from '../../built-file.ts';
import type { ImportHooks, ImportSource } from '../import/import-part.ts';
import type { ImportProgress } from '../import/progress.ts';

/**
 * How glibc's allocator is to keep memory that was given back to it. Left alone it raises both figures to tens of
 * megabytes and keeps as much for every thread that has ended: measured on 400 MB of map, 225 MB at the end in place of
 * 145. It reads them when a program starts and at no other time; other systems know none of them.
 */
export const FRUGAL = {
  MALLOC_ARENA_MAX: '2',
  MALLOC_MMAP_THRESHOLD_: '1048576',
  MALLOC_TRIM_THRESHOLD_: '1048576',
};

/** The same below which an import keeps its threads: what a program of its own leaves free is little. */
const LARGE_BYTES = 150e6;

/** What a program of its own is told. */
export interface AskedApart {
  readonly source: ImportSource;
  readonly outFile: string;
  readonly tempFolder: string;
}

/** What it tells. */
export type ToldApart =
  | { readonly kind: 'progress'; readonly progress: ImportProgress }
  | { readonly kind: 'ended'; readonly result: Result<PartMeta> }
  | { readonly kind: 'thrown'; readonly error: unknown };

/**
 * Whether a file is better taken in by a program of its own: a large one, where there is a Node to start. Electron's
 * program is none.
 */
export async function wantsApart(
  path: string,
  versions: Readonly<Record<string, string | undefined>> = process.versions,
): Promise<boolean> {
  if (versions['electron'] !== undefined) return false;
  const found = await stat(path).catch(() => undefined);
  return (found?.size ?? 0) > LARGE_BYTES;
}

/**
 * As `importPart`, in a program of its own, whose memory goes back to the system with it. It ends with the signal, and
 * when this program does, however that came about.
 * @returns undefined where no program could be started
 */
export async function importApart(
  asked: AskedApart,
  { onProgress, signal }: ImportHooks,
  env: Readonly<Record<string, string | undefined>> = process.env,
): Promise<Result<PartMeta> | undefined> {
  const { source, outFile, tempFolder } = asked;
  const child = fork(fileURLToPath(builtFile('services/shelf/apart/program.js')), {
    serialization: 'advanced',
    execArgv: [],
    env: { ...FRUGAL, ...env },
  });
  const end = () => void child.kill('SIGKILL');
  if (signal?.aborted) end();
  signal?.addEventListener('abort', end, { once: true });
  try {
    const told = await hear(child, asked, onProgress);
    if (told === 'never started') return undefined;
    if (signal?.aborted || told.kind === 'gone') {
      await rm(outFile, { force: true });
      await rm(tempFolder, { recursive: true, force: true });
    }
    if (signal?.aborted) return fail('cancelled', 'Cancelled.');
    if (told.kind === 'gone') return { ok: false, error: sayGone(source.name, told.how) };
    if (told.kind === 'thrown') throw told.error;
    return told.result;
  } finally {
    signal?.removeEventListener('abort', end);
  }
}

type Ending = Exclude<ToldApart, { kind: 'progress' }> | { readonly kind: 'gone'; readonly how: string };

/** Waits until the program has ended, so that nothing writes any more. */
function hear(
  child: ChildProcess,
  asked: AskedApart,
  onProgress: ImportHooks['onProgress'],
): Promise<Ending | 'never started'> {
  return new Promise((resolve) => {
    let ending: Ending | undefined;
    child
      .on('message', (told: ToldApart) => {
        if (told.kind === 'progress') onProgress?.(told.progress);
        else ending = told;
      })
      .on('error', () => {
        if (child.pid === undefined) resolve('never started');
      })
      .on('close', (code, name) => resolve(ending ?? { kind: 'gone', how: name ?? `code ${code}` }));
    // one that has gone already hears nothing: it is told by its end
    child.send(asked, () => {});
  });
}

function sayGone(name: string, how: string): Problem {
  return {
    code: 'shelf.import-ended',
    message: `The program that was taking in ${quote(name)} ended before it was done (${how}): it was ended from outside, or the computer ran short of memory. What was on the shelf stays as it was. Close what else is open, and import it again.`,
  };
}
