import type { Clause, Conditional } from './conditional.ts';
import type { ConditionContext } from './context.ts';
import { conditionHolds } from './holds.ts';

/** The value of the tag for this vehicle, there and then; undefined means the tag without `:conditional` decides. */
export type ConditionalValue = string | undefined;

export type Judgement =
  /** `clause` is the one that decided; none when no condition holds */
  | { readonly settled: true; readonly value: ConditionalValue; readonly clause?: Clause }
  /** every value it may have, and in words what it depends on */
  | { readonly settled: false; readonly possible: readonly ConditionalValue[]; readonly why: string };

/**
 * Judges a conditional tag. The last clause whose condition holds decides (OSM wiki, Conditional restrictions,
 * "Evaluation of conflicting restrictions"); a clause that may hold leaves open its own value and all before it,
 * down to the one that surely holds.
 */
export function evaluateConditional(conditional: Conditional, context: ConditionContext): Judgement {
  const possible: { value: ConditionalValue; clause?: Clause }[] = [];
  const whys: string[] = [];
  let sure = false;
  for (let i = conditional.clauses.length - 1; i >= 0 && !sure; i--) {
    const clause = conditional.clauses[i] as Clause;
    const answer = conditionHolds(clause.parts, context);
    if (answer.is === 'no') continue;
    possible.push({ value: clause.value, clause });
    if (answer.is === 'unknown') whys.push(answer.why);
    sure = answer.is === 'yes';
  }
  if (!sure) possible.push({ value: undefined });
  const values = [...new Set(possible.map((each) => each.value))];
  const [first] = possible;
  if (values.length > 1 || first === undefined)
    return { settled: false, possible: values, why: [...new Set(whys)].join('; ') };
  return { settled: true, ...first };
}
