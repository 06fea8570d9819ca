import type { z } from 'zod';
import { fail, ok, type Result } from '../result.ts';
import { askMeant } from '../units/slips.ts';
import { quote } from '../units/text.ts';
import { fieldsOf } from './fields-of.ts';
import { type OwnUse, tellOwnFile } from './own-file.ts';
import { twiceNamed } from './twice-named.ts';

/** What a file is called in its refusals. */
export interface DocumentWords {
  /** `vehicle`: what the file is for; the code of a refusal begins with it */
  readonly code: OwnUse;
  /** `vehicle card` */
  readonly kind: string;
  /** `card`: what is to be corrected */
  readonly short: string;
  sayFault(issue: z.core.$ZodIssue, data: unknown): string;
}

/** More would only hide the first. */
const FAULTS_SHOWN = 8;

/**
 * Reads a file that a person may write by hand.
 * @param text JSON that the schema describes; a byte order mark may lead
 * @param file the file's name, for the message
 * @returns what it holds, or one sentence naming everything that is wrong
 */
export function readDocument<T>(
  text: string,
  file: string,
  schema: z.ZodType<T>,
  words: DocumentWords,
): Result<T> {
  const { code, kind, short } = words;
  let data: unknown;
  try {
    data = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch (error) {
    return fail(
      `${code}-not-json`,
      `${file} is not a ${kind}: it is not JSON${whereIn(text, error)}. Choose a ${kind}, or mend the file.`,
    );
  }
  const twice = twiceNamed(text);
  if (twice !== undefined)
    return fail(
      `${code}-invalid`,
      `${file} is not a usable ${kind}: ${quote(twice)} stands there twice. Keep one of them and try again.`,
    );
  const parsed = schema.safeParse(data);
  if (parsed.success && !hasOwnProto(data)) return ok(parsed.data);
  const own = tellOwnFile(data);
  if (own !== undefined && own.use !== code)
    return fail(`${code}-other`, `${file} is ${own.what}, not a ${kind}. Choose the ${kind}.`);
  const faults = parsed.success
    ? [`"__proto__" is no field of a ${kind}`]
    : unknownFirst(parsed.error.issues).map(
        (issue) => `${words.sayFault(issue, data)}${meantBy(issue, schema)}`,
      );
  const more = faults.length > FAULTS_SHOWN ? `; and ${faults.length - FAULTS_SHOWN} more` : '';
  return fail(
    `${code}-invalid`,
    `${file} is not a usable ${kind}: ${faults.slice(0, FAULTS_SHOWN).join('; ')}${more}. Correct the ${short} and try again.`,
  );
}

/** ` (line 3)` where the parser tells the position. */
function whereIn(text: string, error: unknown): string {
  const position = error instanceof Error ? /position (\d+)/.exec(error.message)?.[1] : undefined;
  if (position === undefined) return '';
  return ` (line ${text.slice(0, Number(position)).split('\n').length})`;
}

/** A misspelt field is also missing under its right name: what it was is the better clue. */
function unknownFirst(issues: readonly z.core.$ZodIssue[]): z.core.$ZodIssue[] {
  const isUnknown = ({ code }: z.core.$ZodIssue) => Number(code === 'unrecognized_keys');
  return [...issues].sort((a, b) => isUnknown(b) - isUnknown(a));
}

/** What unknown fields were likely meant to be. */
function meantBy(issue: z.core.$ZodIssue, schema: z.ZodType): string {
  if (issue.code !== 'unrecognized_keys') return '';
  const known = fieldsOf(schema);
  // one that stands elsewhere in such a file is spelt well
  const misspelt = issue.keys.filter((key) => !known.has(key));
  return misspelt.map((key) => askMeant(key, known)).join('');
}

/** The schema's own list of unknown fields does not see this one. */
function hasOwnProto(data: unknown): boolean {
  if (typeof data !== 'object' || data === null) return false;
  return Object.hasOwn(data, '__proto__') || Object.values(data).some(hasOwnProto);
}
