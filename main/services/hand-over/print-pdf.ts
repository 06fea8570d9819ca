import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { messageOf } from '../files/system-error.ts';

/** A browser that has not printed by then never will. */
const LONGEST_MS = 30_000;
const NO_BROWSER =
  'sheet.pdf is not made: no Chromium, Chrome or Edge was found on this computer. Open sheet.html in a browser and print it, or install one of them.';

interface PrintOptions {
  readonly signal?: AbortSignal;
  readonly longestMs?: number;
}

/**
 * A page as PDF, printed by a browser found on this computer, with a profile of its own that is taken away again. The
 * browser asks nobody for anything.
 * @param browser its program, as `findBrowser` finds it
 */
export async function printPdf(
  html: string,
  browser: string | undefined,
  { signal, longestMs = LONGEST_MS }: PrintOptions = {},
): Promise<Result<Uint8Array>> {
  if (browser === undefined) return fail('no browser', NO_BROWSER);
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-print-'));
  try {
    const [page, pdf] = [join(folder, 'sheet.html'), join(folder, 'sheet.pdf')];
    await writeFile(page, html);
    const ended = await run(browser, wordsFor(folder, page, pdf), { longestMs, signal });
    if (ended !== undefined)
      return fail('not printed', `sheet.pdf is not made: ${ended}. Print sheet.html from a browser.`);
    const bytes = await readFile(pdf);
    return bytes.subarray(0, 5).toString('latin1') === '%PDF-'
      ? ok(bytes)
      : fail(
          'not printed',
          'sheet.pdf is not made: the browser wrote something else. Print sheet.html from a browser.',
        );
  } catch (error) {
    return fail(
      'not printed',
      `sheet.pdf is not made: ${messageOf(error)}. Print sheet.html from a browser.`,
    );
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }).catch(() => {});
  }
}

function wordsFor(folder: string, page: string, pdf: string): string[] {
  return [
    '--headless',
    '--disable-gpu',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-extensions',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--host-resolver-rules=MAP * ~NOTFOUND',
    // a browser run by the system's own user starts in no other way
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    `--user-data-dir=${join(folder, 'profile')}`,
    '--no-pdf-header-footer',
    `--print-to-pdf=${pdf}`,
    pathToFileURL(page).href,
  ];
}

/** @returns what went wrong, half a sentence; undefined where it ended well */
function run(
  program: string,
  words: readonly string[],
  { longestMs, signal }: { readonly longestMs: number; readonly signal: AbortSignal | undefined },
): Promise<string | undefined> {
  return new Promise((resolve) => {
    // a group of its own, so that all of its processes can be ended
    const child = spawn(program, words, { stdio: 'ignore', detached: process.platform !== 'win32' });
    const stop = (why: string) => {
      endAll(child);
      resolve(why);
    };
    const onAbort = () => stop('it was cancelled');
    const timer = setTimeout(() => stop('the browser did not answer in time'), longestMs);
    signal?.addEventListener('abort', onAbort, { once: true });
    if (signal?.aborted) onAbort();
    child.once('error', (error) => resolve(`the browser could not be started (${messageOf(error)})`));
    child.once('close', (code) => resolve(code === 0 ? undefined : 'the browser ended with an error'));
    child.once('close', () => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', onAbort);
    });
    child.once('error', () => clearTimeout(timer));
  });
}

function endAll(child: ChildProcess): void {
  if (child.pid === undefined) return;
  try {
    if (process.platform === 'win32') child.kill();
    else process.kill(-child.pid, 'SIGKILL');
  } catch {
    // it has ended by itself
  }
}
