import type { DriveReport } from '../../geo/report/report.ts';
import { ok, type Result } from '../../geo/result.ts';
import type { Settings } from '../contract/settings.ts';
import {
  type CheckHooks,
  type CheckOutcome,
  type CheckRequest,
  checkFromFiles,
} from '../services/check-drive.ts';
import type { HandedOver } from '../services/hand-over/hand-over.ts';
import type { KnownOf } from '../services/handed/known-of.ts';
import { PLAIN } from './paint.ts';
import { printReport } from './print-report.ts';

/** A check to make: everything in it can be handed to a thread. */
export interface CheckWork {
  readonly request: CheckRequest;
  /** which files are wanted too: the report's, or all that the driver takes along */
  readonly files: 'none' | 'report' | 'hand over';
  /** of a handing-over: what the library knows of the drive and the vehicle */
  readonly known?: KnownOf;
  /** the firm's own on the sheet */
  readonly own?: Pick<Settings, 'firm' | 'before'>;
}

export interface CheckDone {
  readonly report: DriveReport;
  /** text by file name */
  readonly files: Readonly<Record<string, string>>;
  /** only of a handing-over */
  readonly handedOver?: Pick<HandedOver, 'number' | 'toPrint' | 'facts'> & Pick<CheckOutcome, 'route'>;
}

const FILE_WIDTH = 100;

/** Makes a check, and the files of its report where they are wanted. */
export async function makeCheck(
  { request, files, known, own }: CheckWork,
  hooks: CheckHooks,
): Promise<Result<CheckDone>> {
  const checked = await checkFromFiles(request, hooks);
  if (!checked.ok) return checked;
  const { report } = checked.value;
  if (files === 'none') return ok({ report, files: {} });
  if (files === 'hand over') return handOverChecked(checked.value, request, { known, own }, hooks);
  // a large geometry library stands behind it, which a plain check need not wait for
  const { reportFiles } = await import('../services/export/report-files.ts');
  const written = reportFiles(checked.value, printReport(report, FILE_WIDTH, PLAIN));
  return written.ok ? ok({ report, files: written.value }) : written;
}

async function handOverChecked(
  outcome: CheckOutcome,
  request: CheckRequest,
  { known, own }: { readonly known: KnownOf | undefined; readonly own: CheckWork['own'] },
  hooks: CheckHooks,
): Promise<Result<CheckDone>> {
  const [{ handOver }, { turnOffsFromFiles }, { factsOfCheck }] = await Promise.all([
    import('../services/hand-over/hand-over.ts'),
    import('../services/way-round/turn-offs-from-files.ts'),
    import('../services/handed/facts-of-check.ts'),
  ]);
  hooks.onProgress?.('looking for places to turn off');
  const turnOffs = await turnOffsFromFiles(request, outcome.check, outcome.report, hooks.signal);
  if (!turnOffs.ok) return turnOffs;
  hooks.onProgress?.('drawing the sheet');
  const facts = await factsOfCheck(outcome, request, known);
  if (!facts.ok) return facts;
  const handed = await handOver({ ...outcome, turnOffs: turnOffs.value, facts: facts.value, ...own });
  if (!handed.ok) return handed;
  const { files, ...rest } = handed.value;
  return ok({ report: outcome.report, files, handedOver: { ...rest, route: outcome.route } });
}
