import { given } from '../../given.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { isOver } from './rounding.ts';
import { adviseMass, sayOverloaded, sayOverPlate, sayUnladen } from './say-masses.ts';
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
    unknownAdvice: adviseMass(input.card.grossKg, input.load?.grossKg),
    judge: (claim, value, place) =>
      claim.quantity === 'unladenMass'
        ? judgeUnladen(input, claim, value)
        : judgePlate(input, claim, value, place),
  }),
  ...signDrafts(input, 'mass'),
];

const OF_LIMIT = { subject: 'mass', kind: 'limit' } as const;

/** What a limit on the mass driven, or on the plate, means for the vehicle; undefined: it passes freely. */
export function judgePlate(
  input: RuleInput,
  claim: Pick<LimitClaim, 'basis' | 'quantity'>,
  limitKg: number,
  place: Place,
): Judged | undefined {
  const plateKg = input.card.grossKg;
  const actualKg = input.load?.grossKg;
  if (actualKg !== undefined && actualKg > plateKg) return judgeOverloaded(input, claim, limitKg, actualKg);
  const spare = limitKg - plateKg;
  if (!isOver(spare)) return undefined;
  const sum = { limitKg, plateKg, actualKg, spareKg: spare };
  return {
    about: OF_LIMIT,
    level: claim.basis === 'advisory' ? 'tight' : 'barred',
    vehicle: { value: plateKg, unit: 'kg', what: 'plated gross mass' },
    spare,
    ...(claim.quantity === 'mass' ? sayOverPlate(sum, input.along.ruleAt(place.fromM)) : sayOverPlate(sum)),
  };
}

/** The load is above the plate: a limit between the two bars by what is on board, unless it is one on the plate. */
function judgeOverloaded(
  { card }: RuleInput,
  claim: Pick<LimitClaim, 'basis' | 'quantity'>,
  limitKg: number,
  actualKg: number,
): Judged | undefined {
  const spare = limitKg - actualKg;
  if (!isOver(spare)) return undefined;
  const plateOver = isOver(limitKg - card.grossKg);
  const barred = claim.basis !== 'advisory' && (plateOver || claim.quantity === 'mass');
  return {
    about: OF_LIMIT,
    level: barred ? 'barred' : 'tight',
    vehicle: { value: actualKg, unit: 'kg', what: 'mass as loaded' },
    spare,
    ...sayOverloaded(
      { limitKg, plateKg: card.grossKg, actualKg, spareKg: spare },
      plateOver ? 'over too' : 'keeps it',
    ),
  };
}

function judgeUnladen(input: RuleInput, claim: LimitClaim, limitKg: number): Judged | undefined {
  const { unladenKg, grossKg } = input.card;
  const value = unladenKg ?? grossKg;
  const spare = limitKg - value;
  if (!isOver(spare)) return undefined;
  const known = unladenKg !== undefined;
  return {
    about: OF_LIMIT,
    level: !known ? 'unknown' : claim.basis === 'advisory' ? 'tight' : 'barred',
    ...given({ wants: known ? undefined : ('measure' as const) }),
    vehicle: { value, unit: 'kg', what: known ? 'unladen mass' : 'plated gross mass' },
    spare,
    ...sayUnladen({ limitKg, heldKg: value, spareKg: spare }, known ? 'card' : 'plate'),
  };
}
