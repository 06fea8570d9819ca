import { spawn } from 'node:child_process';
import { fail, ok, type Result } from '../../geo/result.ts';
import { openEngine } from '../services/engine/open-engine.ts';
import { messageOf } from '../services/files/system-error.ts';
import { START_HELP } from './help.ts';
import { runProgram } from './run-program.ts';
import { fetchElectron } from './start/fetch-electron.ts';
import { electronInstaller, findElectron, hasDisplay } from './start/find-electron.ts';
import { ROOT, SAMPLE_WORDS } from './start/sample-words.ts';
import { readStartArguments } from './start/start-arguments.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from './terminal.ts';

/** `npm start`: the window where there can be one, else the same window in the browser. @returns the exit code */
async function start(words: readonly string[], terminal: Terminal): Promise<number> {
  const read = readStartArguments(words, terminal.folder);
  if (!read.ok) return refuse(read.error.message, terminal);
  const { file, once, help } = read.value;
  if (help) {
    terminal.out(START_HELP);
    return 0;
  }
  const display = hasDisplay(process.env, process.platform);
  // whatever the verdict, a start that could print it went well
  if (once) return printOnce(terminal);
  const electron = findElectron();
  if (!display) return serve(terminal, file, { why: 'There is no display', display });
  if (electron !== undefined) return runElectron(electron, file, terminal);
  const fetched = process.env['CI'] ? undefined : await getElectron(terminal);
  if (terminal.signal.aborted) return EXIT_INTERRUPTED;
  if (fetched?.ok) return runElectron(fetched.value, file, terminal);
  const why = fetched ? ` and could not be fetched (${fetched.error.message})` : '';
  return serve(terminal, file, { why: `Electron's program is not on this computer${why}`, display });
}

async function printOnce(terminal: Terminal): Promise<number> {
  (await import('./check/check-thread.ts')).readyCheck();
  const { checkCommand } = await import('./check/check-command.ts');
  return (await checkCommand(SAMPLE_WORDS, terminal)) === 2 ? 2 : 0;
}

const FETCH_LIMIT_MS = 10 * 60_000;

/** Fetches Electron's program, once for all starts to come. */
async function getElectron(terminal: Terminal): Promise<Result<string>> {
  const installer = electronInstaller();
  if (installer === undefined) return fail('absent', 'its package is not installed');
  terminal.out(
    "Electron's program is not on this computer yet: its installer fetches it now, once (about 120 MB). Ctrl-C stops it.\n",
  );
  const fetched = await fetchElectron({
    installer,
    limitMs: FETCH_LIMIT_MS,
    signal: terminal.signal,
    onBytes: (bytes) => terminal.progress.show(`Electron: ${Math.round(bytes / 1e6)} MB have come`),
  });
  terminal.progress.clear();
  if (!fetched.ok) return fetched;
  const program = findElectron();
  return program === undefined ? fail('absent', 'its installer ended without it') : ok(program);
}

function runElectron(program: string, file: string | undefined, terminal: Terminal): Promise<number> {
  const child = spawn(program, [ROOT, ...(file === undefined ? [] : [file])], { stdio: 'inherit' });
  return new Promise((resolve) => {
    child.on('error', (error) => {
      resolve(refuse(`${program} could not be started: ${messageOf(error)}.`, terminal));
    });
    child.on('exit', (code) => resolve(code ?? EXIT_INTERRUPTED));
  });
}

/** The thread that reads maps loads its code while this one loads the rest. */
async function serve(
  terminal: Terminal,
  file: string | undefined,
  where: { readonly why: string; readonly display: boolean },
): Promise<number> {
  const engine = openEngine();
  engine.warm();
  const { serveHere } = await import('./start/serve-here.ts');
  return serveHere(terminal, file, { ...where, engine });
}

await runProgram(start);
