import type { Cited } from '../country/cited.ts';
import { countryName } from '../country/country-of.ts';
import type { CountryRule } from '../country/rule.ts';
import { GOODS_SIGNS_FROM_KG } from '../tags/modes.ts';
import type { RuleInput } from './rule.ts';

/** Whether signs for goods vehicles bind this motorhome at a place, and whose word that is. */
export interface GoodsSigns {
  readonly are: 'bind' | 'unsure';
  /** the country, by name; undefined where it is not known */
  readonly country: string | undefined;
  readonly rule: CountryRule;
  readonly cell: Cited<CountryRule['goodsSigns']['value']>;
}

/** @returns undefined where they leave it alone: up to 3.5 t everywhere, above by the country's law */
export function goodsSignsAt({ envelope, along }: RuleInput, m: number): GoodsSigns | undefined {
  if (envelope.grossKg <= GOODS_SIGNS_FROM_KG) return undefined;
  const rule = along.ruleAt(m);
  const cell = rule.goodsSigns;
  if (cell.value === 'do not bind') return undefined;
  const code = along.countryAt(m);
  const country = rule.code === 'other' ? code && countryName(code) : rule.name;
  return { are: cell.value === 'bind' ? 'bind' : 'unsure', country, rule, cell };
}

/** Why a sign for goods vehicles counts here. */
export function sayGoods({ are, country }: GoodsSigns): string {
  const where = country === undefined ? 'here' : `in ${country}`;
  if (are === 'bind') return `Signs for goods vehicles bind a motorhome over 3.5 t ${where}.`;
  const why = country === undefined ? ': the country is not known' : '';
  return `It is said of goods vehicles; whether such signs bind a motorhome over 3.5 t ${where} is not known${why}.`;
}
