import type { ReadingNote } from '../../units/reading.ts';

/** The figures of a vehicle that a condition may compare. */
export const PROPERTIES = [
  'weight',
  'weightrating',
  'axleload',
  'emptyweight',
  'length',
  'height',
  'width',
  'axles',
] as const;
export type Property = (typeof PROPERTIES)[number];

export type Comparison = '<' | '<=' | '>' | '>=' | '=';

/** One thing a condition asks. `text` is as mapped. */
export type Part =
  /** figure in kilograms, metres, or a count of axles */
  | { kind: 'compare'; property: Property; is: Comparison; figure: number; text: string }
  /** opening_hours syntax */
  | { kind: 'hours'; text: string }
  /** why or by whom the road is used: destination, delivery, permit */
  | { kind: 'purpose'; word: string; text: string }
  /** what is driven: hgv, bus, motorhome */
  | { kind: 'vehicle'; word: string; text: string }
  /** weather, season, road state: wet, snow, winter */
  | { kind: 'circumstance'; word: string; text: string }
  /** dangerous goods, with the class where given */
  | { kind: 'hazmat'; text: string }
  /** holds when all of these hold */
  | { kind: 'all'; of: Part[]; text: string }
  /** holds when one of these holds */
  | { kind: 'any'; of: Part[]; text: string }
  /** joined so that one cannot tell whether all or one must hold: only what both readings say counts */
  | { kind: 'all-or-any'; of: Part[]; text: string }
  | { kind: 'unknown'; text: string };

export interface Clause {
  /** what holds under the condition: no, destination, 7.5 */
  readonly value: string;
  /** the condition as mapped */
  readonly text: string;
  /** all must hold */
  readonly parts: readonly Part[];
}

/** Slips of spelling that were read leniently. */
export type Leniency =
  | ReadingNote
  | 'operator-spelling'
  | 'and-spelling'
  | 'or'
  | 'comma-list'
  | 'unbracketed-semicolon'
  | 'misspelt-word'
  | 'stray-semicolon'
  | 'other-tag-inside'
  | 'value-without-condition';

export interface LeniencyNote {
  readonly kind: Leniency;
  readonly text: string;
}

/** A `:conditional` value, read. The last clause that holds decides. */
export interface Conditional {
  readonly text: string;
  readonly clauses: readonly Clause[];
  readonly notes: readonly LeniencyNote[];
}

/** Why a `:conditional` value cannot be read; `position` counts characters from 0. */
export interface UnreadableConditional {
  readonly text: string;
  readonly position: number;
  readonly reason: string;
}
