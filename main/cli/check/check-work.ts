import type { DriveReport } from '../../../geo/report/report.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { type CheckHooks, checkFromFiles } from '../../services/check-drive.ts';
import type { HandedFromFiles, HandOverWork } from '../../services/hand-over/hand-over-from-files.ts';
import { PLAIN } from '../paint.ts';
import { printReport } from '../print-report.ts';

/** A check to make: everything in it can be handed to a thread. */
export interface CheckWork extends Pick<HandOverWork, 'request' | 'known' | 'own'> {
  /** which files are wanted too: the report's, or all that the driver takes along */
  readonly files: 'none' | 'report' | 'hand over';
}

export interface CheckDone {
  readonly report: DriveReport;
  /** text by file name */
  readonly files: Readonly<Record<string, string>>;
  /** only of a handing-over */
  readonly handedOver?: Pick<HandedFromFiles, 'number' | 'toPrint' | 'facts' | 'route' | 'say'>;
}

const FILE_WIDTH = 100;

/** Makes a check, and the files of its report where they are wanted. */
export async function makeCheck(
  { files, ...work }: CheckWork,
  hooks: CheckHooks,
): Promise<Result<CheckDone>> {
  if (files === 'hand over') {
    const { handOverFromFiles } = await import('../../services/hand-over/hand-over-from-files.ts');
    const handed = await handOverFromFiles(work, hooks);
    if (!handed.ok) return handed;
    const { report, files: made, ...handedOver } = handed.value;
    return ok({ report, files: made, handedOver });
  }
  const checked = await checkFromFiles(work.request, hooks);
  if (!checked.ok) return checked;
  const { report } = checked.value;
  if (files === 'none') return ok({ report, files: {} });
  // a large geometry library stands behind it, which a plain check need not wait for
  const { reportFiles } = await import('../../services/export/report-files.ts');
  const written = reportFiles(checked.value, printReport(report, FILE_WIDTH, PLAIN));
  return written.ok ? ok({ report, files: written.value }) : written;
}
