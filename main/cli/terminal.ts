import { printable } from '../../geo/units/text.ts';
import { dataFolder } from '../services/data-folder.ts';
import { standsIn } from './arguments.ts';
import { COLOURED, type Paint, PLAIN } from './paint.ts';
import { type Progress, progressOn } from './progress.ts';

/** What a command may do with the outside. */
export interface Terminal {
  out(text: string): void;
  /** one sentence on the error stream; what it quotes is made safe to show */
  complain(sentence: string): void;
  readonly progress: Progress;
  readonly paint: Paint;
  readonly width: number;
  /** the folder relative paths start from */
  readonly folder: string;
  /** where the user's own files lie, the shelf among them */
  readonly dataFolder: string;
  /** fires on Ctrl-C */
  readonly signal: AbortSignal;
  now(): Date;
}

const WIDTH_WITHOUT_TERMINAL = 100;
const WIDEST = 120;

/** The exit code of a program stopped by Ctrl-C (128 + SIGINT). */
export const EXIT_INTERRUPTED = 130;
/** The exit code where input could not be used, output not be written, or the program itself failed. */
export const EXIT_UNUSABLE = 2;

/** Says why nothing was done. @returns the exit code for it */
export function refuse(sentence: string, terminal: Terminal): number {
  terminal.complain(sentence);
  return EXIT_UNUSABLE;
}

/**
 * The terminal this process runs in. Ctrl-C aborts its signal, a second one ends the process; where nothing asks for
 * the signal, the first does.
 * @param broken fires when output can no longer be written, which ends the work as Ctrl-C does
 */
export function thisTerminal(broken: AbortSignal): Terminal {
  const { stdout, stderr, env } = process;
  let signal: AbortSignal | undefined;
  return {
    out: (text) => void stdout.write(text),
    complain: (sentence) => void stderr.write(`lanegauge: ${printable(sentence)}\n`),
    progress: progressOn(stderr, () => performance.now()),
    paint: stdout.isTTY === true && env['NO_COLOR'] === undefined ? COLOURED : PLAIN,
    width: Math.min(stdout.columns ?? WIDTH_WITHOUT_TERMINAL, WIDEST),
    folder: standsIn(env, process.cwd()),
    dataFolder: dataFolder(env, process.platform),
    get signal() {
      signal ??= AbortSignal.any([broken, onInterrupt()]);
      return signal;
    },
    now: () => new Date(),
  };
}

function onInterrupt(): AbortSignal {
  const stop = new AbortController();
  process.once('SIGINT', () => {
    stop.abort();
    // a second Ctrl-C, or work that does not listen, ends the program at once
    process.once('SIGINT', () => process.exit(EXIT_INTERRUPTED));
  });
  return stop.signal;
}
