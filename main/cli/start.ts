import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { given } from '../../geo/given.ts';
import { readAssets } from '../assets.ts';
import { openBrowser } from '../loopback/open-browser.ts';
import { serveWindow } from '../loopback/serve-window.ts';
import { openBackend } from '../services/backend.ts';
import { dataFolder } from '../services/data-folder.ts';
import { openEngine } from '../services/engine/open-engine.ts';
import { checkCommand } from './check-command.ts';
import { findElectron, hasDisplay } from './find-electron.ts';
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
  const { file, once } = read.value;
  const display = hasDisplay(process.env, process.platform);
  const electron = findElectron();
  if (electron !== undefined && display && !once) return runElectron(electron, file, terminal);

  // whatever the verdict, a start that could print it went well
  if (once) return (await checkCommand(SAMPLE_WORDS, terminal)) === 2 ? 2 : 0;
  return serve(terminal, file, { why: sayWhyBrowser({ electron, display }), display });
}

interface Shown {
  readonly electron: string | undefined;
  readonly display: boolean;
}

function sayWhyBrowser({ electron, display }: Shown): string {
  const why = display
    ? "Electron's program is not on this computer ('npx install-electron' fetches it)"
    : electron === undefined
      ? "There is no display, and Electron's program is not on this computer"
      : 'There is no display';
  return `${why}, so the window is served to a browser on this computer until Ctrl-C, or until its page is closed:`;
}

function runElectron(program: string, file: string | undefined, terminal: Terminal): Promise<number> {
  const child = spawn(program, [ROOT, ...(file === undefined ? [] : [file])], { stdio: 'inherit' });
  return new Promise((resolve) => {
    child.on('error', (error) => {
      resolve(refuse(`${program} could not be started (${error.message}).`, terminal));
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
    host: 'browser',
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
  // another drive's check would be taken for this one's
  if (!opened) await checkCommand(SAMPLE_WORDS, terminal);
  if (terminal.signal.aborted) {
    await backend.close();
    return EXIT_INTERRUPTED;
  }
  terminal.out(`\n${why}\n`);
  const stop = new AbortController();
  process.once('SIGTERM', () => stop.abort());
  const keyboard = process.stdin.isTTY ? process.stdin : undefined;
  if (keyboard)
    terminal.out('(Each address is good for one page and one minute; Enter gives a fresh one.)\n');
  const ended = await serveWindow({
    backend,
    assets: await readAssets(join(ROOT, '.build', 'window')),
    say: (line) => terminal.out(`${line}\n`),
    signal: AbortSignal.any([terminal.signal, stop.signal]),
    ...given({ keyboard }),
    ...(display && process.stdout.isTTY ? { open: (address) => openBrowser(address, process.platform) } : {}),
  });
  return ended === 'page gone' || stop.signal.aborted ? 0 : EXIT_INTERRUPTED;
}

await runProgram(start);
