import { given } from '../../geo/given.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { CheckRequest } from '../services/check-drive.ts';
import type { YardNamed } from '../services/library/local-notes.ts';
import type { TypedVehicle } from '../services/library/typed-vehicle.ts';
import { pathFrom, readWords, USAGE_HINT, type WordsRead } from './read-words.ts';

export interface CheckArguments
  extends Omit<CheckRequest, 'shelf' | 'yard' | 'vehiclePath' | 'card'>,
    YardArguments {
  /** a card's file, or a vehicle of the library */
  readonly vehicle?: TypedVehicle;
  readonly json: boolean;
  readonly outFolder?: string;
}

export const CHECK_OPTIONS = {
  once: ['route', 'vehicle', 'load', 'track', 'country', 'leave', 'out', 'yard'],
  several: ['map', 'past'],
  flags: ['json', 'way-round', 'no-notes'],
} as const;

/** Reads the words after `lanegauge check`. Unknown options are refused by name. */
export function readCheckArguments(words: readonly string[], standsIn: string): Result<CheckArguments> {
  const read = readWords(words, CHECK_OPTIONS);
  return read.ok ? checkArgumentsOf(read.value, standsIn) : read;
}

/** What the words say of the check itself, for every command that begins with one. */
export function checkArgumentsOf(
  words: WordsRead,
  standsIn: string,
  { ids = false }: { /** drive and vehicle are named otherwise */ readonly ids?: boolean } = {},
): Result<CheckArguments> {
  const { all, one, flag } = words;
  const [route, vehicle, load, maps] = [one('route'), one('vehicle'), one('load'), all('map')];
  const missing = [...(route ? [] : ['--route FILE.gpx']), ...(vehicle ? [] : ['--vehicle FILE.json'])];
  if (!ids && missing.length > 0) return fail('usage', `Missing: ${missing.join(', ')}. ${USAGE_HINT}`);
  const country = readCountry(one('country'));
  if (country?.ok === false) return country;
  const leaveAt = readWallTime(one('leave'));
  if (leaveAt?.ok === false) return leaveAt;
  const past = all('past');
  if (past.length > 0 && !flag('way-round'))
    return fail('usage', `--past names what a way round is to pass: add --way-round. ${USAGE_HINT}`);
  const yard = readYard(words, standsIn);
  if (!yard.ok) return yard;
  const track = one('track');
  const out = one('out');
  const from = (path: string): string => pathFrom(standsIn, path);
  return ok({
    routePath: route === undefined ? '' : from(route),
    mapPaths: maps.map(from),
    json: flag('json'),
    ...yard.value,
    ...(flag('way-round') ? { wayRound: { past } } : {}),
    ...given({ vehicle: vehicle ? { typed: vehicle, path: from(vehicle) } : undefined }),
    ...(load === undefined ? {} : { loadPath: from(load) }),
    ...given({ track, country: country?.value, leaveAt: leaveAt?.value }),
    ...(out === undefined ? {} : { outFolder: from(out) }),
  });
}

/** Whose local notes are used. */
export interface YardArguments {
  /** the library's folder, where one is named */
  readonly yardFolder?: string;
  readonly noNotes: boolean;
}

/** `--yard FOLDER` and `--no-notes`. */
export function readYard({ one, flag }: WordsRead, standsIn: string): Result<YardArguments> {
  const [folder, noNotes] = [one('yard'), flag('no-notes')];
  if (folder !== undefined && noNotes)
    return fail('usage', `--no-notes leaves out what --yard is named for: take one of them. ${USAGE_HINT}`);
  return ok({ noNotes, ...given({ yardFolder: folder && pathFrom(standsIn, folder) }) });
}

/** The library whose notes are used; undefined where they are left out. */
export function yardNamed({ yardFolder, noNotes }: YardArguments, dataFolder: string): YardNamed | undefined {
  return noNotes ? undefined : { dataFolder, ...given({ folder: yardFolder }) };
}

/** A country's code as typed; undefined where none is. */
export function readCountry(typed: string | undefined): Result<string> | undefined {
  const country = typed?.toUpperCase();
  if (country === undefined) return undefined;
  if (!/^[A-Z]{2}$/.test(country))
    return fail(
      'usage',
      `--country ${country} is not a country's code: write its two letters, such as GB or FR.`,
    );
  if (isCountry(country)) return ok(country);
  return fail(
    'usage',
    `--country ${country} is no country's code (ISO 3166-1)${country === 'UK' ? ': write GB for the United Kingdom' : ': write one such as GB or FR'}.`,
  );
}

/**
 * A local date and time as typed; undefined where none is.
 * @param option that it was typed after
 */
export function readWallTime(typed: string | undefined, option = 'leave'): Result<string> | undefined {
  if (typed === undefined) return undefined;
  return isWallTime(typed)
    ? ok(typed)
    : fail('usage', `--${option} ${typed} is not a date and time: write it as 2027-06-12T09:30.`);
}

/** The folder the user stands in: npm runs scripts elsewhere and tells where it was called. */
export function standsIn(environment: NodeJS.ProcessEnv, workingFolder: string): string {
  const byNpm =
    environment['npm_lifecycle_event'] === 'lanegauge' || environment['npm_lifecycle_event'] === 'start';
  return (byNpm ? environment['INIT_CWD'] : undefined) ?? workingFolder;
}

/** Codes that name a group or stand free are none: they would be taken for a country whose rules nobody knows. */
const NO_COUNTRIES = new Set([
  'EU',
  'EZ',
  'UN',
  'UK',
  'ZZ',
  'XX',
  'QO',
  'XA',
  'XB',
  'AC',
  'CP',
  'DG',
  'EA',
  'IC',
  'TA',
]);

function isCountry(code: string): boolean {
  return (
    !NO_COUNTRIES.has(code) &&
    new Intl.DisplayNames(['en'], { type: 'region', fallback: 'none' }).of(code) !== undefined
  );
}

/** YYYY-MM-DDTHH:MM, a day of this age that exists. */
function isWallTime(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})$/.exec(text);
  if (!parts) return false;
  const [year, month, day, hour, minute] = parts.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const date = new Date(Date.UTC(year, month - 1, day, hour, minute));
  if (year < 1990 || year > 2100) return false;
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day && hour < 24 && minute < 60;
}
