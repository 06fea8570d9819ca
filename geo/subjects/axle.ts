import { printKg } from '../units/print.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import type { SubjectRule } from './rule.ts';

/** Pounds and hundredweights leave fractions. */
const NOISE_KG = 0.05;

/**
 * Axle limits against each axle's plate. The card knows a front and a rear axle: a bogie limit (two axles close
 * together) is held against the rear plate too, but being over it is only a squeeze, since one axle is no bogie.
 */
export const axle: SubjectRule = (input) => {
  const { front, rear } = input.card.axleKg;
  return holdLimits(input, {
    subject: 'axle',
    quantities: ['axle', 'bogie'],
    unit: 'kg',
    unprovedAdvice: `Find out the axle limit before driving there; the plates are ${printKg(front)} front, ${printKg(rear)} rear.`,
    judge: (claim, value): Judged | undefined => {
      const bogie = claim.quantity === 'bogie';
      const isRear = bogie || rear >= front;
      const plateKg = isRear ? rear : front;
      const which = isRear ? 'rear' : 'front';
      const spare = value - plateKg;
      if (spare > -NOISE_KG) return undefined;
      return {
        level: bogie || claim.basis === 'advisory' ? 'squeeze' : 'barred',
        vehicle: { value: plateKg, unit: 'kg', what: `${which} axle plate` },
        spare,
        say: `The ${bogie ? 'bogie' : 'axle'} limit is ${printKg(value, 'down')}; the ${which} axle is plated at ${printKg(plateKg, 'up')}: over on the plate by ${printKg(-spare, 'up')}.`,
        advice: bogie ? 'It binds only if the rear axle is a double one.' : 'Take another road.',
      };
    },
  });
};
