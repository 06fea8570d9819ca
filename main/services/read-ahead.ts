import type { DriveReport } from '../../geo/report/report.ts';
import type { Result } from '../../geo/result.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import type { Engine } from './engine/engine.ts';
import type { NamedFile } from './engine/protocol.ts';

/** What a page that has nothing else to show asks for. */
export interface Ahead {
  readonly map: NamedFile;
  readonly drive: NamedFile;
  readonly vehicle: VehicleCard;
  readonly country: string;
  /** when, as a moment in ISO 8601 */
  readonly made: string;
}

/**
 * Checks a drive in the engine while no page has asked for it: the page then finds the map open, and the code that
 * reads, follows and checks has been run.
 */
export async function readAhead(
  engine: Engine,
  { map, drive, ...check }: Ahead,
  signal: AbortSignal,
): Promise<Result<DriveReport>> {
  const hooks = { signal, onProgress: () => {} };
  const opened = await engine.ask('openMap', { file: map }, hooks);
  if (!opened.ok) return opened;
  const followed = await engine.ask('openDrive', { driveId: AHEAD, file: drive }, hooks);
  return followed.ok ? engine.ask('check', { driveId: AHEAD, ...check }, hooks) : followed;
}

/** The engine's own name for the drive: pages are given others. */
const AHEAD = 'ahead';
