import { readWord } from './read-words.ts';
import { type Reading, unreadable, withNote } from './reading.ts';

/** No limit anyone mapped is longer; what is longer is prose. */
const LONGEST = 255;

/**
 * Reads a tag value that may list several figures ("2.3; 7'9\"", "3.8 / 12'6\""): the lowest decides, and it is noted.
 * One part that cannot be read makes the whole unreadable, since it might be the lowest.
 */
export function readList(text: string, readOne: (part: string) => Reading): Reading {
  if (text.length > LONGEST) return unreadable('too long for a figure');
  const parts = text
    .split(/;|\s\/\s/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) return unreadable('empty');
  const readings = parts.map((part) => readWord(part) ?? readOne(part));
  const [first] = readings;
  if (readings.length === 1 && first !== undefined) return first;
  return withNote(readings.reduce(stricter), 'several-values-lowest-taken');
}

/** From what is least known to what is freest; figures compare by value. */
const ORDER = [
  'unreadable',
  'not believed',
  'below_default',
  'value',
  'unsigned',
  'default',
  'none',
] as const;

function stricter(a: Reading, b: Reading): Reading {
  if (a.kind === 'value' && b.kind === 'value') return b.value < a.value ? b : a;
  return ORDER.indexOf(b.kind) < ORDER.indexOf(a.kind) ? b : a;
}
