import { sayThrown } from '../say-thrown.ts';
import { EXIT_UNUSABLE, type Terminal, thisTerminal } from './terminal.ts';

/**
 * Runs a program in this process's terminal and sets the exit code. What it throws, anywhere, ends it with a sentence
 * and 2: exit code 1, which Node would give it, means that something is barred. Output that cannot be written, as to a
 * closed pipe or a full disk, ends it with 2 and without a word, since there is nowhere to say it.
 */
export async function runProgram(
  run: (words: readonly string[], terminal: Terminal) => Promise<number>,
): Promise<void> {
  const { stdout, stderr } = process;
  const broken = new AbortController();
  const terminal = thisTerminal(broken.signal);
  const giveUp = (): void => {
    process.exitCode = EXIT_UNUSABLE;
    broken.abort();
  };
  for (const stream of [stdout, stderr]) stream.on('error', giveUp);
  process.on('uncaughtException', (error) => {
    terminal.complain(sayThrown(error));
    process.exit(EXIT_UNUSABLE);
  });
  const code = await attempt(() => {
    // paths then mean what they meant to the user, as they were typed
    process.chdir(terminal.folder);
    return run(process.argv.slice(2), terminal);
  }, terminal);
  process.exitCode = broken.signal.aborted ? EXIT_UNUSABLE : code;
}

async function attempt(run: () => Promise<number>, terminal: Terminal): Promise<number> {
  try {
    return await run();
  } catch (error) {
    terminal.progress.clear();
    terminal.complain(sayThrown(error));
    return EXIT_UNUSABLE;
  }
}
