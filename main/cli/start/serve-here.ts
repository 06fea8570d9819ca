import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Result } from '../../../geo/result.ts';
import { readAssets } from '../../assets.ts';
import { openBrowser } from '../../loopback/open-browser.ts';
import { serveWindow } from '../../loopback/serve-window.ts';
import { openBackend } from '../../services/backend.ts';
import { dataFolder } from '../../services/data-folder.ts';
import type { Engine } from '../../services/engine/engine.ts';
import { checkCommand } from '../check/check-command.ts';
import { printReport } from '../print-report.ts';
import { EXIT_INTERRUPTED, refuse, type Terminal } from '../terminal.ts';
import { ROOT, SAMPLE_WORDS, SAMPLES } from './sample-words.ts';

export interface ServeAsked {
  /** why there is no window of its own */
  readonly why: string;
  readonly display: boolean;
  /** whose thread is being started */
  readonly engine: Engine;
}

/** Serves the window to a browser on this computer, the sample's check printed meanwhile. @returns the exit code */
export async function serveHere(
  terminal: Terminal,
  file: string | undefined,
  { why, display, engine }: ServeAsked,
): Promise<number> {
  const backend = await openBackend({
    dataFolder: dataFolder(process.env, process.platform),
    sampleFolder: SAMPLES,
    engine,
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
