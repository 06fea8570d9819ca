import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const USUAL = [
  // without the browser's own screens: the journeys cost a fifth less
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/**
 * The browser that the journeys run in: CHROMIUM_PATH, else where systems put it, else installed on the spot where
 * that needs nobody's leave. Throws one sentence otherwise: a journey that is skipped would look like one that passed.
 */
export function findChromium(): string {
  const named = process.env['CHROMIUM_PATH'] ?? process.env['CHROMIUM'];
  if (named !== undefined) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH names ${named}, and there is no such file.`);
  }
  const found = USUAL.find((path) => existsSync(path));
  if (found !== undefined) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('There is no Chromium here: installing it with apt-get.');
    const run = (...words: string[]) =>
      spawnSync('apt-get', words, {
        stdio: 'ignore',
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      });
    run('update');
    for (const name of ['chromium-headless-shell', 'chromium']) {
      run('install', '-y', '--no-install-recommends', name);
      const installed = USUAL.find((path) => existsSync(path));
      if (installed !== undefined) return installed;
    }
  }
  throw new Error(
    'The browser journeys need Chromium: install it (Debian and Ubuntu: apt-get install chromium), or name one in CHROMIUM_PATH.',
  );
}
