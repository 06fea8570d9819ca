import type { CountryRule } from '../../country/rule.ts';
import { sayPlated } from '../../load/say-load.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import { printKg } from '../../units/print.ts';
import type { Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { signDrafts } from './sign-limits.ts';

/**
 * Mass limits against the plated gross mass, whatever the vehicle weighs today: maps hold plated figures under
 * both keys, and a light load is not credited. A load above the plate is held in the plate's stead.
 */
export const mass: SubjectRule = (input) => [
  ...holdLimits(input, {
    subject: 'mass',
    quantities: ['mass', 'plateMass', 'unladenMass'],
    unit: 'kg',
    unknownAdvice: `Find out the mass limit before driving there; the vehicle is ${sayPlated(input.card.grossKg, input.load?.grossKg)}.`,
    judge: (claim, value, place) =>
      claim.quantity === 'unladenMass'
        ? judgeUnladen(input, claim, value)
        : judgePlate(input, claim, value, place),
  }),
  ...signDrafts(input, 'mass'),
];

function judgePlate(input: RuleInput, claim: LimitClaim, limitKg: number, place: Place): Judged | undefined {
  const { grossKg } = input.card;
  const actualKg = input.load?.grossKg ?? 0;
  if (actualKg > grossKg) return judgeOverloaded(input, claim, limitKg, actualKg);
  const spare = limitKg - grossKg;
  if (spare > -NOISE_KG) return undefined;
  const rule = input.along.ruleAt(place.fromM);
  const credit = claim.quantity === 'mass' ? ` ${sayBasis(rule, input.load?.grossKg)}` : '';
  return {
    level: claim.basis === 'advisory' ? 'tight' : 'barred',
    vehicle: { value: grossKg, unit: 'kg', what: 'plated gross mass' },
    spare,
    say: `The limit is ${printKg(limitKg, 'down')}; the vehicle is plated at ${printKg(grossKg, 'up')}: over on the plate by ${printKg(-spare, 'up')}.${credit}`,
    advice: 'Take another road.',
  };
}

/** The load is above the plate: a limit between the two bars by what is on board, unless it is one on the plate. */
function judgeOverloaded(
  { card }: RuleInput,
  claim: LimitClaim,
  limitKg: number,
  actualKg: number,
): Judged | undefined {
  const spare = limitKg - actualKg;
  if (spare > -NOISE_KG) return undefined;
  const plateOver = card.grossKg - limitKg > NOISE_KG;
  const barred = claim.basis !== 'advisory' && (plateOver || claim.quantity === 'mass');
  return {
    level: barred ? 'barred' : 'tight',
    vehicle: { value: actualKg, unit: 'kg', what: 'mass as loaded' },
    spare,
    say: `The limit is ${printKg(limitKg, 'down')}; the vehicle is ${sayPlated(card.grossKg, actualKg)}: ${printKg(-spare, 'up')} over the limit${plateOver ? '' : ', which the plate alone would keep'}.`,
    advice: plateOver ? 'Unload to the plate, and take another road.' : 'Unload to the plate.',
  };
}

/** What the plain mass sign compares; the plate is held against it in any case. */
function sayBasis({ code, name, massSign }: CountryRule, actualKg: number | undefined): string {
  const loaded = actualKg === undefined ? '' : `Loaded as listed it weighs ${printKg(actualKg, 'up')}`;
  if (massSign.value === 'plated' && code !== 'other')
    return `In ${name} the plate decides, however little it weighs today (${massSign.source}).${loaded === '' ? '' : ` ${loaded}.`}`;
  return `${loaded || 'It may weigh less today'}; that is not counted on.`;
}

function judgeUnladen(input: RuleInput, claim: LimitClaim, limitKg: number): Judged | undefined {
  const { unladenKg, grossKg } = input.card;
  const value = unladenKg ?? grossKg;
  const spare = limitKg - value;
  if (spare > -NOISE_KG) return undefined;
  const known = unladenKg !== undefined;
  return {
    level: known && claim.basis !== 'advisory' ? 'barred' : 'tight',
    vehicle: { value, unit: 'kg', what: known ? 'unladen mass' : 'plated gross mass' },
    spare,
    say: known
      ? `The limit on unladen mass is ${printKg(limitKg, 'down')}; the card gives ${printKg(value, 'up')}: ${printKg(-spare, 'up')} over.`
      : `The limit on unladen mass is ${printKg(limitKg, 'down')}; the card does not give the unladen mass, the plate is ${printKg(value, 'up')}.`,
    advice: known ? 'Take another road.' : 'Add the unladen mass to the vehicle card.',
  };
}

/** Pounds and hundredweights leave fractions. */
const NOISE_KG = 0.05;
