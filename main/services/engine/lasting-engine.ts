import type { Result } from '../../../geo/result.ts';
import type { Engine } from './engine.ts';
import type { EngineCallName, EngineCalls, EngineHooks } from './protocol.ts';

/** Drives kept open at once; the oldest is let go. */
export const DRIVES_MAX = 8;

/**
 * An engine that survives its thread: what was open is opened again when a new thread does not know it.
 * The page then notices only that the answer took longer.
 */
export function lastingEngine(engine: Engine): Engine {
  let map: EngineCalls['openMap']['request'] | undefined;
  const drives = new Map<string, EngineCalls['openDrive']['request']>();

  function remember<K extends EngineCallName>(name: K, request: EngineCalls[K]['request']): void {
    if (name === 'openMap') {
      map = request as EngineCalls['openMap']['request'];
      // a drive is followed on one map
      drives.clear();
    }
    if (name === 'openDrive') {
      const drive = request as EngineCalls['openDrive']['request'];
      drives.set(drive.driveId, drive);
      for (const id of drives.keys()) if (drives.size > DRIVES_MAX) drives.delete(id);
    }
  }

  /** @returns whether something was opened again */
  async function reopen(code: string, request: object, hooks: EngineHooks): Promise<boolean> {
    if (code === 'no-map' && map) return (await engine.ask('openMap', map, hooks)).ok;
    const drive = 'driveId' in request ? drives.get(String(request.driveId)) : undefined;
    if (code !== 'no-drive' || !drive) return false;
    const opened = await engine.ask('openDrive', drive, hooks);
    if (opened.ok) return true;
    return opened.error.code === 'no-map' && (await reopen('no-map', {}, hooks));
  }

  return {
    async ask(name, request, hooks) {
      let result = await engine.ask(name, request, hooks);
      // once for the map, once for the drive
      for (let left = 2; left > 0 && !result.ok && !hooks.signal.aborted; left--) {
        if (!(await reopen(codeOf(result), request, hooks))) break;
        result = await engine.ask(name, request, hooks);
      }
      if (result.ok) remember(name, request);
      return result;
    },
    warm: () => engine.warm(),
    close: () => engine.close(),
  };
}

function codeOf(result: Result<unknown>): string {
  return result.ok ? '' : result.error.code;
}
