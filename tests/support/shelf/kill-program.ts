import { spawn } from 'node:child_process';

const PROGRAM = new URL('../../../.build/tests/support/shelf/take-in.js', import.meta.url);
/** The same where this module itself runs built. */
const BUILT = new URL('./take-in.js', import.meta.url);

/** What became of a program that was ended from outside. */
export interface Ended {
  /** whether it had come to its end */
  readonly done: boolean;
  /** since it began its work */
  readonly ms: number;
  /** what it complained of: nothing, where all is well */
  readonly complaint: string;
}

/**
 * Has the program `take-in` work, and kills it so long after it began, however far it is by then.
 * @param killMs left out, it is let finish
 */
export function takeIn(words: readonly string[], killMs?: number): Promise<Ended> {
  const program = import.meta.url.endsWith('.js') ? BUILT : PROGRAM;
  const child = spawn(process.execPath, [program.pathname, ...words]);
  let said = '';
  let complaint = '';
  let began = Number.NaN;
  child.stdout.on('data', (data) => {
    if (said === '') {
      began = performance.now();
      if (killMs !== undefined) setTimeout(() => child.kill('SIGKILL'), killMs);
    }
    said += String(data);
  });
  child.stderr.on('data', (data) => {
    complaint += String(data);
  });
  return new Promise((resolve) => {
    child.once('close', () => {
      const lines = said.split('\n').filter((line) => line !== '' && line !== 'begun');
      const done = lines.includes('done');
      resolve({
        done,
        ms: performance.now() - began,
        complaint: complaint + lines.filter((line) => line !== 'done').join(' '),
      });
    });
  });
}
