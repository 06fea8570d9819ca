import { fail, ok, type Result } from '../../../geo/result.ts';
import { CHECK_OPTIONS, type CheckArguments, checkArgumentsOf } from '../arguments.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';

interface HandOverArguments extends CheckArguments {
  readonly outFolder: string;
  /** the sheet is wanted as PDF too */
  readonly pdf: boolean;
}

/** Reads the words after `lanegauge hand-over`: those of a check, and where the files go. */
export function readHandOverArguments(words: readonly string[], standsIn: string): Result<HandOverArguments> {
  const read = readWords(words, { ...CHECK_OPTIONS, flags: [...CHECK_OPTIONS.flags, 'pdf'] });
  if (!read.ok) return read;
  const check = checkArgumentsOf(read.value, standsIn);
  if (!check.ok) return check;
  const { outFolder } = check.value;
  if (outFolder === undefined)
    return fail('usage', `Missing: --out FOLDER, where the files go. ${USAGE_HINT}`);
  return ok({ ...check.value, outFolder, pdf: read.value.flag('pdf') });
}
