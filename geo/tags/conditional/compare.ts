import type { Comparison, LeniencyNote, Part, Property } from './conditional.ts';
import { readFigure } from './figure.ts';

/** Mappers write the limit's key for the property it limits; "weight" and "maxweight" are one question here. */
const PROPERTY_WORDS: Readonly<Record<string, Property>> = {
  weight: 'weight',
  maxweight: 'weight',
  grossweight: 'weight',
  gross_weight: 'weight',
  actualweight: 'weight',
  actual_weight: 'weight',
  weightrating: 'weightrating',
  maxweightrating: 'weightrating',
  weight_rating: 'weightrating',
  axleload: 'axleload',
  maxaxleload: 'axleload',
  axle_load: 'axleload',
  axleweight: 'axleload',
  emptyweight: 'emptyweight',
  maxemptyweight: 'emptyweight',
  unladenweight: 'emptyweight',
  unladen_weight: 'emptyweight',
  maxunladenweight: 'emptyweight',
  length: 'length',
  maxlength: 'length',
  height: 'height',
  maxheight: 'height',
  width: 'width',
  maxwidth: 'width',
  axles: 'axles',
  axle: 'axles',
};

const COMPARISONS: Readonly<Record<string, Comparison>> = {
  '<': '<',
  '<=': '<=',
  '=<': '<=',
  '≤': '<=',
  '>': '>',
  '>=': '>=',
  '=>': '>=',
  '≥': '>=',
  '=': '=',
  '==': '=',
};

const PROPER = new Set(['<', '<=', '>', '>=', '=']);

/** Whether a text compares a property with something, known or not. */
export const COMPARES = /^([\p{L}_:]+)\s*(<=|>=|=<|=>|==|<|>|=|≤|≥)\s*(.+)$/u;

/** Reads `weight > 7.5 t`; a property or figure it does not know gives an unknown part, no comparison undefined. */
export function readComparison(text: string, notes: LeniencyNote[]): Part | undefined {
  const found = COMPARES.exec(text);
  if (found === null) return undefined;
  const [, word = '', sign = '', tail = ''] = found;
  const lower = word.toLowerCase();
  const property = Object.hasOwn(PROPERTY_WORDS, lower) ? PROPERTY_WORDS[lower] : undefined;
  const is = COMPARISONS[sign];
  if (property === undefined || is === undefined) return { kind: 'unknown', text };
  const read = readFigure(property, tail);
  if (read === undefined) return { kind: 'unknown', text };
  if (!PROPER.has(sign)) notes.push({ kind: 'operator-spelling', text });
  for (const kind of read.notes) notes.push({ kind, text });
  return { kind: 'compare', property, is, figure: read.figure, text };
}
