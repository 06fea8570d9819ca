import type { Cited } from '../country/cited.ts';
import type { CountryRule } from '../country/rule.ts';
import { GOODS_SIGNS_FROM_KG } from '../tags/modes.ts';
import type { RuleInput } from './rule.ts';

/** Whether signs for goods vehicles bind this motorhome at a place, and whose word that is. */
export interface GoodsSigns {
  readonly are: 'bind' | 'unsure';
  readonly rule: CountryRule;
  readonly cell: Cited<CountryRule['goodsSigns']['value']>;
}

/** @returns undefined where they leave it alone: up to 3.5 t everywhere, above by the country's law */
export function goodsSignsAt({ envelope, along }: RuleInput, m: number): GoodsSigns | undefined {
  if (envelope.grossKg <= GOODS_SIGNS_FROM_KG) return undefined;
  const rule = along.ruleAt(m);
  const cell = rule.goodsSigns;
  if (cell.value === 'do not bind') return undefined;
  return { are: cell.value === 'bind' ? 'bind' : 'unsure', rule, cell };
}

/** Why a sign for goods vehicles counts here. */
export function sayGoods({ are, rule }: GoodsSigns): string {
  if (are === 'bind') return `Signs for goods vehicles bind a motorhome over 3.5 t in ${rule.name}.`;
  const where = rule.code === 'other' ? 'in some countries' : `in ${rule.name}`;
  return `It is said of goods vehicles; whether such signs bind a motorhome over 3.5 t ${where} is not known.`;
}
