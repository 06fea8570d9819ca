import { fail, ok, type Result } from '../../../geo/result.ts';
import { CHECK_OPTIONS, type CheckArguments, checkArgumentsOf } from '../arguments.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';

interface HandOverArguments extends CheckArguments {
  readonly outFolder: string;
  /** the sheet is wanted as PDF too */
  readonly pdf: boolean;
  /** ids of drive and vehicle in the library, in place of their files */
  readonly fromLibrary?: { readonly drive: string; readonly vehicle: string };
}

/** Reads the words after `lanegauge hand-over`: those of a check, and where the files go. */
export function readHandOverArguments(words: readonly string[], standsIn: string): Result<HandOverArguments> {
  const read = readWords(words, {
    ...CHECK_OPTIONS,
    once: [...CHECK_OPTIONS.once, 'drive', 'vehicle-id'],
    flags: [...CHECK_OPTIONS.flags, 'pdf'],
  });
  if (!read.ok) return read;
  const { one, flag } = read.value;
  const [drive, vehicle] = [one('drive'), one('vehicle-id')];
  const ids = drive !== undefined || vehicle !== undefined;
  if (ids && (one('route') !== undefined || one('vehicle') !== undefined || one('track') !== undefined))
    return fail(
      'usage',
      `--drive and --vehicle-id name what the library has; --route, --track and --vehicle name files. Take one kind. ${USAGE_HINT}`,
    );
  if (ids && (drive === undefined || vehicle === undefined))
    return fail('usage', `--drive and --vehicle-id go together. ${USAGE_HINT}`);
  const check = checkArgumentsOf(read.value, standsIn, { ids });
  if (!check.ok) return check;
  const { outFolder } = check.value;
  if (outFolder === undefined)
    return fail('usage', `Missing: --out FOLDER, where the files go. ${USAGE_HINT}`);
  return ok({
    ...check.value,
    outFolder,
    pdf: flag('pdf'),
    ...(drive !== undefined && vehicle !== undefined ? { fromLibrary: { drive, vehicle } } : {}),
  });
}
