import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BrowserWindow } from 'electron';
import { fail, ok, type Result } from '../../geo/result.ts';
import { messageOf } from '../services/files/system-error.ts';

const LONGEST_MS = 30_000;

/** A drive sheet as PDF, by the browser that the program itself is: in a window that nobody sees, without scripts. */
export async function printSheet(html: string, signal: AbortSignal): Promise<Result<Uint8Array>> {
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-print-'));
  const window = new BrowserWindow({
    show: false,
    webPreferences: { sandbox: true, javascript: false, partition: 'print', spellcheck: false },
  });
  try {
    const page = join(folder, 'sheet.html');
    await writeFile(page, html);
    const late = AbortSignal.any([signal, AbortSignal.timeout(LONGEST_MS)]);
    const given = new Promise<never>((_, reject) => {
      late.addEventListener('abort', () => reject(new Error('it took too long or was cancelled')), {
        once: true,
      });
    });
    const print = async () => {
      await window.loadFile(page);
      return window.webContents.printToPDF({ preferCSSPageSize: true, printBackground: true });
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
