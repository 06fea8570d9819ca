import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findElectron, hasDisplay } from '../../../main/cli/start/find-electron.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const electron = findElectron();
const display = hasDisplay(process.env, process.platform);
const why =
  electron === undefined
    ? "Electron's program is not on this computer"
    : display
      ? ''
      : 'there is no display';
if (why !== '') console.log(`the window in a real Electron: not run, ${why}`);

describe.skipIf(why !== '')('the window in a real Electron', () => {
  it('opens on its own scheme, without Node and without an error', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'lanegauge-electron-'));
    const program = await _electron.launch({
      executablePath: electron ?? '',
      args: [ROOT, `--user-data-dir=${folder}`, ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
      env: { ...(process.env as Record<string, string>), LANEGAUGE_HOME: join(folder, 'data') },
    });
    try {
      const page = await program.firstWindow();
      const errors: string[] = [];
      page.on('pageerror', (error) => errors.push(String(error)));
      await page.waitForSelector('h1', { state: 'attached' });
      expect(page.url()).toBe('app://lanegauge/');
      expect(await page.evaluate('[typeof require, typeof process, typeof window.host]')).toEqual([
        'undefined',
        'undefined',
        'object',
      ]);
      expect(errors).toEqual([]);
    } finally {
      await program.close();
      // what it keeps in the background may come between
      await rm(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 50 });
    }
  });
});
