import { COMPARES, readComparison } from './compare.ts';
import type { LeniencyNote, Part } from './conditional.ts';
import { insideBrackets, type Piece, splitOutside } from './split.ts';
import {
  BY_ARRANGEMENT,
  CIRCUMSTANCES,
  GOING_THERE,
  GOODS,
  IS_MOTORHOME,
  MISSPELT,
  NOT_MOTORHOME,
  PERHAPS_MOTORHOME,
} from './words.ts';

const AND = /(?:\bAND\b|\bund\b|&{1,2})/iy;
const OR = /\bOR\b/iy;
const LIST = /[,;]/y;

/** Anything that only the opening_hours syntax has. */
const LOOKS_LIKE_HOURS =
  /\b(?:mo|tu|we|th|fr|sa|su|so|ph|sh|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|okt|nov|dec|giu|set)\b|\d{1,2}[:.]\d{2}|sunrise|sunset|\bdawn\b|\bdusk\b|24\/7|\bweek\s*\d|\beaster\b|^\d{1,2}\s*-\s*\d{1,2}$|^(?:19|20|21)\d{2}\b/i;

/** A word on its own: purpose, vehicle, circumstance; undefined for anything else. */
function readWord(text: string, notes: LeniencyNote[]): Part | undefined {
  const written = text.toLowerCase().replace(/[ -]/g, '_');
  const word = Object.hasOwn(MISSPELT, written) ? (MISSPELT[written] as string) : written;
  if (word !== written) notes.push({ kind: 'misspelt-word', text });
  if (GOING_THERE.has(word) || BY_ARRANGEMENT.has(word)) return { kind: 'purpose', word, text };
  if (IS_MOTORHOME.has(word) || PERHAPS_MOTORHOME.has(word) || GOODS.has(word) || NOT_MOTORHOME.has(word))
    return { kind: 'vehicle', word, text };
  if (CIRCUMSTANCES.has(word)) return { kind: 'circumstance', word, text };
  if (/^hazmat(?::\w+)?$/.test(word)) return { kind: 'hazmat', text };
  return undefined;
}

function isWordy(text: string): boolean {
  return !LOOKS_LIKE_HOURS.test(text) && !COMPARES.test(text);
}

/** Things set side by side with commas or semicolons: words are alternatives; figures among them leave it open. */
function readList(piece: Piece, notes: LeniencyNote[]): Part | undefined {
  const items = splitOutside(piece, LIST).filter((item) => item.text !== '');
  if (items.length < 2) return undefined;
  const wordy = items.filter((item) => isWordy(item.text));
  // all hours: the opening_hours syntax has commas and semicolons of its own
  if (wordy.length === 0 && !items.some((item) => COMPARES.test(item.text))) return undefined;
  // a remark among hours is for the reader of hours to refuse
  if (wordy.some((item) => readWord(item.text, []) === undefined) && wordy.length < items.length)
    return undefined;
  notes.push({ kind: 'comma-list', text: piece.text });
  const of = items.map((item) => readPart(item, notes));
  return { kind: wordy.length === items.length ? 'any' : 'all-or-any', of, text: piece.text };
}

function readPart(piece: Piece, notes: LeniencyNote[]): Part {
  const inside = insideBrackets(piece);
  if (inside !== undefined) return joined(readParts(inside, notes), piece.text);
  const { text } = piece;
  const alternatives = splitOutside(piece, OR);
  if (alternatives.length > 1) {
    notes.push({ kind: 'or', text });
    return { kind: 'any', of: alternatives.map((each) => readPart(each, notes)), text };
  }
  // a comma between digits is a decimal one: the comparison is tried before the list
  const compared = readComparison(text, notes);
  if (compared !== undefined && compared.kind === 'compare') return compared;
  const word = readWord(text, notes) ?? readList(piece, notes) ?? compared;
  if (word !== undefined) return word;
  return LOOKS_LIKE_HOURS.test(text) ? { kind: 'hours', text } : { kind: 'unknown', text };
}

/** Several parts inside brackets become one part again. */
function joined(parts: Part[], text: string): Part {
  const [first] = parts;
  return parts.length === 1 && first !== undefined ? first : { kind: 'all', of: parts, text };
}

const hasClockTime = (text: string): boolean => /\d[:.]\d{2}|sunrise|sunset|dawn|dusk/i.test(text);
const hasDate = (text: string): boolean =>
  /jan|feb|mar|apr|may|jun|jul|aug|sep|oct|okt|nov|dec|\d{4}/i.test(text);

/**
 * Two spans of hours, or two of dates, can hardly both be meant to hold, nor can a motorhome and a caravan: there
 * "and" may well have been written for "or".
 */
function mayMeanOr(parts: readonly Part[]): boolean {
  const hours = parts.flatMap((part) => (part.kind === 'hours' ? [part.text] : []));
  const twice = (test: (text: string) => boolean) => hours.length > 1 && hours.filter(test).length > 1;
  return twice(hasClockTime) || twice(hasDate);
}

function vehiclesMayMeanOr(parts: readonly Part[]): boolean {
  const words = parts.flatMap((part) => (part.kind === 'vehicle' ? [part.word] : []));
  return words.length > 1 && words.includes('motorhome');
}

/** Puts parts of one kind that may have been joined by mistake into one that decides only where both readings agree. */
function grouped(parts: readonly Part[], kind: Part['kind']): Part[] {
  const of = parts.filter((part) => part.kind === kind);
  const text = of.map((part) => part.text).join(' AND ');
  return [...parts.filter((part) => part.kind !== kind), { kind: 'all-or-any', of, text }];
}

/**
 * Reads a condition: parts joined by AND, all of which must hold. Never fails: what it cannot read is an unknown part.
 * @param notes slips read leniently are added here
 */
export function readParts(piece: Piece, notes: LeniencyNote[]): Part[] {
  const inside = insideBrackets(piece);
  if (inside !== undefined) return readParts(inside, notes);
  const pieces = splitOutside(piece, AND);
  const mixed = pieces.length > 1 && pieces.some((each) => splitOutside(each, OR).length > 1);
  if (mixed) return [{ kind: 'unknown', text: piece.text }];
  if (pieces.length > 1 && !/\bAND\b/.test(piece.text))
    notes.push({ kind: 'and-spelling', text: piece.text });
  let parts = pieces.map((each) => readPart(each, notes));
  if (mayMeanOr(parts)) parts = grouped(parts, 'hours');
  if (vehiclesMayMeanOr(parts)) parts = grouped(parts, 'vehicle');
  return parts;
}
