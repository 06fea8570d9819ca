import type { WallTime } from '../clock/moment.ts';
import type { ConditionContext } from './conditional/context.ts';
import type { Driven } from './driven.ts';
import { type OpenCondition, resolveTag, type Tagged } from './resolve.ts';
import { textOf } from './text-of.ts';

/** Whether the driven direction is with the mapped one: `unsure` where it turns by the hour or is not said clearly. */
export interface Oneway {
  readonly allowed: 'yes' | 'no' | 'unsure';
  readonly key: string;
  readonly text: string;
}

/** From the most specific to the least, as access. */
const KEYS = ['oneway:motorhome', 'oneway:motor_vehicle', 'oneway:vehicle', 'oneway'];

const FORWARD = new Set(['yes', 'true', '1']);
const BACKWARD = new Set(['-1', 'reverse']);
const BOTH = new Set(['no', 'false', '0', 'alternating']);

/**
 * Whether a way may be driven in the given direction along its drawn order.
 * Roundabouts and motorways are one-way unsaid; a circular junction or a motorway's link only probably.
 */
export function onewayFor({ tags, forward }: Driven): Oneway {
  // this is asked of every road of a map: looking through all is quicker than stepping
  const key = KEYS.find((each) => tags[each] !== undefined);
  if (key !== undefined) {
    const text = textOf(tags, key);
    if (BOTH.has(text)) return { allowed: 'yes', key, text };
    if (FORWARD.has(text)) return { allowed: forward ? 'yes' : 'no', key, text };
    if (BACKWARD.has(text)) return { allowed: forward ? 'no' : 'yes', key, text };
    return { allowed: 'unsure', key, text };
  }
  if (forward) return { allowed: 'yes', key: '', text: '' };
  const { junction, highway } = tags;
  if (junction === 'roundabout') return { allowed: 'no', key: 'junction', text: junction };
  if (highway === 'motorway') return { allowed: 'no', key: 'highway', text: highway };
  if (junction === 'circular') return { allowed: 'unsure', key: 'junction', text: junction };
  if (highway === 'motorway_link') return { allowed: 'unsure', key: 'highway', text: highway };
  return { allowed: 'yes', key: '', text: '' };
}

/** Whether at some hour the driven direction may be against the mapped one. */
export function mayBeOneway(driven: Driven): boolean {
  return onewayFor(driven).allowed !== 'yes' || conditionalKey(driven) !== undefined;
}

function conditionalKey({ tags }: Driven): string | undefined {
  return KEYS.map((each) => `${each}:conditional`).find((each) => tags[each] !== undefined);
}

/** The same with `oneway:conditional` judged; `open` says what it hangs on where it is not settled. */
export interface OnewayThen extends Oneway {
  readonly open?: OpenCondition<Tagged>;
  /** when the clock next allows the driven direction */
  readonly allowedAt?: WallTime;
}

/** Whether the way is one-way against the drive when it is passed, its conditions held against `contexts`. */
export function onewayThen(driven: Driven, contexts: () => readonly ConditionContext[]): OnewayThen {
  const { tags, forward } = driven;
  const plain = onewayFor(driven);
  const key = conditionalKey(driven);
  if (key === undefined) return plain;
  const tag = { key, text: textOf(tags, key) };
  const { possible, open, next } = resolveTag<Tagged>(undefined, [tag], contexts);
  const base = key.slice(0, -':conditional'.length);
  const under = (value: string | undefined): Oneway =>
    value === undefined ? plain : { ...onewayFor({ tags: { ...tags, [base]: value }, forward }), ...tag };
  const cases = possible.map(({ value }) => under(value));
  const [first] = open;
  const [only = plain] = cases;
  if (first === undefined) {
    const opens = only.allowed === 'no' && next !== undefined && under(next.value).allowed === 'yes';
    return { ...only, ...(opens ? { allowedAt: next.at } : {}) };
  }
  if (!first.unreadable && cases.every((one) => one.allowed === 'yes')) return { ...plain, allowed: 'yes' };
  if (!first.unreadable && cases.every((one) => one.allowed === 'no')) return plain;
  return { allowed: 'unsure', ...tag, open: first };
}
