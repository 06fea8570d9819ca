import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BrowserWindow, type PrintToPDFOptions } from 'electron';
import { fail, ok, type Result } from '../../geo/result.ts';
import { messageOf } from '../services/files/system-error.ts';

const LONGEST_MS = 30_000;

/** The sheet's own style names paper and margins; without these Electron takes Letter and a centimetre of its own. Inches. */
const HOW: PrintToPDFOptions = {
  preferCSSPageSize: true,
  printBackground: true,
  displayHeaderFooter: false,
  margins: { top: 0, bottom: 0, left: 0, right: 0 },
};

/** A drive sheet as PDF, by the browser that the program itself is: in a window that nobody sees, without scripts. */
export async function printSheet(
  html: string,
  signal: AbortSignal,
  longestMs = LONGEST_MS,
): Promise<Result<Uint8Array>> {
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-print-'));
  const window = new BrowserWindow({
    show: false,
    webPreferences: { sandbox: true, javascript: false, partition: 'print', spellcheck: false },
  });
  try {
    const page = join(folder, 'sheet.html');
    await writeFile(page, html);
    const late = AbortSignal.any([signal, AbortSignal.timeout(longestMs)]);
    const given = new Promise<never>((_, reject) => {
      const giveUp = () => reject(new Error('it took too long or was cancelled'));
      // a signal that has fired already tells nobody again
      if (late.aborted) giveUp();
      else late.addEventListener('abort', giveUp, { once: true });
    });
    const print = async () => {
      await window.loadFile(page);
      return window.webContents.printToPDF(HOW);
    };
    return ok(await Promise.race([print(), given]));
  } catch (error) {
    return fail(
      'not printed',
      `sheet.pdf is not made: ${messageOf(error)}. Print sheet.html from a browser.`,
    );
  } finally {
    window.destroy();
    await rm(folder, { recursive: true, force: true }).catch(() => {});
  }
}
