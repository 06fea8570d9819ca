import type { z } from 'zod';
import { doubtfulFeet, sayReadings } from '../units/decimal-feet.ts';
import { meantLengths } from '../units/meant-entry.ts';
import { printMetres } from '../units/print.ts';
import { readEntryLength } from '../units/read-entry.ts';
import { quote } from '../units/text.ts';

type Issue = z.core.$ZodIssue;

/** What the fault is about. */
interface About {
  readonly whole: string;
  readonly kind: string;
}
const CARD: About = { whole: 'the card', kind: 'vehicle card' };

/** One fault of a file in words a person understands, naming the field. */
export function sayFault(issue: Issue, data: unknown, about: About = CARD): string {
  const field = issue.path.map(String).join('.');
  const name = field === '' ? about.whole : field;
  const given = valueAt(data, issue.path);
  switch (issue.code) {
    case 'invalid_type':
      if (given === undefined) return `${name} is missing`;
      return `${name} must be ${TYPE_WORDS[issue.expected] ?? issue.expected}, not ${describe(given)}${unquoted(issue.expected, given, field)}`;
    case 'too_big':
      if (issue.origin === 'array') return `${name} holds more than ${issue.maximum}`;
      if (issue.origin === 'string') return `${name} is longer than ${issue.maximum} letters`;
      return `${name} is ${describe(given)}, but at most ${issue.maximum}${unitOf(field)} can be right${askMeant(given, field, Number(issue.maximum))}`;
    case 'too_small':
      if (issue.origin === 'string') return `${name} is empty`;
      return `${name} is ${describe(given)}, but at least ${issue.minimum}${unitOf(field)} is needed`;
    case 'unrecognized_keys': {
      const shown = issue.keys.slice(0, KEYS_SHOWN).map((key) => quote(key, WRITTEN_MOST));
      const keys = issue.keys.length > KEYS_SHOWN ? `${shown.join(', ')} and others` : shown.join(', ');
      return `${field === '' ? '' : `${field}: `}${keys} ${issue.keys.length > 1 ? 'are no fields' : 'is no field'} of a ${about.kind}`;
    }
    case 'invalid_format':
      return `${name} is blank`;
    case 'invalid_value':
      if (given === undefined) return `${name} is missing`;
      return `${name} must be ${issue.values.map((value) => JSON.stringify(value)).join(' or ')}, not ${describe(given)}`;
    default:
      return field === '' ? issue.message : `${field}: ${issue.message}`;
  }
}

const KEYS_SHOWN = 6;
const WRITTEN_MOST = 40;

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list in brackets',
  object: 'an object in braces',
};

function unitOf(field: string): string {
  if (field.endsWith('M')) return ' m';
  return field.endsWith('Kg') || field.startsWith('axleKg.') ? ' kg' : '';
}

/** A number in quotes is the commonest slip, a length in feet and inches the next. */
function unquoted(expected: string, given: unknown, field: string): string {
  if (expected !== 'number' || typeof given !== 'string') return '';
  const trimmed = given.trim();
  if (trimmed !== '' && Number.isFinite(Number(trimmed))) return ` (write ${trimmed} without quotes)`;
  if (unitOf(field) !== ' m') return '';
  const doubtful = doubtfulFeet(trimmed);
  if (doubtful.length > 0)
    return ` (${sayReadings(doubtful)}: write ${doubtful.map(({ value }) => value).join(' or ')})`;
  const read = readEntryLength(trimmed);
  if (!read.ok) return '';
  return ` (${trimmed} is ${printMetres(read.value, 'up')}: write ${Math.round(read.value * 10_000) / 10_000})`;
}

/** What a length that cannot be right was likely meant to be. Of 10.10 a file's reader leaves 10.1. */
function askMeant(given: unknown, field: string, most: number): string {
  if (typeof given !== 'number' || unitOf(field) !== ' m') return '';
  const written = String(given).replace(/\.1$/, '.10');
  const meant = meantLengths(written, { least: most / 4, most });
  return meant.length === 0 ? '' : `; perhaps ${sayReadings(meant)} is meant`;
}

function describe(given: unknown): string {
  if (given === null) return 'null';
  if (Array.isArray(given)) return 'a list';
  if (typeof given === 'string') return given === '' ? 'empty' : `the text ${quote(given, WRITTEN_MOST)}`;
  return typeof given === 'object' ? 'an object' : String(given);
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}
