import { isAbsolute, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { fail, ok, type Result } from '../../geo/result.ts';
import { askMeant } from '../../geo/units/slips.ts';
import { clip } from '../../geo/units/text.ts';

export const USAGE_HINT = "See 'lanegauge --help'.";

/** Which options a command takes: with a value once, with a value several times, without one. */
export interface Options {
  readonly once: readonly string[];
  readonly several?: readonly string[];
  readonly flags: readonly string[];
  /** of those with a value: whose value may be a number below zero */
  readonly signed?: readonly string[];
  /** how many words may stand without an option before them; none where left out */
  readonly bare?: number;
}

export interface WordsRead {
  /** the value of an option given once */
  one(name: string): string | undefined;
  all(name: string): readonly string[];
  flag(name: string): boolean;
  /** the words that stand without an option before them */
  readonly bare: readonly string[];
}

/** Reads the words after a command. Unknown options, stray words and options given twice are refused by name. */
export function readWords(
  typed: readonly string[],
  { once, several = [], flags, signed = [], bare = 0 }: Options,
): Result<WordsRead> {
  const words = joinSigned(typed, signed);
  const unfilled = withoutValue(words, [...once, ...several]);
  if (unfilled !== undefined) return fail('usage', `${unfilled} ${USAGE_HINT}`);
  const unknown = unknownOption(words, [...once, ...several, ...flags]);
  if (unknown !== undefined) return fail('usage', `${unknown} ${USAGE_HINT}`);
  let positionals: readonly string[];
  let values: Record<string, string | boolean | (string | boolean)[] | undefined>;
  try {
    ({ values, positionals } = parseArgs({
      args: [...words],
      strict: true,
      allowPositionals: true,
      options: Object.fromEntries([
        ...[...once, ...several].map((name) => [name, { type: 'string' as const, multiple: true }] as const),
        ...flags.map((name) => [name, { type: 'boolean' as const }] as const),
      ]),
    }));
  } catch (error) {
    return fail(
      'usage',
      `${error instanceof Error ? firstSentence(error.message) : String(error)} ${USAGE_HINT}`,
    );
  }
  const stray = positionals[bare];
  if (stray !== undefined)
    return fail(
      'usage',
      bare > 0 || once[0] === undefined
        ? `'${clip(stray, 200)}' is a word too many. ${USAGE_HINT}`
        : `'${clip(stray, 200)}' has no option before it, such as --${once[0]}. ${USAGE_HINT}`,
    );
  const all = (name: string): string[] => {
    const value = values[name];
    return Array.isArray(value) ? value.map(String) : [];
  };
  for (const name of once)
    if (all(name).length > 1)
      return fail('usage', `--${name} is given ${all(name).length} times; one is wanted. ${USAGE_HINT}`);
  return ok({
    all,
    one: (name) => all(name)[0],
    flag: (name) => values[name] === true,
    bare: positionals,
  });
}

/**
 * A path as the user means it: relative ones start from where the user stands. Where the program itself stands there
 * it stays as typed, and so it is told in sentences.
 */
export function pathFrom(standsIn: string, path: string): string {
  return isAbsolute(path) || standsIn === process.cwd() ? path : resolve(standsIn, path);
}

/** `--at -1.5,2` as one word, for what reads options takes a word that begins with a dash for one. */
function joinSigned(words: readonly string[], signed: readonly string[]): string[] {
  const joined: string[] = [];
  for (const word of words) {
    const before = joined.at(-1);
    const isValue = /^-[\d.]/u.test(word) && signed.some((name) => before === `--${name}`);
    if (isValue) joined[joined.length - 1] = `${before}=${word}`;
    else joined.push(word);
  }
  return joined;
}

/** An option whose value is missing, or could be taken for an option; undefined where there is none. */
function withoutValue(words: readonly string[], valued: readonly string[]): string | undefined {
  for (const [index, word] of words.entries()) {
    if (!valued.some((name) => word === `--${name}`)) continue;
    const next = words[index + 1];
    if (next === undefined || next === '') return `${word} needs a value after it.`;
    if (next.length > 1 && next.startsWith('-'))
      return `${word} needs a value, but ${next} stands there; a value that begins with a dash is written ${word}=${next}.`;
  }
  return undefined;
}

/** The first option that is none, and the one that was likely meant; undefined where all are known. */
function unknownOption(words: readonly string[], known: readonly string[]): string | undefined {
  const end = words.indexOf('--');
  for (const word of end < 0 ? words : words.slice(0, end)) {
    const name = /^--([^=]+)/u.exec(word)?.[1];
    if (name === undefined || known.includes(name)) continue;
    return `There is no option --${clip(name)}${askMeant(name, known, (meant) => `--${meant}`)}.`;
  }
  return undefined;
}

function firstSentence(text: string): string {
  const [first] = text.split(/\.\s|\n/);
  return first?.endsWith('.') ? first : `${first ?? text}.`;
}
