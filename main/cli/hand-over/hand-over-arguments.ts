import { fail, ok, type Result } from '../../../geo/result.ts';
import { CHECK_OPTIONS, type CheckArguments, checkArgumentsOf } from '../arguments.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';

export interface HandOverArguments extends CheckArguments {
  readonly outFolder: string;
  /** the sheet is wanted as PDF too */
  readonly pdf: boolean;
  /** ids of drives and vehicles in the library, in place of files: each drive with each vehicle */
  readonly fromLibrary?: { readonly drives: readonly string[]; readonly vehicles: readonly string[] };
}

/** Reads the words after `lanegauge hand-over`: those of a check, and where the files go. */
export function readHandOverArguments(words: readonly string[], standsIn: string): Result<HandOverArguments> {
  const read = readWords(words, {
    ...CHECK_OPTIONS,
    several: [...CHECK_OPTIONS.several, 'drive', 'vehicle-id'],
    flags: [...CHECK_OPTIONS.flags, 'pdf'],
  });
  if (!read.ok) return read;
  const { one, all, flag } = read.value;
  const [drives, vehicles] = [all('drive'), all('vehicle-id')];
  const ids = drives.length + vehicles.length > 0;
  if (ids && (one('route') !== undefined || one('vehicle') !== undefined || one('track') !== undefined))
    return fail(
      'usage',
      `--drive and --vehicle-id name what the library has; --route, --track and --vehicle name files. Take one kind. ${USAGE_HINT}`,
    );
  if (ids && (drives.length === 0 || vehicles.length === 0))
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
    ...(ids && { fromLibrary: { drives, vehicles } }),
  });
}
