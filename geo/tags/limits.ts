import { given } from '../given.ts';
import type { Tags } from '../roads/roads.ts';
import { readLength } from '../units/read-length.ts';
import { readMass } from '../units/read-mass.ts';
import { type Reading, unreadable } from '../units/reading.ts';
import { type Driven, directionOf } from './driven.ts';
import { type Basis, type LimitKey, type Quantity, readLimitKey } from './limit-key.ts';
import { modeRank } from './modes.ts';
import { textOf } from './text-of.ts';

/**
 * When a limit binds.
 *
 * - `always`: every vehicle like ours, in the driven direction
 * - `lane`: on some lanes (`:lanes`)
 * - `condition`: under conditions (`:conditional`)
 * - `goods`: goods vehicles; whether it reaches a motorhome over 3.5 t is for the country to say
 * - `notUnderstood`: the key has parts nobody here understands
 */
export type Binding = 'always' | 'lane' | 'condition' | 'goods' | 'notUnderstood';

/** One limit as mapped on a driven way or passed node. */
export interface LimitClaim {
  readonly key: string;
  readonly text: string;
  /** the key without mode, direction, basis and condition */
  readonly base: string;
  readonly quantity: Quantity;
  readonly basis: Basis;
  readonly binding: Binding;
  /** how specific the mode is that the key names: 4 motorhome … 1 access, 0 none */
  readonly modeRank: number;
  /** names the driven direction */
  readonly directed: boolean;
  /** what the key is a form of; forms of one limit override each other, those of different ones never */
  readonly family: string;
  /** every part of the key is understood */
  readonly understood: boolean;
  /** the key that a misspelt one was most likely meant to be */
  readonly meant?: string;
  /** the value is `a|b`, lane by lane */
  readonly lanes: boolean;
  /** the value is `a @ condition` */
  readonly conditional: boolean;
  /** metres or kilograms; only plain values are read, the text of the others is for those who understand it */
  readonly reading: Reading;
}

/**
 * Every limit of the wanted quantities that tags set in the driven direction.
 * Among the forms of one limit that bind always, the most specific alone is given: mode first, then direction.
 */
export function limitClaims(driven: Driven, quantities: readonly Quantity[]): LimitClaim[] {
  const { tags } = driven;
  const direction = directionOf(driven);
  const claims: LimitClaim[] = [];
  const winners = new Map<string, { readonly rank: number; readonly claim: LimitClaim }>();
  for (const key in tags) {
    const parsed = readLimitKey(key, direction);
    if (parsed === undefined || !quantities.includes(parsed.quantity)) continue;
    if (parsed.quantity !== 'unknown' && isForBoats(tags, parsed.base)) continue;
    const claim = makeClaim(key, textOf(tags, key), parsed);
    if (claim.binding !== 'always') {
      claims.push(claim);
      continue;
    }
    const rank = modeRank(parsed.mode) * 2 + (parsed.directed ? 1 : 0);
    const sofar = winners.get(claim.family);
    if (sofar === undefined || rank > sofar.rank || (rank === sofar.rank && isStricter(claim, sofar.claim)))
      winners.set(claim.family, { rank, claim });
  }
  if (winners.size === 0) return claims;
  return [...[...winners.values()].map((winner) => winner.claim), ...claims];
}

/** Of a key and its `:both_ways`: the lower figure; what cannot be read might be lower yet. */
function isStricter({ reading: a }: LimitClaim, { reading: b }: LimitClaim): boolean {
  if ('reason' in b) return false;
  if (a.kind !== 'value') return 'reason' in a || a.kind === 'below_default';
  return b.kind === 'value' ? a.value < b.value : b.kind !== 'below_default';
}

function makeClaim(key: string, text: string, parsed: LimitKey): LimitClaim {
  const { base, quantity, basis, directed, lanes, conditional } = parsed;
  const binding = bindingOf(parsed);
  const plain = binding === 'always' || (binding === 'goods' && !conditional && !lanes);
  return {
    key,
    text,
    base,
    quantity,
    basis,
    binding,
    modeRank: modeRank(parsed.mode),
    directed,
    family: familyOf(key, parsed),
    understood: parsed.strange.length === 0 && quantity !== 'unknown',
    lanes,
    conditional,
    ...given({ meant: parsed.meant }),
    reading: plain ? readQuantity(text.trim(), quantity) : unreadable('not settled yet'),
  };
}

function familyOf(key: string, { base, basis, goods }: LimitKey): string {
  // what is said of lorries of one kind is not overridden by what is said of another
  if (goods) return key.replace(/:(lanes|conditional|forward|backward|both_ways)(?=:|$)/g, '');
  return `${base} ${basis}${key.includes(':legal') ? ' legal' : ''}`;
}

function bindingOf(parsed: LimitKey): Binding {
  if (parsed.goods) return 'goods';
  if (parsed.strange.length > 0 || parsed.quantity === 'unknown') return 'notUnderstood';
  if (parsed.conditional) return 'condition';
  return parsed.lanes ? 'lane' : 'always';
}

/** Reads a figure of one quantity, held to what such a limit may be: lengths in metres, masses in kilograms. */
export function readQuantity(text: string, quantity: Quantity): Reading {
  switch (quantity) {
    case 'height':
    case 'width':
    case 'length':
      return readLength(text, quantity);
    case 'unknown':
      return unreadable('a limit of an unknown kind');
    default:
      return readMass(text, quantity);
  }
}

/** On a bridge that carries sea marks, heights and widths are those of the fairway below. */
function isForBoats(tags: Tags, base: string): boolean {
  if (base !== 'maxheight' && base !== 'maxwidth' && base !== 'maxlength') return false;
  return Object.keys(tags).some((key) => key.startsWith('seamark:'));
}
