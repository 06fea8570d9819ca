import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { Settings } from '../../contract/settings.ts';
import { type CheckHooks, type CheckOutcome, type CheckRequest, checkFromFiles } from '../check-drive.ts';
import { factsOfCheck } from '../handed/facts-of-check.ts';
import type { KnownOf } from '../handed/known-of.ts';
import { turnOffsFromFiles } from '../way-round/turn-offs-from-files.ts';
import { BARRED } from './barred.ts';
import { type HandedOver, handOver } from './hand-over.ts';

/** A drive in a file and a vehicle to be handed over: everything in it can be handed to a thread. */
export interface HandOverWork {
  readonly request: CheckRequest;
  /** what the library knows of the drive and the vehicle */
  readonly known?: KnownOf | undefined;
  /** the firm's own on the sheet */
  readonly own?: Pick<Settings, 'firm' | 'before'> | undefined;
  /** a barred one is refused (`hand-over.barred`) */
  readonly refuseBarred?: boolean;
}

export interface HandedFromFiles extends HandedOver {
  readonly report: DriveReport;
  readonly route: CheckOutcome['route'];
}

/** Checks anew and makes everything that the driver takes along. Writes nothing. */
export async function handOverFromFiles(
  work: HandOverWork,
  hooks: CheckHooks,
): Promise<Result<HandedFromFiles>> {
  const { request, known, own = {}, refuseBarred = false } = work;
  const checked = await checkFromFiles(request, hooks);
  if (!checked.ok) return checked;
  const outcome = checked.value;
  if (refuseBarred && outcome.report.verdict === 'barred') return BARRED;
  hooks.onProgress?.('looking for places to turn off');
  const { drive, roads, report } = outcome;
  const check = { ...outcome.check, followed: { drive, roads } };
  const turnOffs = await turnOffsFromFiles(request, check, report, hooks.signal);
  if (!turnOffs.ok) return turnOffs;
  hooks.onProgress?.('drawing the sheet');
  const facts = await factsOfCheck(outcome, request, known);
  if (!facts.ok) return facts;
  const handed = await handOver({ ...outcome, turnOffs: turnOffs.value, facts: facts.value, ...own });
  return handed.ok ? ok({ ...handed.value, report: outcome.report, route: outcome.route }) : handed;
}
