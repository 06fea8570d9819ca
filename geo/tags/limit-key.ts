import { given } from '../given.ts';
import { remembered } from '../remembered.ts';
import { beforeFirst } from '../units/text.ts';
import type { Direction } from './driven.ts';
import { isElsewhere, isOtherDirection, isRemark } from './key-words.ts';
import { limitMeant, mayBeMeant } from './misspelt-limit.ts';
import { isGoodsMode, isMotorhomeMode, isOtherMode, type MotorhomeMode } from './modes.ts';

/** What a limit is held against. `unknown`: a limit of some kind that no rule knows. */
export type Quantity =
  | 'height'
  | 'width'
  | 'length'
  | 'mass'
  | 'plateMass'
  | 'unladenMass'
  | 'axle'
  | 'bogie'
  | 'unknown';

export type Basis = 'legal' | 'physical' | 'advisory';

/** A key such as `maxheight:physical:forward`, taken apart for one driving direction. */
export interface LimitKey {
  readonly base: string;
  readonly quantity: Quantity;
  readonly basis: Basis;
  readonly mode: MotorhomeMode | undefined;
  /** names the driven direction, so it is more specific */
  readonly directed: boolean;
  readonly lanes: boolean;
  readonly conditional: boolean;
  /** for goods vehicles only */
  readonly goods: boolean;
  /** parts nobody here understands */
  readonly strange: readonly string[];
  /** the key that a misspelt one was most likely meant to be */
  readonly meant?: string;
}

const QUANTITY_OF_BASE: ReadonlyMap<string, Quantity> = new Map([
  ['maxheight', 'height'],
  ['maxwidth', 'width'],
  ['maxlength', 'length'],
  ['maxweight', 'mass'],
  ['maxweightrating', 'plateMass'],
  ['maxunladenweight', 'unladenMass'],
  ['maxaxleload', 'axle'],
  ['maxbogieweight', 'bogie'],
  ['maxbogieload', 'bogie'],
]);

/** Anything that looks like the name of a limit on sizes or masses. */
const LIMIT_LIKE = /^max_?[a-z_]*(height|width|length|weight|load|mass|axle|clearance|size)/;

/** Looks like one and is none: the water gauge a bridge's figure refers to. */
const NO_LIMIT = new Set(['maxheight_referencelevel']);

function isLimitName(part: string): boolean {
  return LIMIT_LIKE.test(part) && !NO_LIMIT.has(part);
}

/** Whether a key may be a limit's: most keys of most ways have nothing to do with any. */
export const mayBeLimit = remembered(
  (key) => key.includes('max') || (mayBeMeant(key) && meantBy(beforeFirst(key, ':')) !== undefined),
);

function meantBy(base: string): string | undefined {
  if (QUANTITY_OF_BASE.has(base) || NO_LIMIT.has(base)) return undefined;
  const lower = base.toLowerCase();
  return limitMeant(base) ?? (lower !== base && isLimitName(lower) ? lower : undefined);
}

/**
 * Takes a key apart.
 * @returns undefined when the key is no limit, a remark, about something elsewhere, the other direction's, or
 * another vehicle's
 */
export function readLimitKey(key: string, driven: Direction): LimitKey | undefined {
  if (!mayBeLimit(key)) return undefined;
  const parts = key.split(':');
  const base = parts[0] as string;
  const meant = meantBy(base);
  if (meant === undefined && !isLimitName(base)) return readNestedLimit(parts);
  let basis: Basis = 'legal';
  let mode: MotorhomeMode | undefined;
  let directed = false;
  let lanes = false;
  let conditional = false;
  let goods = false;
  const strange: string[] = [];
  for (const part of parts.slice(1)) {
    if (isRemark(part) || isOtherDirection(part, driven)) return undefined;
    if (isOtherMode(part)) return undefined;
    if (part === driven) directed = true;
    else if (isMotorhomeMode(part)) mode = part;
    else if (isGoodsMode(part)) goods = true;
    else if (part === 'physical') basis = 'physical';
    else if (part === 'advisory' || part === 'recommended') basis = 'advisory';
    else if (part === 'lanes') lanes = true;
    else if (part === 'conditional') conditional = true;
    else if (part !== 'legal' && part !== 'both_ways') strange.push(part);
  }
  const quantity = QUANTITY_OF_BASE.get(base) ?? 'unknown';
  const how = { basis, mode, directed, lanes, conditional, goods, strange };
  return { base, quantity, ...how, ...given({ meant }) };
}

/** A limit's name behind something else: `hgv:maxweight`, `source:maxheight`, or a form nobody documents. */
function readNestedLimit(parts: readonly string[]): LimitKey | undefined {
  const first = parts[0] as string;
  const base = parts.slice(1).find(isLimitName);
  if (base === undefined) return undefined;
  if (isElsewhere(first) || isOtherMode(first) || parts.some(isRemark)) return undefined;
  const quantity = QUANTITY_OF_BASE.get(base) ?? 'unknown';
  const goods = isGoodsMode(first);
  const strange = goods ? [] : [first];
  return {
    base,
    quantity,
    basis: 'legal',
    mode: undefined,
    directed: false,
    lanes: false,
    conditional: false,
    goods,
    strange,
  };
}
