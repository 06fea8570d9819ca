import { type Reading, withNote } from './reading.ts';

const WORDS: Readonly<Record<string, Reading>> = {
  none: { kind: 'none', notes: [] },
  unlimited: { kind: 'none', notes: [] },
  no: { kind: 'none', notes: ['no-for-none'] },
  default: { kind: 'default', notes: [] },
  below_default: { kind: 'below_default', notes: [] },
  unsigned: { kind: 'unsigned', notes: [] },
  no_sign: { kind: 'unsigned', notes: [] },
  no_indications: { kind: 'unsigned', notes: [] },
};

/** The reading of one of the words that stand in place of a figure, or undefined for anything else. */
export function readWord(text: string): Reading | undefined {
  const word = text.toLowerCase();
  if (!Object.hasOwn(WORDS, word)) return undefined;
  const reading = WORDS[word] as Reading;
  return word === text ? reading : withNote(reading, 'letter-case');
}
