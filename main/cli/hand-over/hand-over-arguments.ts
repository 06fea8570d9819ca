import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { CHECK_OPTIONS, type CheckArguments, checkArgumentsOf } from '../arguments.ts';
import { readWords, USAGE_HINT } from '../read-words.ts';

export interface HandOverArguments extends CheckArguments {
  readonly outFolder: string;
  /** the sheet is wanted as PDF too */
  readonly pdf: boolean;
  /** drives and vehicles of the library, in place of files */
  readonly fromLibrary?: NamedOfLibrary;
}

/** By id or name: each drive with each vehicle, or pair by pair. */
export interface NamedOfLibrary {
  readonly drives: readonly string[];
  readonly vehicles: readonly string[];
  readonly pairs: readonly { readonly drive: string; readonly vehicle: string }[];
}

/** Reads the words after `lanegauge hand-over`: those of a check, and where the files go. */
export function readHandOverArguments(words: readonly string[], standsIn: string): Result<HandOverArguments> {
  const read = readWords(words, {
    ...CHECK_OPTIONS,
    several: [...CHECK_OPTIONS.several, 'drive', 'vehicle-id', 'pair'],
    flags: [...CHECK_OPTIONS.flags, 'pdf'],
  });
  if (!read.ok) return read;
  const { one, all, flag } = read.value;
  const [drives, vehicles] = [all('drive'), all('vehicle-id')];
  const pairs = readPairs(all('pair'));
  if (!pairs.ok) return pairs;
  const byPair = pairs.value.length > 0;
  const ids = byPair || drives.length + vehicles.length > 0;
  if (ids && (one('route') !== undefined || one('vehicle') !== undefined || one('track') !== undefined))
    return fail(
      'usage',
      `--drive, --vehicle-id and --pair name what the library has; --route, --track and --vehicle name files. Take one kind. ${USAGE_HINT}`,
    );
  if (byPair && drives.length + vehicles.length > 0)
    return fail(
      'usage',
      `--pair names drive and vehicle together; --drive and --vehicle-id name them apart. Take one kind. ${USAGE_HINT}`,
    );
  if (ids && !byPair && (drives.length === 0 || vehicles.length === 0))
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
    ...(ids && { fromLibrary: { drives, vehicles, pairs: pairs.value } }),
  });
}

function readPairs(typed: readonly string[]): Result<NamedOfLibrary['pairs']> {
  const pairs: { drive: string; vehicle: string }[] = [];
  for (const pair of typed) {
    const at = pair.indexOf('=');
    const [drive, vehicle] = [pair.slice(0, Math.max(at, 0)).trim(), pair.slice(at + 1).trim()];
    if (drive === '' || vehicle === '')
      return fail(
        'usage',
        `--pair ${quote(pair)}: write a drive and a vehicle of the library with = between them, such as "Mill run=Teal". ${USAGE_HINT}`,
      );
    pairs.push({ drive, vehicle });
  }
  return ok(pairs);
}
