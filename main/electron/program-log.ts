import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { PROGRAM } from '../version.ts';

/** Then a new file is begun; the one before is kept beside it. */
const MOST_BYTES = 512 * 1024;
const MOST_FRAMES = 12;

/** What went wrong in the program, for whoever mends it. */
export interface ProgramLog {
  readonly path: string;
  /**
   * Adds an entry. Of an error its kind and where it arose are kept, never its words: they may name the user's files.
   * @param what in our own words, with nothing of the user's
   */
  note(what: string, thrown?: unknown): void;
}

/** The log in the folder of the user's own files. What cannot be written is lost: it must not stop the program as well. */
export function openLog(folder: string, now: () => Date): ProgramLog {
  const path = join(folder, 'lanegauge.log');
  return {
    path,
    note(what, thrown) {
      const head = `${now().toISOString()} ${PROGRAM} ${process.platform} ${what}`;
      try {
        mkdirSync(folder, { recursive: true });
        makeRoom(path);
        // at once and not later: the program may be about to end
        appendFileSync(path, `${[head, ...tell(thrown)].join('\n')}\n`, { mode: 0o600 });
      } catch {}
    },
  };
}

function makeRoom(path: string): void {
  const size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  if (size > MOST_BYTES) renameSync(path, `${path}.before`);
}

function tell(thrown: unknown): string[] {
  if (thrown === undefined) return [];
  if (!(thrown instanceof Error)) return ['  (no error)'];
  const code = 'code' in thrown && typeof thrown.code === 'string' ? ` ${thrown.code}` : '';
  const frames = (thrown.stack ?? '').split('\n').filter((line) => /^\s+at /u.test(line));
  return [`  ${thrown.name}${code}`, ...frames.slice(0, MOST_FRAMES).map((line) => `  ${line.trim()}`)];
}
