/** Each way in which a value departs from how it ought to be written, and was read all the same. */
export type ReadingNote =
  | 'decimal-comma'
  | 'no-space-before-unit'
  | 'unit-spelling'
  | 'tons-as-tonnes'
  | 'spaced-feet-and-inches'
  | 'typographic-marks'
  | 'missing-inch-mark'
  | 'several-values-lowest-taken'
  | 'no-for-none'
  | 'letter-case';

/**
 * What the text of a limit says.
 *
 * - `value`: a figure, in metres or kilograms
 * - `none`: expressly no limit
 * - `default`: no sign, the country's general rule applies
 * - `below_default`: lower than the general rule, by an amount nobody mapped
 * - `unsigned`: looked at, no sign there
 * - `not believed`: a figure that no road has (believed.ts)
 * - `unreadable`: never to be taken for "no limit"
 */
export type Reading =
  | { readonly kind: 'value'; readonly value: number; readonly notes: readonly ReadingNote[] }
  | { readonly kind: 'none'; readonly notes: readonly ReadingNote[] }
  | { readonly kind: 'default' | 'below_default' | 'unsigned'; readonly notes: readonly ReadingNote[] }
  | { readonly kind: 'unreadable' | 'not believed'; readonly reason: string };

/** A value that says nothing usable. @param reason why, to stand in brackets */
export function unreadable(reason: string): Reading {
  return { kind: 'unreadable', reason };
}

/** The same reading with one more note (a note is said once). */
export function withNote(reading: Reading, note: ReadingNote): Reading {
  if (!('notes' in reading) || reading.notes.includes(note)) return reading;
  return { ...reading, notes: [...reading.notes, note] };
}

/** The sentence a person reads for each note. */
export const NOTE_TEXT: Readonly<Record<ReadingNote, string>> = {
  'decimal-comma': 'decimal comma read as a point',
  'no-space-before-unit': 'unit written without a space',
  'unit-spelling': 'unusual spelling of the unit',
  'tons-as-tonnes': '"tons" read as tonnes',
  'spaced-feet-and-inches': 'feet and inches written with spaces or words',
  'typographic-marks': 'typographic foot and inch marks',
  'missing-inch-mark': 'inch mark missing',
  'several-values-lowest-taken': 'several values, the lowest taken',
  'no-for-none': '"no" read as no limit',
  'letter-case': 'unusual letter case',
};
