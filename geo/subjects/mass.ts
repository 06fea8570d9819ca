import type { CountryRule } from '../country/rule.ts';
import type { LimitClaim } from '../tags/limits.ts';
import { printKg } from '../units/print.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import type { Place } from './places.ts';
import type { RuleInput, SubjectRule } from './rule.ts';

/**
 * Mass limits against the plated gross mass, whatever the vehicle weighs today: maps hold plated figures under
 * both keys, and a light load is not credited.
 */
export const mass: SubjectRule = (input) =>
  holdLimits(input, {
    subject: 'mass',
    quantities: ['mass', 'plateMass', 'unladenMass'],
    unit: 'kg',
    unprovedAdvice: `Find out the mass limit before driving there; the vehicle is plated at ${printKg(input.card.grossKg)}.`,
    judge: (claim, value, place) =>
      claim.quantity === 'unladenMass'
        ? judgeUnladen(input, claim, value)
        : judgePlate(input, claim, value, place),
  });

function judgePlate(input: RuleInput, claim: LimitClaim, limitKg: number, place: Place): Judged | undefined {
  const { grossKg } = input.card;
  const spare = limitKg - grossKg;
  if (spare > -NOISE_KG) return undefined;
  const credit = claim.quantity === 'mass' ? ` ${sayBasis(input.along.ruleAt(place.fromM))}` : '';
  return {
    level: claim.basis === 'advisory' ? 'squeeze' : 'barred',
    vehicle: { value: grossKg, unit: 'kg', what: 'plated gross mass' },
    spare,
    say: `The limit is ${printKg(limitKg, 'down')}; the vehicle is plated at ${printKg(grossKg, 'up')}: over on the plate by ${printKg(-spare, 'up')}.${credit}`,
    advice: 'Take another road.',
  };
}

/** What the plain mass sign compares; the plate is held against it in any case. */
function sayBasis({ code, name, massSign }: CountryRule): string {
  if (massSign.value === 'plated' && code !== 'other')
    return `In ${name} the plate decides, however little it weighs today (${massSign.source}).`;
  return 'It may weigh less today; that is not counted on.';
}

function judgeUnladen(input: RuleInput, claim: LimitClaim, limitKg: number): Judged | undefined {
  const { unladenKg, grossKg } = input.card;
  const value = unladenKg ?? grossKg;
  const spare = limitKg - value;
  if (spare > -NOISE_KG) return undefined;
  const known = unladenKg !== undefined;
  return {
    level: known && claim.basis !== 'advisory' ? 'barred' : 'squeeze',
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
