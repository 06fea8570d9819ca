import { lookUp } from './look-up.ts';
import { BRAZIL, CANADA, OTHER_COUNTRY, UNITED_STATES } from './rows-america.ts';
import { CROATIA, CZECHIA, HUNGARY, POLAND, SLOVAKIA, SLOVENIA } from './rows-east.ts';
import { AUSTRIA, GERMANY, LIECHTENSTEIN, SWITZERLAND } from './rows-germanic.ts';
import { GREAT_BRITAIN, IRELAND, MALTA, WALES } from './rows-islands.ts';
import { DENMARK, FINLAND, NORWAY, SWEDEN } from './rows-north.ts';
import { AUSTRALIA, NEW_ZEALAND } from './rows-pacific.ts';
import { GREECE, ITALY, PORTUGAL, SPAIN } from './rows-south.ts';
import { BELGIUM, FRANCE, LUXEMBOURG, NETHERLANDS } from './rows-west.ts';
import type { CountryCode, CountryRule } from './rule.ts';

/** One row a country. Every cell names its source; what was not read anywhere says so. */
export const COUNTRY_TABLE: Readonly<Record<CountryCode, CountryRule>> = {
  GB: GREAT_BRITAIN,
  IE: IRELAND,
  FR: FRANCE,
  DE: GERMANY,
  ES: SPAIN,
  IT: ITALY,
  NL: NETHERLANDS,
  BE: BELGIUM,
  AT: AUSTRIA,
  CH: SWITZERLAND,
  LI: LIECHTENSTEIN,
  LU: LUXEMBOURG,
  PT: PORTUGAL,
  DK: DENMARK,
  SE: SWEDEN,
  NO: NORWAY,
  FI: FINLAND,
  PL: POLAND,
  CZ: CZECHIA,
  SK: SLOVAKIA,
  HU: HUNGARY,
  SI: SLOVENIA,
  HR: CROATIA,
  GR: GREECE,
  MT: MALTA,
  US: UNITED_STATES,
  CA: CANADA,
  BR: BRAZIL,
  AU: AUSTRALIA,
  NZ: NEW_ZEALAND,
};

/** Every row, those that no country's code names included. */
export const EVERY_RULE: readonly CountryRule[] = [...Object.values(COUNTRY_TABLE), WALES, OTHER_COUNTRY];

/** Left-hand traffic among the countries without a row (border data of country-coder 5.6.1). */
const LEFT_WITHOUT_ROW = new Set(['IM', 'JE', 'GG', 'CY', 'JP', 'ZA', 'NA', 'BW']);

export interface RuleFound {
  readonly rule: CountryRule;
  /** a sentence for the user when the fallback stands in */
  readonly note?: string;
}

/**
 * The row for a place. `country` is ISO 3166-1 alpha-2, or ISO 3166-2 `GB-WLS` for Wales;
 * undefined at sea or unknown. Without a row, cautious figures and a sentence saying so.
 */
export function ruleFor(country: string | undefined): RuleFound {
  if (country === 'GB-WLS') return { rule: WALES };
  if (country === undefined)
    return {
      rule: OTHER_COUNTRY,
      note: 'The country is not known here: cautious general figures are used for signs and speeds.',
    };
  const rule = lookUp<CountryRule>(COUNTRY_TABLE, country);
  if (rule) return { rule };
  const side = LEFT_WITHOUT_ROW.has(country) ? 'left' : 'right';
  return {
    rule: { ...OTHER_COUNTRY, driveSide: { ...OTHER_COUNTRY.driveSide, value: side } },
    note: `There is no row of rules for ${country}: cautious general figures are used for signs and speeds.`,
  };
}
