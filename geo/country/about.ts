import type { Cited, Source } from './cited.ts';
import { COUNTRY_CODES, type CountryRule } from './rule.ts';
import {
  sayGoodsSigns,
  sayKerbs,
  sayLegalHeight,
  sayMassSign,
  sayOpenRoads,
  saySpeed,
  sayWidthSign,
} from './say-rule.ts';
import { COUNTRY_TABLE, ruleFor } from './table.ts';

/** One line of the page about the rules: what is taken to hold, and whose word that is. */
export interface RuleLine {
  readonly about: string;
  readonly says: string;
  readonly source: Source;
}

export interface CountryPage {
  /** ISO 3166-1 alpha-2, or `other` */
  readonly code: CountryRule['code'];
  readonly name: string;
  readonly lines: readonly RuleLine[];
}

/** Every row of the country table for a reader, by name, the row that stands in elsewhere last. */
export function aboutCountries(): CountryPage[] {
  const rows = COUNTRY_CODES.map((code) => COUNTRY_TABLE[code]).sort((a, b) => (a.name < b.name ? -1 : 1));
  return [...rows, ruleFor(undefined).rule].map((rule) => ({
    code: rule.code,
    name: rule.name,
    lines: linesOf(rule),
  }));
}

function linesOf(rule: CountryRule): RuleLine[] {
  const line = (about: string, says: string, { source, note }: Cited<unknown>): RuleLine => ({
    about,
    says: note === undefined ? says : `${says} ${note}`,
    source,
  });
  const signs = [
    line('Side of the road', `Traffic keeps to the ${rule.driveSide.value}.`, rule.driveSide),
    line('No height sign', rule.unsignedHeight.value.meaning, rule.unsignedHeight),
    line('Legal height', sayLegalHeight(rule), rule.legalHeightM),
    line('Width signs', sayWidthSign(rule), rule.widthSign),
    line('Mass signs', sayMassSign(rule), rule.massSign),
    line('Signs for goods vehicles', sayGoodsSigns(rule), rule.goodsSigns),
  ];
  const speeds = [
    line('Speed in towns', `${saySpeed(rule, rule.urbanKmh.value)}.`, rule.urbanKmh),
    line('Speed in living streets', `${saySpeed(rule, rule.livingStreetKmh.value)}.`, rule.livingStreetKmh),
    ...rule.bands.map(({ overKg, limits }) =>
      line(
        overKg === 0 ? 'Speed elsewhere' : `Speed over ${overKg / 1000} t ${rule.bandsBy.value}`,
        sayOpenRoads(rule, limits.value),
        limits,
      ),
    ),
  ];
  const corners = [
    line('Widths nobody mapped', 'The usual width of the class of road stands in.', rule.widths),
    line('Kerbs at corners', sayKerbs(rule), rule.kerbRadiusM),
  ];
  return [...signs, ...speeds, ...corners];
}

/** How far a line can be relied on, in a reader's words. */
export const TRUST_WORD: Readonly<Record<Source['trust'], string>> = {
  law: 'read in the law or on a government page',
  'second-hand': 'as others quote it',
  practice: 'common practice',
  memory: 'not confirmed',
};
