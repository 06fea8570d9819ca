import { sayPlated } from '../../load/say-load.ts';
import { printKg } from '../../units/print.ts';
import type { SubjectRule } from '../rule.ts';
import { holdLimits } from './hold-limits.ts';
import type { Judged } from './limit-rule.ts';
import { signDrafts } from './sign-limits.ts';

/** Pounds and hundredweights leave fractions. */
const NOISE_KG = 0.05;

/**
 * Axle limits against each axle's plate, or against what it carries where that is more. The card knows a front and a rear axle: a bogie limit (two axles close
 * together) is held against the rear plate too, but being over it is only a tight, since one axle is no bogie.
 */
export const axle: SubjectRule = (input) => {
  const { front, rear } = input.card.axleKg;
  const { load } = input;
  const heldFront = Math.max(front, load?.frontKg ?? 0);
  const heldRear = Math.max(rear, load?.rearKg ?? 0);
  const held = holdLimits(input, {
    subject: 'axle',
    quantities: ['axle', 'bogie'],
    unit: 'kg',
    unknownAdvice: `Find out the axle limit before driving there; the plates are ${printKg(front)} front, ${printKg(rear)} rear.`,
    judge: (claim, value): Judged | undefined => {
      const bogie = claim.quantity === 'bogie';
      const isRear = bogie || heldRear >= heldFront;
      const plateKg = isRear ? rear : front;
      const heldKg = isRear ? heldRear : heldFront;
      const actualKg = isRear ? load?.rearKg : load?.frontKg;
      const which = isRear ? 'rear' : 'front';
      const spare = value - heldKg;
      if (spare > -NOISE_KG) return undefined;
      return {
        level: bogie || claim.basis === 'advisory' ? 'tight' : 'barred',
        vehicle: {
          value: heldKg,
          unit: 'kg',
          what: heldKg > plateKg ? `${which} axle as loaded` : `${which} axle plate`,
        },
        spare,
        say: `The ${bogie ? 'bogie' : 'axle'} limit is ${printKg(value, 'down')}; the ${which} axle is ${sayPlated(plateKg, actualKg)}: ${heldKg > plateKg ? `${printKg(-spare, 'up')} over the limit` : `over on the plate by ${printKg(-spare, 'up')}`}.${sayActual(actualKg, plateKg)}`,
        advice: bogie ? 'It binds only if the rear axle is a double one.' : 'Take another road.',
      };
    },
  });
  return [...held, ...signDrafts(input, 'axle')];
};

function sayActual(actualKg: number | undefined, plateKg: number): string {
  if (actualKg === undefined || actualKg > plateKg) return '';
  return ` It carries ${printKg(actualKg, 'up')} as listed; that is not counted on.`;
}
