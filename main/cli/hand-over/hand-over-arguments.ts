import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { FIRM_MAX } from '../../contract/limits.ts';
import type { Settings } from '../../contract/settings.ts';
import { CHECK_OPTIONS, type CheckArguments, checkArgumentsOf } from '../arguments.ts';
import { readWords, USAGE_HINT, type WordsRead } from '../read-words.ts';

export interface HandOverArguments extends CheckArguments {
  readonly outFolder: string;
  /** the sheet is wanted as PDF too */
  readonly pdf: boolean;
  /** drives and vehicles of the library, in place of files */
  readonly fromLibrary?: NamedOfLibrary;
  /** what of the firm's own is to stand on every sheet from now on */
  readonly firm: Partial<Settings['firm']>;
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
    once: [...CHECK_OPTIONS.once, 'firm', 'phone'],
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
  const firm = readFirm(read.value);
  if (!firm.ok) return firm;
  const { outFolder } = check.value;
  if (outFolder === undefined)
    return fail('usage', `Missing: --out FOLDER, where the files go. ${USAGE_HINT}`);
  return ok({
    ...check.value,
    outFolder,
    pdf: flag('pdf'),
    firm: firm.value,
    ...(ids && { fromLibrary: { drives, vehicles, pairs: pairs.value } }),
  });
}

/** `--firm TEXT` and `--phone NUMBER`. */
function readFirm({ one }: WordsRead): Result<Partial<Settings['firm']>> {
  const heading = one('firm')?.trim();
  const telephone = one('phone')?.trim();
  if (heading !== undefined && heading.length > FIRM_MAX.heading)
    return fail('usage', `--firm takes at most ${FIRM_MAX.heading} letters. ${USAGE_HINT}`);
  if (telephone !== undefined && (telephone.length > FIRM_MAX.telephone || !/\d/.test(telephone)))
    return fail(
      'usage',
      `--phone ${quote(telephone)} is no telephone number: write its digits, at most ${FIRM_MAX.telephone} letters. ${USAGE_HINT}`,
    );
  return ok(given({ heading, telephone }));
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
