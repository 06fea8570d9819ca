import { app, dialog } from 'electron';
import { sayThrown } from '../say-thrown.ts';
import type { ProgramLog } from './program-log.ts';

/** The exit code of a program that could not do its work. */
const EXIT_FAILED = 2;

/** Ends the program on what nobody caught, with a sentence where the user sees it, on the error stream and in the log. */
export function endWith(log: ProgramLog, thrown: unknown): void {
  const sentence = sayThrown(thrown);
  log.note('ended', thrown);
  process.stderr.write(`lanegauge: ${sentence}\n`);
  dialog.showErrorBox('Lanegauge', sentence);
  app.exit(EXIT_FAILED);
}
