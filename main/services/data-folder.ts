import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where the user's own files lie: settings, fleet, recently opened files. Both hosts use the same one.
 * LANEGAUGE_HOME overrides it.
 */
export function dataFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform, home = homedir()): string {
  const chosen = env['LANEGAUGE_HOME'];
  if (chosen) return chosen;
  if (platform === 'win32') return join(env['APPDATA'] || join(home, 'AppData', 'Roaming'), 'Lanegauge');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Lanegauge');
  return join(env['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'lanegauge');
}
