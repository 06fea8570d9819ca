import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { given } from '../../geo/given.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import { readAssets } from '../assets.ts';
import { openBrowser } from '../loopback/open-browser.ts';
import { serveWindow } from '../loopback/serve-window.ts';
import { openBackend } from '../services/backend.ts';
import { dataFolder } from '../services/data-folder.ts';
import { openEngine } from '../services/engine/open-engine.ts';
import { messageOf } from '../services/files/system-error.ts';
import { checkCommand } from './check-command.ts';
import { fetchElectron } from './fetch-electron.ts';
import { electronInstaller, findElectron, hasDisplay } from './find-electron.ts';
import { START_HELP } from './help.ts';
import { printReport } from './print-report.ts';
import { runProgram } from './run-program.ts';
import { readStartArguments } from './start-arguments.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from './terminal.ts';

/** The built file lies two folders deeper than its source. */
const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const SAMPLES = join(ROOT, 'sample-routes');

const SAMPLE_WORDS = [
  ...['--route', join(SAMPLES, 'drives', 'barred.gpx')],
  ...['--map', join(SAMPLES, 'district.osm.pbf')],
  ...['--vehicle', join(SAMPLES, 'vehicles', 'coach-built-7.4.json')],
  ...['--country', 'GB'],
];

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
  if (once) return (await checkCommand(SAMPLE_WORDS, terminal)) === 2 ? 2 : 0;
  const electron = findElectron();
  if (!display) return serve(terminal, file, { why: 'There is no display', display });
  if (electron !== undefined) return runElectron(electron, file, terminal);
  const fetched = process.env['CI'] ? undefined : await getElectron(terminal);
  if (terminal.signal.aborted) return EXIT_INTERRUPTED;
  if (fetched?.ok) return runElectron(fetched.value, file, terminal);
  const why = fetched ? ` and could not be fetched (${fetched.error.message})` : '';
  return serve(terminal, file, { why: `Electron's program is not on this computer${why}`, display });
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

async function serve(
  terminal: Terminal,
  file: string | undefined,
  { why, display }: { readonly why: string; readonly display: boolean },
): Promise<number> {
  const backend = await openBackend({
    dataFolder: dataFolder(process.env, process.platform),
    sampleFolder: SAMPLES,
    engine: openEngine(),
    now: terminal.now,
  });
  const opened = file === undefined ? undefined : await backend.openPath(file);
  if (opened && !opened.ok) {
    await backend.close();
    return refuse(opened.error.message, terminal);
  }
  const ahead = opened ? undefined : backend.sampleAhead();
  terminal.out(
    `${why}, so the window is served to a browser on this computer until Ctrl-C, or until its page is closed:\n`,
  );
  const stop = new AbortController();
  process.once('SIGTERM', () => stop.abort());
  const signal = AbortSignal.any([terminal.signal, stop.signal]);
  const keyboard = process.stdin.isTTY ? process.stdin : undefined;
  const opens = display && process.stdout.isTTY && !process.env['CI'];
  const ended = await serveWindow({
    backend,
    assets: await readAssets(join(ROOT, '.build', 'window')),
    say: (line) => terminal.out(`${line}\n`),
    signal,
    ...given({ keyboard }),
    ...(opens ? { open: (address) => openBrowser(address, process.platform) } : {}),
    // another drive's check would be taken for this one's
    ...(opened
      ? {}
      : { meanwhile: () => printSample({ ahead, terminal, signal, canAsk: keyboard !== undefined }) }),
  });
  return ended === 'page gone' || stop.signal.aborted ? 0 : EXIT_INTERRUPTED;
}

interface SamplePrinted {
  /** its check, where it is being made for the page already */
  readonly ahead: Promise<Result<DriveReport>> | undefined;
  readonly terminal: Terminal;
  readonly signal: AbortSignal;
  /** whether somebody can press Enter */
  readonly canAsk: boolean;
}

/** @returns what stands above the address that follows */
async function printSample({ ahead, terminal, signal, canAsk }: SamplePrinted): Promise<string> {
  terminal.out('\n');
  const checked = await ahead;
  if (checked?.ok) terminal.out(printReport(checked.value, terminal.width, terminal.paint));
  else if (!signal.aborted) await checkCommand(SAMPLE_WORDS, { ...terminal, signal });
  return `\nThe window${canAsk ? ' (each address is good for one page and one minute; Enter gives a fresh one)' : ''}:`;
}

await runProgram(start);
