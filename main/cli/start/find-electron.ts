import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/**
 * The Electron program, if it has been downloaded. Only files are looked at: loading the package itself would start
 * a download.
 * @param folder the package's folder; by default the one installed
 */
export function findElectron(folder = installed()): string | undefined {
  if (folder === undefined) return undefined;
  try {
    const program = join(folder, 'dist', readFileSync(join(folder, 'path.txt'), 'utf8').trim());
    return existsSync(program) ? program : undefined;
  } catch {
    return undefined;
  }
}

/** The installer that comes with Electron's package and fetches its program, if the package is there. */
export function electronInstaller(folder = installed()): string | undefined {
  const script = folder === undefined ? undefined : join(folder, 'install.js');
  return script !== undefined && existsSync(script) ? script : undefined;
}

function installed(): string | undefined {
  try {
    return dirname(createRequire(import.meta.url).resolve('electron/package.json'));
  } catch {
    return undefined;
  }
}

/** Whether a window could be shown at all. */
export function hasDisplay(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  return Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY']);
}
