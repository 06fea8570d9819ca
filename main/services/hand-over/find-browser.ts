import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The names browsers made of Chromium go by, the plainest first. */
const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'chromium-headless-shell',
];
const ON_MAC = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];
const ON_WINDOWS = ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'];

/** A browser that prints without a window; undefined where none is found. */
export function findBrowser(
  env: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
): string | undefined {
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  const places =
    platform === 'darwin'
      ? [...ON_MAC, ...onPath]
      : platform === 'win32'
        ? ['ProgramFiles', 'ProgramFiles(x86)', 'LocalAppData'].flatMap((name) => {
            const folder = env[name];
            return folder === undefined ? [] : ON_WINDOWS.map((path) => join(folder, path));
          })
        : onPath;
  return places.find((place) => existsSync(place));
}
