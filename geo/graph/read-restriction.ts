import type { TurnRestriction } from '../roads/roads.ts';
import { turnRuleFor } from '../tags/turn-restriction.ts';

/** The turn a restriction forbids or commands, when it concerns a motorhome; `always` is false under a condition. */
export function readRestriction(
  restriction: TurnRestriction,
): { readonly rule: string; readonly always: boolean } | undefined {
  const { binds, text } = turnRuleFor(restriction.tags);
  const rule = /^\s*((?:no|only)_\w+)/.exec(text)?.[1];
  if (binds === 'no' || rule === undefined) return undefined;
  return { rule, always: binds === 'yes' };
}
