import { COMMON_PRACTICE, FROM_MEMORY, type Source } from '../../country/cited.ts';
import { printKg } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { CATEGORY_B_KG, CATEGORY_C1_KG } from '../../vehicle/licence.ts';

/** What the plate or the rack may mean in law: a sentence and where it comes from, no verdict. */
interface LawNote {
  readonly about: 'licence' | 'plate' | 'speed' | 'rack' | 'overload';
  /** ISO 3166-1 alpha-2; absent where it holds in more than one country */
  readonly country?: string;
  readonly says: string;
  readonly source: Source;
}

const told = (text: string): Source => ({ text, trust: 'second-hand' });

const SPEEDS_FROM_KG = 3050;

/** As a reader sees it: what nobody read in a source is not told as a fact. Sources stand on the page about the rules. */
export function sayLawNote({ says, source }: LawNote): string {
  return source.trust === 'memory' ? `Not confirmed: ${says}` : says;
}

/** Licence, speed and marking notes for this vehicle. They defer to local rules; nothing is judged by them. */
export function lawNotes(card: VehicleCard): LawNote[] {
  return [...licenceNotes(card.grossKg), ...speedNotes(card), ...rackNotes(card), ...overloadNotes()];
}

function licenceNotes(grossKg: number): LawNote[] {
  const club = told('a camping club on motorhome licences');
  if (grossKg <= CATEGORY_B_KG)
    return [
      {
        about: 'licence',
        country: 'GB',
        says: 'Great Britain: plated to 3500 kg or less: category B is enough. The plate counts, not the load.',
        source: club,
      },
      {
        about: 'licence',
        says: 'In the EU category B likewise ends at 3500 kg plated.',
        source: FROM_MEMORY,
      },
    ];
  if (grossKg > CATEGORY_C1_KG)
    return [
      {
        about: 'licence',
        country: 'GB',
        says: 'Great Britain: plated above 7500 kg: category C is needed.',
        source: FROM_MEMORY,
      },
    ];
  return [
    {
      about: 'licence',
      country: 'GB',
      says: 'Great Britain: plated above 3500 kg and up to 7500 kg: category C1 is needed. Who passed the car test before 1 January 1997 has it as a rule; from 70 on it lapses unless renewed with a medical report. Look at the licence itself.',
      source: club,
    },
    {
      about: 'licence',
      says: 'In the EU category B ends at 3500 kg plated and C1 at 7500 kg. Directive (EU) 2025/2205 of 22 October 2025 lets B drive motor caravans up to 4250 kg after training or a test, once each country has made it its law: about the end of 2029. Ask before hiring out abroad.',
      source: told('Directive (EU) 2025/2205, its content as reported'),
    },
    {
      about: 'plate',
      says: 'Above 3500 kg plated many countries set lower speeds, other tolls and further signs; the drive report names those it knows.',
      source: COMMON_PRACTICE,
    },
  ];
}

function speedNotes({ unladenKg }: VehicleCard): LawNote[] {
  const source: Source = { text: 'gov.uk, Speed limits: motorhomes', trust: 'law' };
  const above =
    'above 3.05 t unladen 50 mph on single and 60 mph on dual carriageways; up to it 60 and 70; motorways 70 either way';
  const unladen = 'Unladen is without fuel, driver, water, gas or load.';
  if (unladenKg === undefined)
    return [
      {
        about: 'speed',
        country: 'GB',
        says: `Great Britain: speed limits go by unladen weight: ${above}. The card does not give it. ${unladen}`,
        source,
      },
    ];
  const over = unladenKg > SPEEDS_FROM_KG;
  return [
    {
      about: 'speed',
      country: 'GB',
      says: `Great Britain: speed limits go by unladen weight: ${above}. The card gives ${printKg(unladenKg)}, so the ${over ? 'lower' : 'higher'} ones. ${unladen}`,
      source,
    },
  ];
}

function rackNotes({ rack, lengthM }: VehicleCard): LawNote[] {
  if (!rack?.fitted) return [];
  const share = Math.round((rack.lengthM / lengthM) * 1000) / 10;
  return [
    {
      about: 'rack',
      country: 'ES',
      says: `Spain: a load behind needs the V-20 board, 50 × 50 cm, red and white, metal; two if it fills the width. It may stand out by 10 % of the length, 15 % if it cannot be divided; the rack is ${share} %.`,
      source: told('dealers’ pages on the V-20 board'),
    },
    {
      about: 'rack',
      country: 'IT',
      says: `Italy: a rack behind needs an approved metal board, 50 × 50 cm, red and white, even when empty. It may stand out by 30 % of the length; the rack is ${share} %.`,
      source: told('rack and sign makers’ pages'),
    },
    {
      about: 'rack',
      country: 'FR',
      says: 'France: a load may stand out behind by 3 m.',
      source: told('handbooks and owners quoting the law'),
    },
    {
      about: 'rack',
      country: 'NL',
      says: 'Netherlands: a load may stand out behind by 1 m, and 0.2 m to each side.',
      source: told('handbooks and owners quoting the law'),
    },
    {
      about: 'rack',
      country: 'DE',
      says: 'Germany: a load more than 1 m behind the rear reflectors is marked, by day with a flag or panel of 30 × 30 cm.',
      source: told('a trailer maker’s page'),
    },
    {
      about: 'rack',
      country: 'GB',
      says: 'Great Britain: a load more than 1 m behind must be made clearly visible; more than 2 m, marker boards. Number plate and lamps must stay in sight.',
      source: FROM_MEMORY,
    },
  ];
}

function overloadNotes(): LawNote[] {
  return [
    {
      about: 'overload',
      country: 'GB',
      says: 'Great Britain: the penalty for too much mass goes by the share over: under 10 %, 10 to 14 %, 15 % and more, from 30 % a court. Each axle counts by itself.',
      source: told('press of 2025'),
    },
    {
      about: 'plate',
      says: 'A converter’s plate stands before the plate of the base vehicle. Take the figures from the plate on the vehicle, not from the brochure.',
      source: told('a trade body’s motor-caravan guide'),
    },
  ];
}
