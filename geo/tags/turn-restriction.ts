import type { WallTime } from '../clock/moment.ts';
import type { Tags } from '../roads/roads.ts';
import type { Clause } from './conditional/conditional.ts';
import type { ConditionContext } from './conditional/context.ts';
import { type OpenCondition, resolveTag, type Tagged } from './resolve.ts';
import { textOf } from './text-of.ts';

/** What a broken turn restriction means for a motorhome. */
export interface TurnRule {
  readonly binds: 'yes' | 'no' | 'unsure';
  readonly key: string;
  readonly text: string;
  /** the restriction that holds, where `text` is a condition */
  readonly value?: string;
  readonly clause?: Clause;
  /** what a condition hangs on, where that is not settled */
  readonly open?: OpenCondition<Tagged>;
  /** when the clock next lifts it */
  readonly liftedAt?: WallTime;
}

const BINDING_KEYS = [
  'restriction:motorhome',
  'restriction:motor_vehicle',
  'restriction:vehicle',
  'restriction',
];
const KNOWN =
  /^(no_(left_turn|right_turn|straight_on|u_turn|entry|exit)|only_(left_turn|right_turn|straight_on|u_turn))$/;
const EXEMPT = new Set(['motorhome', 'motor_vehicle', 'vehicle']);
/** old ways of writing a condition */
const TIME_KEYS = ['day_on', 'day_off', 'hour_on', 'hour_off'];

/**
 * Whether a turn restriction's tags bind a motorhome; restrictions for goods vehicles, buses and others do not.
 * @param contexts what decides conditions; left out, every condition is `unsure`
 */
export function turnRuleFor(tags: Tags, contexts?: () => readonly ConditionContext[]): TurnRule {
  const except = textOf(tags, 'except')
    .split(';')
    .map((part) => part.trim());
  const exempt = except.find((part) => EXEMPT.has(part));
  if (exempt !== undefined) return { binds: 'no', key: 'except', text: textOf(tags, 'except') };
  const unsureForUs = except.includes('motorcar') || TIME_KEYS.some((time) => time in tags);
  const bindsAs = (value: string) => (!KNOWN.test(value) || unsureForUs ? 'unsure' : 'yes');
  for (const key of BINDING_KEYS) {
    const conditional = tags[`${key}:conditional`];
    if (conditional !== undefined) {
      const rule = underCondition(
        { key: `${key}:conditional`, text: conditional },
        tags[key],
        contexts,
        bindsAs,
      );
      if (rule !== undefined) return rule;
    }
    const text = tags[key];
    if (text !== undefined) return { binds: bindsAs(text), key, text };
  }
  return { binds: 'no', key: '', text: '' };
}

function lifts(value: string | undefined): boolean {
  return value === undefined || value === 'none' || value === 'no';
}

/** undefined: the condition does not hold, and the tag without it decides. */
function underCondition(
  tag: Tagged,
  plain: string | undefined,
  contexts: (() => readonly ConditionContext[]) | undefined,
  bindsAs: (value: string) => 'unsure' | 'yes',
): TurnRule | undefined {
  if (contexts === undefined) return { binds: 'unsure', ...tag };
  const { possible, open, next } = resolveTag<Tagged>(undefined, [tag], contexts);
  const values = possible.map(({ value }) => value ?? plain);
  const [first] = open;
  if (first === undefined) {
    const [only] = possible;
    const lifted = next !== undefined && lifts(next.value ?? plain) ? { liftedAt: next.at } : {};
    if (only?.value === undefined)
      return plain === undefined
        ? undefined
        : { binds: bindsAs(plain), key: tag.key.slice(0, -':conditional'.length), text: plain, ...lifted };
    if (lifts(only.value)) return { binds: 'no', ...tag };
    return {
      binds: bindsAs(only.value),
      ...tag,
      value: only.value,
      ...(only.clause && { clause: only.clause }),
      ...lifted,
    };
  }
  if (!first.unreadable && values.every((value) => value === undefined || value === 'none'))
    return { binds: 'no', ...tag };
  return { binds: 'unsure', ...tag, open: first };
}
