import type { Result } from '../../result.ts';
import { readParts } from './condition.ts';
import type { Clause, Conditional, LeniencyNote, UnreadableConditional } from './conditional.ts';
import { insideBrackets, type Piece, splitOutside, trimmed, unpairedBracket } from './split.ts';
import { GOODS, NOT_MOTORHOME, PLAIN_VALUES } from './words.ts';

type Read<T> = Result<T, UnreadableConditional>;

const SEMICOLON = /;/y;
const AT = /@/y;

/** OSM tag values end at 255 characters; anything longer was never a tag value. Bounds nesting and hours within it, too. */
const LONGEST = 255;

interface RawClause {
  readonly value: string;
  readonly condition: Piece;
}

/** Another tag run into this one: `hgv=no` inside the value of vehicle:conditional. */
function isTagOfOthers(text: string): boolean {
  const key = /^(\w+)=\w+$/.exec(text)?.[1];
  return key !== undefined && (GOODS.has(key) || NOT_MOTORHOME.has(key));
}

function isBracketed(condition: Piece): boolean {
  return insideBrackets(condition) !== undefined;
}

/** Joins the pieces between semicolons into clauses; a piece without @ belongs to the condition before it. */
function rawClauses(text: string, notes: LeniencyNote[]): Read<RawClause[]> {
  const unreadable = (at: number, reason: string): Read<RawClause[]> => ({
    ok: false,
    error: { text, position: at, reason },
  });
  const clauses: RawClause[] = [];
  for (const piece of splitOutside({ text, at: 0 }, SEMICOLON)) {
    const [value, condition, more] = splitOutside(piece, AT);
    const last = clauses.at(-1);
    if (more !== undefined) return unreadable(more.at - 1, 'a second “@” in one clause');
    if (value === undefined || piece.text === '') {
      if (text.trim() !== '') notes.push({ kind: 'stray-semicolon', text });
    } else if (condition !== undefined) {
      if (value.text === '') return unreadable(piece.at, 'no value before the “@”');
      if (condition.text === '') return unreadable(condition.at, 'no condition after the “@”');
      clauses.push({ value: value.text, condition });
    } else if (isTagOfOthers(value.text)) {
      notes.push({ kind: 'other-tag-inside', text: value.text });
    } else if (last === undefined) {
      return unreadable(piece.at, 'no “@” between a value and its condition');
    } else if (isBracketed(last.condition) || PLAIN_VALUES.has(value.text)) {
      notes.push({ kind: 'value-without-condition', text: value.text });
      clauses.push({ value: value.text, condition: { text: '', at: piece.at } });
    } else {
      notes.push({ kind: 'unbracketed-semicolon', text: value.text });
      const whole = text.slice(last.condition.at, piece.at + value.text.length);
      clauses[clauses.length - 1] = {
        value: last.value,
        condition: trimmed({ text: whole, at: last.condition.at }),
      };
    }
  }
  return { ok: true, value: clauses };
}

function readClause({ value, condition }: RawClause, notes: LeniencyNote[]): Clause {
  // a value that stands alone may be what holds otherwise, or share the condition before it: nobody can tell
  if (condition.text === '') return { value, text: '', parts: [{ kind: 'unknown', text: value }] };
  return { value, text: condition.text, parts: readParts(condition, notes) };
}

/**
 * Reads the value of a `:conditional` tag: `<value> @ <condition>[; <value> @ <condition>]`, the parts of a condition
 * joined by AND, brackets where a condition holds a semicolon (OSM wiki, Conditional restrictions). In a
 * `:lanes:conditional` tag the value before the @ is the whole `a|b`.
 *
 * Slips met in real data are read and noted. A condition that is not understood is an `unknown` part of its clause;
 * a text whose clauses cannot be told apart is unreadable, with the position and the reason.
 */
export function parseConditional(text: string): Read<Conditional> {
  const unreadable = (position: number, reason: string): Read<Conditional> => ({
    ok: false,
    error: { text, position, reason },
  });
  // characters, not their halves: most texts are told at once
  if (text.length > LONGEST && [...text.slice(0, 2 * LONGEST + 1)].length > LONGEST)
    return unreadable(LONGEST, 'too long for a tag value');
  const bracket = unpairedBracket(text);
  if (bracket >= 0) return unreadable(bracket, 'a bracket without its partner');
  const notes: LeniencyNote[] = [];
  const raw = rawClauses(text, notes);
  if (!raw.ok) return raw;
  if (raw.value.length === 0) return unreadable(0, 'no “@” between a value and its condition');
  for (const { condition } of raw.value) {
    const stripe = condition.text.indexOf('|');
    if (stripe >= 0) return unreadable(condition.at + stripe, 'values for single lanes inside a condition');
    const inner = condition.text.indexOf('@');
    if (inner >= 0) return unreadable(condition.at + inner, 'a second “@” in one clause');
  }
  return { ok: true, value: { text, clauses: raw.value.map((clause) => readClause(clause, notes)), notes } };
}
