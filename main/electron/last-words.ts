import { app, dialog } from 'electron';
import { sayThrown } from '../say-thrown.ts';

/** The exit code of a program that could not do its work. */
const EXIT_FAILED = 2;

/** Ends the program on what nobody caught, with a sentence where the user sees it and on the error stream. */
export function endWith(thrown: unknown): void {
  const sentence = sayThrown(thrown);
  process.stderr.write(`lanegauge: ${sentence}\n`);
  dialog.showErrorBox('Lanegauge', sentence);
  app.exit(EXIT_FAILED);
}
