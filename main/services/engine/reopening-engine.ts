import type { Result } from '../../../geo/result.ts';
import type { Engine } from './engine.ts';
import { keepDrive } from './open-drives.ts';
import type { EngineCallName, EngineCalls, EngineHooks } from './protocol.ts';

type RequestTo<K extends EngineCallName> = EngineCalls[K]['request'];

/** What the thread was last asked to open, and would have to open again. */
interface Opened {
  map: RequestTo<'openMap'> | undefined;
  readonly drives: Map<string, RequestTo<'openDrive'>>;
}

/** What each call, gone well, leaves open. */
const REMEMBER: { readonly [K in EngineCallName]: (opened: Opened, request: RequestTo<K>) => void } = {
  openMap(opened, request) {
    opened.map = request;
    // a drive is followed on one map
    opened.drives.clear();
  },
  openDrive: ({ drives }, request) => keepDrive(drives, request.driveId, request),
  check() {},
  tile() {},
  strip() {},
  wayRound() {},
  services() {},
  findPlaces() {},
  roadAt() {},
  notesForMappers() {},
  // a changed drive is gone with its thread: it was never a file
  takeWay() {},
  planDrive() {},
  handOver() {},
  handOverFile() {},
  sheetAgain() {},
  // what was held is gone with its thread: then there is nothing to compare with
  holdShelf() {},
  compareHeld() {},
};

/**
 * An engine that survives its thread: what was open is opened again when a new thread does not know it.
 * The page then notices only that the answer took longer.
 */
export function reopeningEngine(engine: Engine): Engine {
  const opened: Opened = { map: undefined, drives: new Map() };
  return {
    ask: (name, request, hooks) => askAgain(engine, opened, [name, request, hooks]),
    warm: () => engine.warm(),
    close: () => engine.close(),
  };
}

async function askAgain<K extends EngineCallName>(
  engine: Engine,
  opened: Opened,
  [name, request, hooks]: readonly [K, RequestTo<K>, EngineHooks],
): Promise<Result<EngineCalls[K]['value']>> {
  let result = await engine.ask(name, request, hooks);
  // once for the map, once for the drive
  for (let left = 2; left > 0 && !result.ok && !hooks.signal.aborted; left--) {
    const driveId = 'driveId' in request ? request.driveId : undefined;
    if (!(await reopen(engine, opened, { code: result.error.code, driveId, hooks }))) break;
    result = await engine.ask(name, request, hooks);
  }
  if (result.ok) REMEMBER[name](opened, request);
  return result;
}

interface Missing {
  /** what the thread said it does not have */
  readonly code: string;
  /** the drive it was asked about */
  readonly driveId: string | undefined;
  readonly hooks: EngineHooks;
}

/** @returns whether something was opened again */
async function reopen(engine: Engine, opened: Opened, { code, driveId, hooks }: Missing): Promise<boolean> {
  if (code === 'no-map' && opened.map) return (await engine.ask('openMap', opened.map, hooks)).ok;
  const drive = driveId === undefined ? undefined : opened.drives.get(driveId);
  if (code !== 'no-drive' || !drive) return false;
  const again = await engine.ask('openDrive', drive, hooks);
  if (again.ok) return true;
  return (
    again.error.code === 'no-map' &&
    (await reopen(engine, opened, { code: 'no-map', driveId: undefined, hooks }))
  );
}
