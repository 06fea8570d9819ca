import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import { isPlanned } from '../../../geo/day/is-planned.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { given } from '../../../geo/given.ts';
import { loadResult } from '../../../geo/load/load-result.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { PROGRAM } from '../../version.ts';
import type { OpenDrive } from './drive-for-page.ts';
import type { EngineCalls } from './protocol.ts';
import { type EngineState, findDrive } from './state.ts';

/** A check as it is asked of the engine. */
export type CheckAsked = Omit<EngineCalls['check']['request'], 'driveId'>;

/** What a check of a drive is made of, the time it leaves apart. */
export function checkInputOf(
  { route, file, notes, unread, swapped, stops }: OpenDrive,
  { vehicle, load, margins, units, country, day, made, localNotes }: CheckAsked,
  lookUp: () => void,
): Result<Omit<CheckInput, 'drive' | 'roads' | 'leaving'>> {
  const loaded = load === undefined ? undefined : loadResult(vehicle, load.items);
  if (loaded?.ok === false) return loaded;
  return ok({
    route,
    file,
    card: vehicle,
    ...given({ load: loaded?.value, country, margins, units, day, localNotes, swapped, stops }),
    // once another is planned, the one that was kept counts no more
    notes: unread === undefined || (day && isPlanned(day)) ? notes : [...notes, unread],
    program: PROGRAM,
    made,
    lookUp,
  });
}

export function checkOpenDrive(
  state: EngineState,
  { driveId, ...asked }: CheckAsked & { readonly driveId: string },
  lookUp: () => void,
): Result<DriveReport> {
  const found = findDrive(state, driveId);
  if (!found.ok) return found;
  const { drive, roads } = found.value;
  const { leaveAt, country } = asked;
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads, country);
  if (leaving?.ok === false) return leaving;
  const input = checkInputOf(found.value, asked, lookUp);
  if (!input.ok) return input;
  return ok(checkDrive({ ...input.value, drive, roads, ...given({ leaving: leaving?.value }) }));
}
