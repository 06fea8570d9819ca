import { standsIn } from './arguments.ts';
import { COLOURED, type Paint, PLAIN } from './paint.ts';
import { type Progress, progressOn } from './progress.ts';

/** What a command may do with the outside. */
export interface Terminal {
  out(text: string): void;
  /** one sentence on the error stream */
  complain(sentence: string): void;
  readonly progress: Progress;
  readonly paint: Paint;
  readonly width: number;
  /** the folder relative paths start from */
  readonly folder: string;
  /** fires on Ctrl-C */
  readonly signal: AbortSignal;
  now(): Date;
}

const WIDTH_WITHOUT_TERMINAL = 100;
const WIDEST = 120;

/** The exit code of a program stopped by Ctrl-C (128 + SIGINT). */
export const EXIT_INTERRUPTED = 130;

/** The terminal this process runs in; Ctrl-C aborts its signal, a second one ends the process. */
export function thisTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  const stop = new AbortController();
  process.once('SIGINT', () => {
    stop.abort();
    // a second Ctrl-C, or work that does not listen, ends the program at once
    process.once('SIGINT', () => process.exit(EXIT_INTERRUPTED));
  });
  // a closed pipe (`… | head`) is the reader's choice, not an error
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  return {
    out: (text) => void stdout.write(text),
    complain: (sentence) => void stderr.write(`lanegauge: ${sentence}\n`),
    progress: progressOn(stderr, () => performance.now()),
    paint: stdout.isTTY === true && env['NO_COLOR'] === undefined ? COLOURED : PLAIN,
    width: Math.min(stdout.columns ?? WIDTH_WITHOUT_TERMINAL, WIDEST),
    folder: standsIn(env, process.cwd()),
    signal: stop.signal,
    now: () => new Date(),
  };
}
