import { nextHoursChange } from '../../clock/hours.ts';
import { type LocalMoment, utcMsOf, type WallTime, weekdayOf } from '../../clock/moment.ts';
import type { Conditional, Part } from './conditional.ts';
import type { ConditionContext } from './context.ts';
import { type ConditionalValue, evaluateConditional } from './evaluate.ts';

/** Changes of hours looked at before giving up: a fortnight of lunch breaks. */
const MOST_CHANGES = 64;

/** Every text of hours that a condition asks, those inside others too. */
export function hoursIn(parts: readonly Part[]): string[] {
  return parts.flatMap((part) => {
    if (part.kind === 'hours') return [part.text];
    return 'of' in part ? hoursIn(part.of) : [];
  });
}

function earliest(times: readonly WallTime[]): WallTime | undefined {
  return times.reduce<WallTime | undefined>(
    (best, time) => (best === undefined || utcMsOf(time) < utcMsOf(best) ? time : best),
    undefined,
  );
}

/** When and into what a settled value next changes with the clock, within a fortnight; for "free from 19:00". */
export function nextValueChange(
  conditional: Conditional,
  context: ConditionContext,
): { readonly at: WallTime; readonly value: ConditionalValue } | undefined {
  const now = evaluateConditional(conditional, context);
  if (!now.settled || context.moment === undefined) return undefined;
  const hours = conditional.clauses.flatMap((clause) => hoursIn(clause.parts));
  let moment: LocalMoment = context.moment;
  for (let i = 0; i < MOST_CHANGES; i++) {
    const changes = hours.flatMap((text) => nextHoursChange(text, moment, context.place) ?? []);
    const at = earliest(changes);
    if (at === undefined) return undefined;
    moment = { ...moment, ...at, weekday: weekdayOf(at) };
    const then = evaluateConditional(conditional, { ...context, moment });
    if (!then.settled) return undefined;
    if (then.value !== now.value) return { at, value: then.value };
  }
  return undefined;
}
