import type { DriveReport } from '../../geo/report/report.ts';
import { ok, type Result } from '../../geo/result.ts';
import { type CheckHooks, type CheckRequest, checkFromFiles } from '../services/check-drive.ts';
import { PLAIN } from './paint.ts';
import { printReport } from './print-report.ts';

/** A check to make: everything in it can be handed to a thread. */
export interface CheckWork {
  readonly request: CheckRequest;
  /** whether the report's files are wanted too */
  readonly files: boolean;
}

export interface CheckDone {
  readonly report: DriveReport;
  /** text by file name */
  readonly files: Readonly<Record<string, string>>;
}

const FILE_WIDTH = 100;

/** Makes a check, and the files of its report where they are wanted. */
export async function makeCheck(
  { request, files }: CheckWork,
  hooks: CheckHooks,
): Promise<Result<CheckDone>> {
  const checked = await checkFromFiles(request, hooks);
  if (!checked.ok) return checked;
  const { report } = checked.value;
  if (!files) return ok({ report, files: {} });
  // a large geometry library stands behind it, which a plain check need not wait for
  const { reportFiles } = await import('../services/export/report-files.ts');
  const written = reportFiles(checked.value, printReport(report, FILE_WIDTH, PLAIN));
  return written.ok ? ok({ report, files: written.value }) : written;
}
